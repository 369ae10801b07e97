package rasterfit.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.sim.LineRepeatSim.Outcome;
import rasterfit.sim.LineRepeatSim.Repeat;

/** Cases small enough to be worked by hand; the working stands beside each. */
class LineRepeatSimTest {
    @Test
    void aLineSentTwiceMayBeginAtItsMiddle() {
        // Four samples, two copies; a tick is an emitted sample, the line 8 ticks. Sample s is whole at 2(s+1) and
        // would
        // leave at start + s: s = 3 asks start >= 8 - 3 = 5, the others 2, 3, 4. Copies at 5/8 and 5/8 + 1/2 = 9/8.
        // Sample s of line 0 is held from 2s until its second copy has left, 5 + 4 + s + 1 = 10 + s; of line 1, 8
        // later.
        // At 8: s0 [0,10) s1 [2,11) s2 [4,12) s3 [6,13) and the next s0: five. At 10: s0 goes, the next s1 comes: five.
        // At 12: s1 and s2 have gone, three of the next line and s3: four.
        Outcome outcome = LineRepeatSim.repeat(new Repeat(4, 0, 4, 2));

        assertThat(outcome.start()).isEqualTo(BigFraction.of(5, 8));
        assertThat(outcome.copyLatencies()).isEqualTo(List.of(BigFraction.of(5, 8), BigFraction.of(9, 8)));
        assertThat(outcome.mean()).isEqualTo(BigFraction.of(7, 8));
        assertThat(outcome.peakSamples()).isEqualTo(5);
    }

    @Test
    void blankingAtTheLineEndLetsTheCopyBeginEarlier() {
        // Of eight samples, three copies, only 2..4 are active. A tick is 1/24 line. Sample 4 is whole at 15 and leaves
        // at
        // start + 4: start = 11 (sample 2: 9 - 2 = 7, sample 3: 12 - 3 = 9).
        Outcome outcome = LineRepeatSim.repeat(new Repeat(8, 2, 3, 3));

        assertThat(outcome.start()).isEqualTo(BigFraction.of(11, 24));
        assertThat(outcome.copyLatencies()).hasSize(3).last().isEqualTo(BigFraction.of(27, 24));
    }

    @Test
    void aSingleCopyIsLateByTheOneSampleThatMustBeWhole() {
        // One copy at the line rate runs in step with the source, one sample behind.
        assertThat(LineRepeatSim.repeat(new Repeat(10, 0, 10, 1)).start()).isEqualTo(BigFraction.of(1, 10));
    }

    @Test
    void activeSamplesMustLieInTheLine() {
        assertThatThrownBy(() -> new Repeat(4, 1, 4, 2)).isInstanceOf(IllegalArgumentException.class);
    }
}
