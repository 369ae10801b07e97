package rasterfit.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.sim.LineBufferSim.Bob;
import rasterfit.sim.LineBufferSim.BobOutcome;
import rasterfit.sim.LineBufferSim.Latencies;
import rasterfit.sim.LineBufferSim.Locked;
import rasterfit.sim.LineBufferSim.Outcome;
import rasterfit.sim.LineBufferSim.RowLatency;

/** Cases small enough to be worked by hand; the working stands beside each. */
class LineBufferSimTest {
    private static final BigFraction FIVE_HALVES = BigFraction.of(5, 2);

    // T = 8 s, source of 4 lines of 2 s: line 0 arrives in [2, 4], line 1 in [4, 6] (a = 1, n = 2).
    // Output of 8 lines of 1 s, rows 0..3 at D+2, D+3, D+4, D+5.
    private static Outcome doubling(int taps) {
        return LineBufferSim.locked(new Locked(BigFraction.of(4), 1, 2, 8, 2, 4, taps));
    }

    @Test
    void doubledLinesLeaveAsSoonAsTheyHaveArrived() {
        // Own lines 0 0 1 1. Row 0: D+2 >= 4, row 2: D+4 >= 6, so D = 2. Rows leave at 4 5 6 7.
        // Latencies 4-2=2, 5-2=3, 6-4=2, 7-4=3. Line 0 is held in [2, 6), line 1 in [4, 8): both in [4, 6).
        Outcome outcome = doubling(1);

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(2, 8));
        assertThat(eighths(outcome.latencies())).containsExactly(2.0, 3.0, 2.0, 3.0);
        assertThat(ownLines(outcome.latencies())).containsExactly(0, 0, 1, 1);
        assertSummary(outcome.latencies(), 2, 2, 2, 2, 2.5, 3);
        assertThat(outcome.peakLines()).isEqualTo(2);
    }

    @Test
    void twoTapsWaitForTheLineBelow() {
        // Line centres 1/4, 3/4; row centres 1/8, 3/8, 5/8, 7/8. Taps: row 0 (0, 0), rows 1 and 2 (0, 1), row 3 (1, 1).
        // Row 1: D+3 >= 6, so D = 3; rows leave at 5 6 7 8. Own lines stay 0 0 1 1: latencies 3 4 3 4.
        // Line 0 is held until row 2 has left, [2, 8), line 1 in [4, 9): two.
        Outcome outcome = doubling(2);

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(3, 8));
        assertSummary(outcome.latencies(), 3, 3, 3, 3, 3.5, 4);
        assertThat(outcome.peakLines()).isEqualTo(2);
    }

    @Test
    void fourTapsClampedToTwoLinesNeedBothLinesForEveryRow() {
        // Row 0 (last centre above: none): lines -2..1 -> 0 0 0 1, so D+2 >= 6, D = 4. Row 3: lines 0..3 -> 0 1 1 1.
        // Rows leave at 6 7 8 9; both lines are held until 10, when the next field's line 0 begins (2 + 8 = 10).
        Outcome outcome = doubling(4);

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(4, 8));
        assertSummary(outcome.latencies(), 4, 4, 4, 4, 4.5, 5);
        assertThat(outcome.peakLines()).isEqualTo(2);
    }

    @Test
    void outputMayStartBeforeTheSourceWhenItsPictureLiesLow() {
        // T = 8 s, lines of 1 s: line 0 in [0, 1], line 1 in [1, 2]. Rows at D+6, D+7: D = -5, latencies 1 and 1.
        // Line 0 is held in [0, 2), line 1 in [1, 3).
        Outcome outcome = LineBufferSim.locked(new Locked(BigFraction.of(8), 0, 2, 8, 6, 2, 1));

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(-5, 8));
        assertSummary(outcome.latencies(), 1, 1, 1, 1, 1, 1);
        assertThat(outcome.peakLines()).isEqualTo(2);
    }

    @Test
    void fastReadingWaitsSoThatTheBottomLineIsThere() {
        // T = 8 s, 4 lines of 2 s, all kept; 4 rows of 1 s from the frame's start. Row 3: D+3 >= 8, D = 5.
        // Rows leave at 5 6 7 8, lines began at 0 2 4 6: latencies 5 4 3 2.
        // Held: [0,6) [2,7) [4,8) [6,9), and the next field from 8: at 4 three, at 6 three (line 0 goes first).
        Outcome outcome = LineBufferSim.locked(new Locked(BigFraction.of(4), 0, 4, 8, 0, 4, 1));

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(5, 8));
        assertSummary(outcome.latencies(), 5, 3, 2, 2, 3.5, 5);
        assertThat(outcome.peakLines()).isEqualTo(3);
    }

    @Test
    void tallPicturesOfTheSameProportionsCostOneLine() {
        // 262 lines doubled to 524 with all proportions kept (18 -> 36, 240 -> 480): row 2i begins (18+i) source lines
        // after D and needs the line that is whole at 19+i: D is one line. Latencies 1 and 1 1/2 lines in turn. A line
        // is
        // held for its arrival and its two rows, 2 lines: two places.
        Outcome outcome = LineBufferSim.locked(new Locked(BigFraction.of(262), 18, 240, 524, 36, 480, 1));

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(1, 262));
        assertThat(outcome.latencies().least()).isEqualTo(BigFraction.of(1, 262));
        assertThat(outcome.latencies().mean()).isEqualTo(BigFraction.of(5, 4 * 262));
        assertThat(outcome.latencies().greatest()).isEqualTo(BigFraction.of(3, 2 * 262));
        assertThat(outcome.peakLines()).isEqualTo(2);
    }

    @Test
    void aBrokenNumberOfLinesKeepsExactTimes() {
        // T = 5 s, 5/2 lines of 2 s: line 0 in [0, 2], line 1 in [2, 4]. Five output lines of 1 s, rows at D+0..D+3.
        // Own 0 0 1 1: D >= 2 and D+2 >= 4: D = 2 s of 5.
        Outcome outcome = LineBufferSim.locked(new Locked(FIVE_HALVES, 0, 2, 5, 0, 4, 1));

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(2, 5));
        assertThat(outcome.latencies().greatest()).isEqualTo(BigFraction.of(3, 5));
    }

    @Test
    void aLineThatNoRowNeedsIsNeverStored() {
        // T = 4 s, 4 lines of 1 s; 2 rows on output lines of 2 s: own lines 0 and 2. Row 0: D >= 1; row 1: D+2 >= 3.
        // D = 1; latencies 1-0 = 1 and 3-2 = 1. Line 0 held in [0, 3), line 2 in [2, 5), next field's line 0 from 4:
        // two.
        // Line 1 and 3 are not there; bottom line (3) is reported from line 2.
        Outcome outcome = LineBufferSim.locked(new Locked(BigFraction.of(4), 0, 4, 2, 0, 2, 1));

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(1, 4));
        assertThat(ownLines(outcome.latencies())).containsExactly(0, 2);
        assertThat(outcome.latencies().bottomLine()).isEqualTo(BigFraction.of(1, 4));
        assertThat(outcome.peakLines()).isEqualTo(2);
    }

    @Test
    void aRowCentredOnALineUsesThatLineAndTheNext() {
        // 4 lines to 4 rows, 2 taps: centres coincide; the line on the centre counts as above, so row j has j and j+1.
        // T = 4 s, lines and rows of 1 s: row 0 needs line 1, whole at 2: D = 2; row 2 needs line 3, whole at 4: D+2 >=
        // 4.
        // Row 3 has only line 3: D+3 >= 4. Latencies all 2.
        Outcome outcome = LineBufferSim.locked(new Locked(BigFraction.of(4), 0, 4, 4, 0, 4, 2));

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(2, 4));
        assertThat(outcome.latencies().least()).isEqualTo(BigFraction.of(2, 4));
        assertThat(outcome.latencies().greatest()).isEqualTo(BigFraction.of(2, 4));
    }

    @Test
    void theOwnLineIsHeldEvenWhereTheFilterLooksFurtherDown() {
        // T = 8 s, 8 lines of 1 s reduced to a single row that lasts 8 s. Top edge in line 0; centre at 4 lines,
        // between
        // the centres 3.5 and 4.5: taps 3 and 4. Line 4 is whole at 5: D = 5, latency 5 from line 0, leaves until 13.
        // Held: line 0 [0,13), 3 [3,13), 4 [4,13), and of the next field [8,..) [11,..) [12,..): six in [12, 13).
        Outcome outcome = LineBufferSim.locked(new Locked(BigFraction.of(8), 0, 8, 1, 0, 1, 2));

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(5, 8));
        assertSummary(outcome.latencies(), 5, 5, 5, 5, 5, 5);
        assertThat(outcome.peakLines()).isEqualTo(6);
    }

    // T = 10 s, 5/2 lines of 4 s. Top field: line 0 in [0, 4], line 1 in [4, 8]. Bottom: [2, 6] and [6, 10].
    // Four rows of 1 s at D..D+3 in the height of 4 frame lines; line centres, in frame lines: top 0.5 and 2.5, bottom
    // 1.5 and 3.5; top edges of the rows 0 1 2 3, centres 0.5 1.5 2.5 3.5.
    private static BobOutcome bob(int taps, Scan scan) {
        return LineBufferSim.bob(new Bob(FIVE_HALVES, 0, 2, 10, 0, 4, taps, scan));
    }

    @Test
    void bobAtTheTopEdgeTakesTheNearestFieldLine() {
        // Top: 0 -> 0.5, 1 -> 0.5 (0.5 against 1.5 away), 2 -> 2.5, 3 -> 2.5: own 0 0 1 1. Row 2: D+2 >= 8, D >= 6.
        // Bottom: 0 -> 1.5, 1 -> 1.5, 2 -> 1.5 (0.5 against 1.5), 3 -> 3.5: own 0 0 0 1. Row 3: D+3 >= 10, D >= 7.
        // Rows leave at 7 8 9 10. Top lines began at 0 0 4 4: 7 8 5 6. Bottom at 2 2 2 6: 5 6 7 4.
        // Held: top [0,9) [4,11); bottom, 10 later, [12,20) [16,21); next top from 20: [20,29): two at most.
        BobOutcome outcome = bob(1, Scan.BOB_TOP_EDGE);

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(7, 10));
        assertThat(ownLines(outcome.topField())).containsExactly(0, 0, 1, 1);
        assertThat(ownLines(outcome.bottomField())).containsExactly(0, 0, 0, 1);
        assertThat(tenths(outcome.topField())).containsExactly(7.0, 8.0, 5.0, 6.0);
        assertThat(tenths(outcome.bottomField())).containsExactly(5.0, 6.0, 7.0, 4.0);
        assertThat(outcome.topField().bottomLine()).isEqualTo(BigFraction.of(5, 10));
        assertThat(outcome.bottomField().mean()).isEqualTo(BigFraction.of(55, 100));
        assertThat(outcome.peakLines()).isEqualTo(2);
    }

    @Test
    void bobAHalfFrameLineBelowLooksAtTheRowCentreWhenRowsAreFrameLines() {
        // Points 0.5 1.5 2.5 3.5. Top: 0.5; 1.5 is as far from 0.5 as from 2.5 -> later; 2.5; 3.5 -> 2.5: own 0 1 1 1.
        // Row 1: D+1 >= 8. Bottom: 0.5 -> 1.5; 1.5; 2.5 as far from both -> 3.5; 3.5: own 0 0 1 1. Row 2: D+2 >= 10.
        BobOutcome outcome = bob(1, Scan.BOB_HALF_FRAME_LINE_BELOW);

        assertThat(ownLines(outcome.topField())).containsExactly(0, 1, 1, 1);
        assertThat(ownLines(outcome.bottomField())).containsExactly(0, 0, 1, 1);
        assertThat(outcome.offset()).isEqualTo(BigFraction.of(8, 10));
    }

    @Test
    void bobAFrameLineBelowLooksFurtherDown() {
        // Points 1 2 3 4. Top: 1 -> 0.5, 2 -> 2.5, 3, 4 -> 2.5: own 0 1 1 1. Bottom: 1, 2 -> 1.5, 3, 4 -> 3.5: 0 0 1 1.
        // D = max(8 - 1, 10 - 2) = 8. Rows leave at 8 9 10 11: bottom latencies 6 7 4 5.
        BobOutcome outcome = bob(1, Scan.BOB_FRAME_LINE_BELOW);

        assertThat(ownLines(outcome.topField())).containsExactly(0, 1, 1, 1);
        assertThat(ownLines(outcome.bottomField())).containsExactly(0, 0, 1, 1);
        assertThat(outcome.offset()).isEqualTo(BigFraction.of(8, 10));
        assertThat(tenths(outcome.bottomField())).containsExactly(6.0, 7.0, 4.0, 5.0);
    }

    @Test
    void bobWithAHigherPictureTellsTheLookingPointsApart() {
        // n = 2 field lines, 8 rows of half a frame line; top edges in frame lines 0 0.5 .. 3.5, top field 0.5 and 2.5,
        // middle between them 1.5. A row is past it (the middle counts as past) from top edge 1.5 (row 3) on; half a
        // frame
        // line below from top edge 1 (row 2) on; a frame line below from top edge 0.5 (row 1) on.
        assertThat(firstRowOfSecondTopLine(Scan.BOB_TOP_EDGE)).isEqualTo(3);
        assertThat(firstRowOfSecondTopLine(Scan.BOB_HALF_FRAME_LINE_BELOW)).isEqualTo(2);
        assertThat(firstRowOfSecondTopLine(Scan.BOB_FRAME_LINE_BELOW)).isEqualTo(1);
    }

    private static int firstRowOfSecondTopLine(Scan scan) {
        Latencies top =
                LineBufferSim.bob(new Bob(FIVE_HALVES, 0, 2, 10, 0, 8, 1, scan)).topField();
        return ownLines(top).indexOf(1);
    }

    @Test
    void bobWithTwoTapsWaitsForTheSlowerField() {
        // Top, row centres 0.5 1.5 2.5 3.5: row 0 lies on line 0: (0, 1), so D >= 8. Row 1 (0, 1), rows 2, 3 (1, 1).
        // Bottom: row 0 (0, 0): D >= 6; row 1 lies on line 0: (0, 1): D+1 >= 10, D >= 9; row 2 (0, 1). D = 9.
        // Held with rows at 9 10 11 12: top 0 until row 1 has left, [0,11), top 1 [4,13); bottom 0 [12, 22) (row 2
        // leaves
        // at 21), bottom 1 [16, 23); next top [20,31) [24,33): in [20,22) three.
        BobOutcome outcome = bob(2, Scan.BOB_TOP_EDGE);

        assertThat(outcome.offset()).isEqualTo(BigFraction.of(9, 10));
        assertThat(outcome.peakLines()).isEqualTo(3);
    }

    @Test
    void pictureLargerThanItsPeriodIsRefused() {
        assertThatThrownBy(() -> new Locked(BigFraction.of(4), 3, 2, 8, 0, 4, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Locked(BigFraction.of(4), 0, 2, 8, 5, 4, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Bob(BigFraction.of(2), 0, 2, 8, 0, 4, 1, Scan.BOB_TOP_EDGE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> doubling(3)).isInstanceOf(IllegalArgumentException.class);
    }

    private static void assertSummary(
            Latencies seen, double top, double middle, double bottom, double least, double mean, double greatest) {
        assertThat(List.of(
                        seen.topLine(),
                        seen.middleLine(),
                        seen.bottomLine(),
                        seen.least(),
                        seen.mean(),
                        seen.greatest()))
                .extracting(latency -> latency.multiply(8).doubleValue())
                .containsExactly(top, middle, bottom, least, mean, greatest);
    }

    private static List<Double> eighths(Latencies seen) {
        return times(seen, 8);
    }

    private static List<Double> tenths(Latencies seen) {
        return times(seen, 10);
    }

    private static List<Double> times(Latencies seen, int seconds) {
        return seen.rows().stream()
                .map(row -> row.latency().multiply(seconds).doubleValue())
                .toList();
    }

    private static List<Integer> ownLines(Latencies seen) {
        return seen.rows().stream().map(RowLatency::ownLine).toList();
    }
}
