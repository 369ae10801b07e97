package rasterfit.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.sim.ResampleSim.Lines;
import rasterfit.sim.ResampleSim.Panel;
import rasterfit.sim.ResampleSim.Placement;
import rasterfit.sim.ResampleSim.Sampling;
import rasterfit.sim.ResampleSim.Seen;

/** Cases small enough to be worked by hand; the working stands beside each. */
class ResampleSimTest {
    private static BigFraction of(int numerator, int denominator) {
        return BigFraction.of(numerator, denominator);
    }

    /** A panel that shows a raster of the same width column by column. */
    private static Panel plain(int columns) {
        return new Panel(columns, BigFraction.ZERO, BigFraction.of(columns), columns, 0);
    }

    @Test
    void aDotIsFollowedThroughAllStages() {
        // Four dots a line, active dots at 1 and 2, sampled at twice the dot rate from the left edge of dot 1:
        // samples 0 0 1 1. On six columns the centres fall on samples .33 1 1.67 2.33 3 3.67: 0 1 1 2 3 3: dots 0 0 0 1
        // 1 1.
        // Raster of 10 from column 2: - - 0 0 0 1 1 1 - -. Five panel columns show columns 1 3 5 7 9: - 0 1 1 -.
        Seen seen = ResampleSim.dots(
                new Sampling(of(4, 1), of(1, 1), 2, 8, of(1, 4), 4),
                new Placement(6, 2, 10),
                new Panel(5, of(0, 1), of(10, 1), 5, 0));

        assertThat(seen.panel()).containsExactly(-1, 0, 1, 1, -1);
        assertThat(seen.widths()).containsExactly(1, 2);
        assertThat(seen.leastWidth()).isEqualTo(1);
        assertThat(seen.greatestWidth()).isEqualTo(2);
        assertThat(seen.inside()).isEqualTo(2);
        assertThat(seen.vanished()).isZero();
    }

    @Test
    void tooFewSamplesLoseADot() {
        // Four dots, three samples with centres at dots 0.67, 2, 3.33: dots 0, 2, 3. Dot 1 is inside but has no column.
        Seen seen =
                ResampleSim.dots(new Sampling(of(4, 1), of(0, 1), 4, 3, of(0, 1), 3), new Placement(3, 0, 3), plain(3));

        assertThat(seen.panel()).containsExactly(0, 2, 3);
        assertThat(seen.vanished()).isEqualTo(1);
        assertThat(seen.leastWidth()).isZero();
        assertThat(seen.inside()).isEqualTo(4);
        assertThat(seen.cropped()).isZero();
    }

    @Test
    void aBrokenNumberOfDotsIsExact() {
        // 7/2 dots a line, the first half a dot in; seven samples a line are two a dot. The window begins at 1/7 line,
        // which is half a dot, the left edge of dot 0; six samples: 0 0 1 1 2 2.
        Seen seen =
                ResampleSim.dots(new Sampling(of(7, 2), of(1, 2), 3, 7, of(1, 7), 6), new Placement(6, 0, 6), plain(6));

        assertThat(seen.panel()).containsExactly(0, 0, 1, 1, 2, 2);
        assertThat(seen.leastWidth()).isEqualTo(2);
        assertThat(seen.greatestWidth()).isEqualTo(2);
    }

    @Test
    void aWindowBesideThePictureCutsAndCrops() {
        // Four dots fill the line; two samples a dot. The window of 4 samples begins at 3/8 line, in the middle of dot
        // 1:
        // it sees the second half of 1, all of 2, the first half of 3. Dot 0 is cropped, 1 and 3 are cut.
        Seen seen =
                ResampleSim.dots(new Sampling(of(4, 1), of(0, 1), 4, 8, of(3, 8), 4), new Placement(4, 0, 4), plain(4));

        assertThat(seen.panel()).containsExactly(1, 2, 2, 3);
        assertThat(seen.cropped()).isEqualTo(1);
        assertThat(seen.cut()).isEqualTo(2);
        assertThat(seen.inside()).isEqualTo(1);
        assertThat(seen.firstInside()).isEqualTo(2);
        assertThat(seen.lastInside()).isEqualTo(2);
        assertThat(seen.leastWidth()).isEqualTo(2);
    }

    @Test
    void aWindowThatBeginsBeforeThePictureShowsNothingThere() {
        // As above with one active dot at 1: the window from 0 sees dots 0 (not active), 1, 2 (not active).
        Seen seen =
                ResampleSim.dots(new Sampling(of(4, 1), of(1, 1), 1, 4, of(0, 1), 3), new Placement(3, 0, 3), plain(3));

        assertThat(seen.panel()).containsExactly(-1, 0, -1);
    }

    @Test
    void linesGoTheSameWayWithoutSampling() {
        // Three lines on seven rows: centres at lines .21 .64 1.07 1.5 1.93 2.36 2.79: 0 0 1 1 1 2 2. In a raster of 9
        // from
        // row 1: - 0 0 1 1 1 2 2 -. Rows 2..7 are shown: 0 1 1 1 2 2. Line 0 lies in [1, 3.33), from 2 on: cut. Lines 1
        // [3.33, 5.67) and 2 [5.67, 8) are inside.
        Seen seen =
                ResampleSim.lines(new Lines(3, 0, 3), new Placement(7, 1, 9), new Panel(6, of(2, 1), of(6, 1), 6, 0));

        assertThat(seen.panel()).containsExactly(0, 1, 1, 1, 2, 2);
        assertThat(seen.cut()).isEqualTo(1);
        assertThat(seen.inside()).isEqualTo(2);
        assertThat(seen.leastWidth()).isEqualTo(2);
        assertThat(seen.greatestWidth()).isEqualTo(3);
    }

    @Test
    void linesOutsideTheShownPartAreCropped() {
        // As above; rows 4..7 of the raster: 1 1 2 2. Line 0 ends at 3.33: cropped. Line 1 begins at 3.33: cut.
        Seen seen =
                ResampleSim.lines(new Lines(3, 0, 3), new Placement(7, 1, 9), new Panel(4, of(4, 1), of(4, 1), 4, 0));

        assertThat(seen.panel()).containsExactly(1, 1, 2, 2);
        assertThat(seen.cropped()).isEqualTo(1);
        assertThat(seen.cut()).isEqualTo(1);
        assertThat(seen.inside()).isEqualTo(1);
    }

    @Test
    void keptLinesMayReachBeyondThePicture() {
        Seen seen = ResampleSim.lines(new Lines(2, -1, 4), new Placement(4, 0, 4), plain(4));

        assertThat(seen.panel()).containsExactly(-1, 0, 1, -1);
        assertThat(seen.inside()).isEqualTo(2);
    }

    @Test
    void aPictureWiderThanItsRasterLosesItsEdges() {
        // Four lines, two rows each, from row -2 of a raster of 4: rows 2..5 of 0 0 1 1 2 2 3 3.
        Seen seen = ResampleSim.lines(new Lines(4, 0, 4), new Placement(8, -2, 4), plain(4));

        assertThat(seen.panel()).containsExactly(1, 1, 2, 2);
        assertThat(seen.cropped()).isEqualTo(2);
        assertThat(seen.cut()).isZero();
    }

    @Test
    void thePanelMayShowThePartOnSomeOfItsColumnsOnly() {
        // Two lines on two raster rows, shown twice as high on panel rows 1..4 of 6.
        Seen seen =
                ResampleSim.lines(new Lines(2, 0, 2), new Placement(2, 0, 2), new Panel(6, of(0, 1), of(2, 1), 4, 1));

        assertThat(seen.panel()).containsExactly(-1, 0, 0, 1, 1, -1);
        assertThat(seen.inside()).isEqualTo(2);
    }

    @Test
    void aCentreOnABorderTakesTheLaterCell() {
        // Four lines on two rows: centres at lines 1 and 3, both borders: lines 1 and 3; 0 and 2 vanish.
        Seen seen = ResampleSim.lines(new Lines(4, 0, 4), new Placement(2, 0, 2), plain(2));

        assertThat(seen.panel()).containsExactly(1, 3);
        assertThat(seen.vanished()).isEqualTo(2);
    }
}
