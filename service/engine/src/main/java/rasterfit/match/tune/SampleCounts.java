package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import rasterfit.gear.Mode;
import rasterfit.gear.SamplesPerLine;
import rasterfit.quantity.Rational;

/**
 * The sample counts per line worth trying: a fixed list as it stands; of a free range every whole multiple of the dots
 * per line, the counts of standard lines and their doubles, and those that make the output's samples square.
 */
final class SampleCounts {
    /** Square-pixel and 13.5 MHz samples per line of both systems, and their doubles (common practice; BT.601). */
    private static final List<Integer> STANDARD = List.of(780, 858, 864, 944, 1560, 1716, 1728, 1888);

    private SampleCounts() {}

    /**
     * Ascending; never empty.
     *
     * @param lineFactors output rows per frame line that are in question
     */
    static int[] worthTrying(Captured captured, SamplesPerLine allowed, List<Rational> lineFactors) {
        NavigableSet<Integer> counts = new TreeSet<>();
        if (allowed instanceof SamplesPerLine.FixedList fixed) {
            counts.addAll(fixed.values());
        } else {
            SamplesPerLine.FreeRange range = (SamplesPerLine.FreeRange) allowed;
            for (Mode mode : captured.modes()) {
                addMultiples(counts, mode.dotsPerLine(), range);
            }
            List<Integer> others = new ArrayList<>(STANDARD);
            for (Rational factor : lineFactors) {
                Rational square = captured.lead()
                        .dotsPerLine()
                        .times(captured.leadAspect())
                        .times(factor);
                others.add((int) Math.min(Integer.MAX_VALUE, square.round()));
            }
            others.stream().filter(range::allows).forEach(counts::add);
            if (counts.isEmpty()) {
                counts.add(range.max());
            }
        }
        return counts.stream().mapToInt(Integer::intValue).toArray();
    }

    private static void addMultiples(
            NavigableSet<Integer> counts, Rational dotsPerLine, SamplesPerLine.FreeRange range) {
        // k·p/q is whole exactly when k is a multiple of q.
        long step = dotsPerLine.numerator().longValueExact();
        long first = Math.max(1, -Math.floorDiv(-(long) range.min(), step)) * step;
        for (long count = first; count <= range.max(); count += step) {
            counts.add((int) count);
        }
    }
}
