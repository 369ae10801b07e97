package rasterfit.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.sim.FreeRunSim.Drift;
import rasterfit.sim.FreeRunSim.Setup;
import rasterfit.sim.FreeRunSim.SingleStoreOutcome;
import rasterfit.sim.FreeRunSim.StoredOutcome;
import rasterfit.sim.FreeRunSim.Tear;

/** Cases small enough to be worked by hand; the working stands beside each. All times in seconds. */
class FreeRunSimTest {
    private static BigFraction s(int seconds) {
        return BigFraction.of(seconds);
    }

    @Test
    void aFasterOutputRepeatsTheDifferenceOfTheRates() {
        // Fields of 4 s, two lines of 2 s, whole at 4(g+1); frames of 3 s from 0, two rows of 1 s.
        //   frame at 6: field 0 (whole at 4): 6-0 = 6, 7-2 = 5     frame at  9: field 1 (8): 9-4 = 5, 10-6 = 4
        //   frame at 12: field 2 (12):  4, 3                      frame at 15: field 2 again: 15-8 = 7, 16-10 = 6
        // Four frames: one repeated in the 9 s from first to last; mean (11 + 9 + 7 + 13) / 8 = 5.
        StoredOutcome four = FreeRunSim.wholeFields(fasterOutput(4));

        assertThat(four.spread().leastByRow()).isEqualTo(List.of(s(4), s(3)));
        assertThat(four.spread().greatestByRow()).isEqualTo(List.of(s(7), s(6)));
        assertThat(four.spread().least()).isEqualTo(s(3));
        assertThat(four.spread().greatest()).isEqualTo(s(7));
        assertThat(four.spread().mean()).isEqualTo(s(5));
        assertThat(four.dropped()).isZero();
        assertThat(four.repeated()).isOne();
        assertThat(four.repeatedPerSecond()).isEqualTo(BigFraction.of(1, 9));
        // Without the first frame and the repeated one: 5 4, 4 3.
        assertThat(four.fresh().greatestByRow()).isEqualTo(List.of(s(5), s(4)));
        assertThat(four.fresh().least()).isEqualTo(s(3));
        assertThat(four.fresh().mean()).isEqualTo(s(4));

        // Over a whole beat of 12 s the rate is the difference of the rates, 1/3 - 1/4 = 1/12.
        assertThat(FreeRunSim.wholeFields(fasterOutput(5)).repeatedPerSecond()).isEqualTo(BigFraction.of(1, 12));
    }

    private static Setup fasterOutput(int frames) {
        return new Setup(s(4), s(2), 0, 2, Scan.PROGRESSIVE, s(3), 3, 0, 2, 0, s(0), frames);
    }

    @Test
    void aSlowerOutputDropsFields() {
        // Fields of 3 s of a single line, whole at 3(g+1); frames of 4 s: at 4 field 0 (4-0 = 4), at 8 field 1 (8-3 =
        // 5),
        // at 12 field 3 (12-9 = 3; field 2 is dropped), at 16 field 4 (16-12 = 4).
        StoredOutcome outcome =
                FreeRunSim.wholeFields(new Setup(s(3), s(1), 0, 1, Scan.PROGRESSIVE, s(4), 1, 0, 1, 0, s(0), 4));

        assertThat(outcome.spread().least()).isEqualTo(s(3));
        assertThat(outcome.spread().mean()).isEqualTo(s(4));
        assertThat(outcome.spread().greatest()).isEqualTo(s(5));
        assertThat(outcome.dropped()).isOne();
        assertThat(outcome.repeated()).isZero();
        assertThat(outcome.droppedPerSecond()).isEqualTo(BigFraction.of(1, 12));
    }

    @Test
    void choosingTheFieldBeforeTheFirstRowMayMissTheNewestField() {
        // Fields of 4 s of one line, whole at 4, 8, ..; frames at 3, 7, ..; the row on output line 1 leaves 1 s later.
        // Chosen at the row (4): field 0, latency 4. Chosen at the frame's start: at 3 none, at 7 field 0, seen at 8.
        assertThat(FreeRunSim.wholeFields(chosenAtLine(1)).spread().greatest()).isEqualTo(s(4));
        assertThat(FreeRunSim.wholeFields(chosenAtLine(0)).spread().least()).isEqualTo(s(8));
    }

    private static Setup chosenAtLine(int pickRow) {
        return new Setup(s(4), s(1), 0, 1, Scan.PROGRESSIVE, s(4), 4, 1, 1, pickRow, s(3), 3);
    }

    // Fields of 5 s, 5/2 lines of 2 s; two lines kept. Even fields: [0, 2] [2, 4]; odd ones half a line later, [1, 3]
    // [3, 5]. Frames of 5 s with four rows of 1 s; own lines (see LineBufferSimTest) top 0 0 1 1, bottom 0 0 0 1.
    private static StoredOutcome interlaced(int phase, int frames) {
        return FreeRunSim.wholeFields(
                new Setup(s(5), BigFraction.of(5, 2), 0, 2, Scan.BOB_TOP_EDGE, s(5), 5, 0, 4, 0, s(phase), frames));
    }

    @Test
    void theLateBottomFieldAddsItsHalfLine() {
        // Frames at 0 (nothing), 5: field 0, whole at 4: rows 5 6 7 8 less 0 0 2 2 = 5 6 5 6.
        // At 10: field 1, whole at 10: rows 10..13 less 6 6 6 8 = 4 5 6 5.
        StoredOutcome outcome = interlaced(0, 2);

        assertThat(outcome.spread().leastByRow()).isEqualTo(List.of(s(4), s(5), s(5), s(5)));
        assertThat(outcome.spread().greatestByRow()).isEqualTo(List.of(s(5), s(6), s(6), s(6)));
        assertThat(outcome.dropped() + outcome.repeated()).isZero();
    }

    @Test
    void anUnluckyPhaseShowsEveryTopFieldTwiceAndNoBottomField() {
        // Frames at 4: field 0 (whole at 4); 9: field 1 is whole only at 10, field 0 again; 14: field 2 (whole at 14),
        // field 1 dropped; 19: field 3 whole at 20, field 2 again. Latencies 4 5 4 5 and 9 10 9 10 in turn.
        StoredOutcome outcome = interlaced(4, 4);

        assertThat(outcome.dropped()).isEqualTo(1);
        assertThat(outcome.repeated()).isEqualTo(2);
        assertThat(outcome.spread().least()).isEqualTo(s(4));
        assertThat(outcome.spread().greatest()).isEqualTo(s(10));
    }

    @Test
    void aRowOfASingleStoreIsFreshOnceForEachVersionOfItsLine() {
        // Fields of 4 s of one line, whole at 4, 8, 12, 16, ..; frames at 6 9 12 15 18 of one row.
        // Versions 0 1 2 2 3, begun at 0 4 8 8 12: latencies 6 5 4 7 6, of which 6, the first, and 7, the repeated one,
        // do not count.
        SingleStoreOutcome outcome =
                FreeRunSim.singleStore(new Setup(s(4), s(1), 0, 1, Scan.PROGRESSIVE, s(3), 1, 0, 1, 0, s(0), 5));

        assertThat(outcome.spread().greatest()).isEqualTo(s(7));
        assertThat(outcome.fresh().greatest()).isEqualTo(s(6));
        assertThat(outcome.fresh().mean()).isEqualTo(s(5));
    }

    // Fields of 8 s, four lines of 2 s: line i of field g is whole at 8g + 2i + 2. Frames of 9 s, rows 0..3 of 1 s.
    private static SingleStoreOutcome singleStore(int frames) {
        return FreeRunSim.singleStore(new Setup(s(8), s(4), 0, 4, Scan.PROGRESSIVE, s(9), 9, 0, 4, 0, s(0), frames));
    }

    @Test
    void theTearOfASingleStoreWandersDownAsTheOutputLags() {
        // Frame 1, at  9 10 11 12: 0 0 0 0 (line 0 of field 1 is whole at 10, line 3 of field 0 at 8)
        // Frame 2, at 18 19 20 21: line 0 of field 2 is whole at 18, line 1 only at 20: 2 1 1 1, tear at row 1
        // Frame 3, at 27 28 29 30: lines of field 3 whole at 26 28 30 32: 3 3 2 2, tear at row 2
        // Frame 4, at 36 37 38 39: whole at 34 36 38 40: 4 4 4 3, tear at row 3
        // Frames 5 to 9: frame F at 9F + j, field F whole at 8F + 2j + 2 <= 9F + j as j + 2 <= F; field F+1 comes in
        // line 0 at 8F + 10 > 9F as F < 10: no tear. Frame 10: 90 = 8 x 11 + 2: 11 10 10 10, tear at row 1.
        SingleStoreOutcome outcome = singleStore(10);

        assertThat(outcome.tears())
                .containsExactly(
                        new Tear(2, 1, 2, 1), new Tear(3, 2, 3, 2), new Tear(4, 3, 4, 3), new Tear(10, 1, 11, 10));
        assertThat(outcome.framesWithTear()).isEqualTo(4);
        assertThat(outcome.drift()).isEqualTo(new Drift(0, 2, 1, 1, s(1)));
    }

    @Test
    void rowsOfASingleStoreAreAsOldAsTheirOwnLine() {
        // Frames 1 and 2 above. Lines began at 8g + 2i. Frame 1: 9-0 = 9, 10-2 = 8, 11-4 = 7, 12-6 = 6.
        // Frame 2: 18-16 = 2, 19-10 = 9, 20-12 = 8, 21-14 = 7.
        SingleStoreOutcome outcome = singleStore(2);

        assertThat(outcome.spread().leastByRow()).isEqualTo(List.of(s(2), s(8), s(7), s(6)));
        assertThat(outcome.spread().greatestByRow()).isEqualTo(List.of(s(9), s(9), s(8), s(7)));
    }

    @Test
    void equalClocksTearAtOnePlaceOrNotAtAll() {
        // Frames of 8 s as the fields, rows of 1 s. Frame at 4 + 8F: rows at 4 5 6 7 (+8F) against lines whole at 2 4 6
        // 8
        // (+8F): field F in rows 0..2 (2<=4, 4<=5, 6<=6), row 3 (7 < 8) still the field before: always row 3.
        SingleStoreOutcome outcome =
                FreeRunSim.singleStore(new Setup(s(8), s(4), 0, 4, Scan.PROGRESSIVE, s(8), 8, 0, 4, 0, s(4), 6));

        assertThat(outcome.tears()).hasSize(6).extracting(Tear::row).containsOnly(3);
        assertThat(outcome.drift()).isEqualTo(new Drift(0, 5, 0, 0, s(0)));
    }

    @Test
    void readingAtThePaceOfWritingMayChangeToAndFro() {
        // Fields of 8 s, two lines of 4 s, whole at 8g + 4 and 8g + 8. Frames of 8 s from 3, four rows of 2 s, own
        // lines
        // 0 0 1 1. Frame 1: line 0 at 11: field 0 (field 1 only at 12), at 13: field 1; line 1 at 15: field 0 (16), at
        // 17: field 1. Every frame the same: tears at rows 1, 2 and 3, a zone of 2 rows, nowhere clear of the edges.
        SingleStoreOutcome outcome =
                FreeRunSim.singleStore(new Setup(s(8), s(2), 0, 2, Scan.PROGRESSIVE, s(8), 4, 0, 4, 0, s(3), 2));

        assertThat(outcome.tears().subList(0, 3))
                .containsExactly(new Tear(1, 1, 0, 1), new Tear(1, 2, 1, 0), new Tear(1, 3, 0, 1));
        assertThat(outcome.tears()).hasSize(6);
        assertThat(outcome.drift()).isEqualTo(new Drift(2, 0, 0, 0, s(0)));
    }

    @Test
    void senselessSetupsAreRefused() {
        assertThatThrownBy(() -> chosenAtLine(2)).isInstanceOf(IllegalArgumentException.class);
        Setup bob = new Setup(s(5), BigFraction.of(5, 2), 0, 2, Scan.BOB_TOP_EDGE, s(5), 5, 0, 4, 0, s(0), 2);
        assertThatThrownBy(() -> FreeRunSim.singleStore(bob)).isInstanceOf(IllegalArgumentException.class);
    }
}
