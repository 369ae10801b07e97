package rasterfit.timing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** The 154 numbered video timings of CTA-861-I (table 1, table 2, §4). */
public final class Cta861 {
    /** CTA-861-I table 1 note c: the ±0.5 % of VESA DMT let VIC 1 run at this clock for an exact 60 Hz. */
    private static final Frequency VIC_1_AT_60_HZ = Frequency.ofHz(25_200_000);

    /** The farthest that a rate of the 525-line family lies from its multiple of 6 Hz: 262 lines instead of 262½. */
    private static final Rational SAME_FAMILY = Rational.of(2, 1000);

    private static final int HALF_HEIGHT_525 = 262;
    private static final int HALF_HEIGHT_625 = 312;

    private static final Map<Integer, VideoTiming> BY_VIC = read();
    private static final List<VideoTiming> ALL = List.copyOf(BY_VIC.values());

    private Cta861() {}

    /** All timings, by ascending VIC. */
    public static List<VideoTiming> all() {
        return ALL;
    }

    /** Empty for a number that CTA-861-I leaves reserved. */
    public static Optional<VideoTiming> find(int vic) {
        return Optional.ofNullable(BY_VIC.get(vic));
    }

    private static Map<Integer, VideoTiming> read() {
        Map<Integer, VideoTiming> byVic = new TreeMap<>();
        Cta861Table.ROWS.lines().map(Cta861::readRow).forEach(timing -> byVic.put(timing.vic(), timing));
        return Collections.unmodifiableMap(byVic);
    }

    private static VideoTiming readRow(String row) {
        String[] cells = row.trim().split(" +", -1);
        int vic = Integer.parseInt(cells[0]);
        int scanAt = cells[5].length() - 1;
        RasterTiming printed = new RasterTiming(
                Frequency.ofHz(Long.parseLong(cells[11]) * 1000),
                Integer.parseInt(cells[1]),
                Integer.parseInt(cells[2]),
                Integer.parseInt(cells[3]),
                Integer.parseInt(cells[4]),
                Integer.parseInt(cells[5].substring(0, scanAt)),
                Integer.parseInt(cells[6]),
                Integer.parseInt(cells[7]),
                Integer.parseInt(cells[8]),
                Integer.parseInt(cells[9]),
                cells[5].charAt(scanAt) == 'i' ? Scan.INTERLACED : Scan.PROGRESSIVE,
                Polarity.ofSign(cells[10].charAt(0)),
                Polarity.ofSign(cells[10].charAt(1)));
        List<Integer> repetitions = repetitions(cells[12]);
        Rational leastPixelAspect = ratio(cells[14]).dividedBy(repetitions.get(0));
        return new VideoTiming(
                vic,
                variants(printed),
                vic == 1 ? VIC_1_AT_60_HZ : otherPixelClock(printed),
                repetitions,
                ratio(cells[13]),
                repetitions.stream().map(leastPixelAspect::times).toList());
    }

    /** Table 1 prints the 240-line timings with 262 or 263 lines, the 288-line ones with 312, 313 or 314. */
    private static List<RasterTiming> variants(RasterTiming printed) {
        int extraLines =
                printed.verticalTotal() == HALF_HEIGHT_525 ? 1 : printed.verticalTotal() == HALF_HEIGHT_625 ? 2 : 0;
        List<RasterTiming> variants = new ArrayList<>();
        for (int extra = 0; extra <= extraLines; extra++) {
            variants.add(printed.withVerticalFrontPorch(printed.verticalFrontPorch() + extra));
        }
        return variants;
    }

    private static @Nullable Frequency otherPixelClock(RasterTiming printed) {
        Rational rate = printed.fieldRate().hz();
        Rational ratio = rate.dividedBy(6 * rate.dividedBy(6).round());
        if (ratio.equals(Rational.ONE)) {
            return printed.pixelClock().dividedBy(Broadcast.THOUSAND_AND_ONE);
        }
        boolean runsSlow = ratio.minus(Rational.ONE).abs().isLessThan(SAME_FAMILY);
        return runsSlow ? printed.pixelClock().times(Broadcast.THOUSAND_AND_ONE) : null;
    }

    /** {@code 2}, {@code 1,2,4} or {@code 1-10}. */
    private static List<Integer> repetitions(String cell) {
        int dash = cell.indexOf('-');
        if (dash >= 0) {
            return IntStream.rangeClosed(
                            Integer.parseInt(cell.substring(0, dash)), Integer.parseInt(cell.substring(dash + 1)))
                    .boxed()
                    .toList();
        }
        return List.of(cell.split(",", -1)).stream().map(Integer::valueOf).toList();
    }

    private static Rational ratio(String cell) {
        return Rational.parse(cell.replace(':', '/'));
    }
}
