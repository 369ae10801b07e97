package rasterfit.match.tune;

import static rasterfit.Fractions.fraction;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * Traces panel columns back, one by one, to all dots that the filters of panel and scaler reach. Border counts as dot −1
 * on the left and as one past the last on the right.
 */
final class PanelTrace {
    private final AxisMap map;
    private final BigFraction perDot;

    PanelTrace(AxisMap map) {
        this.map = map;
        this.perDot = map.samplesPerDot() == null ? BigFraction.ONE : fraction(map.samplesPerDot());
    }

    /** The dots, border included, of which each panel column is mixed. */
    List<Set<Integer>> mixtures(int taps, boolean interpolating) {
        List<Set<Integer>> mixtures = new ArrayList<>();
        for (int column = 0; column < map.panel().pixels(); column++) {
            Set<Integer> dots = new TreeSet<>();
            for (int raster : weighed(rasterPosition(column), interpolating ? 2 : 1)) {
                if (isInPicture(raster)) {
                    weighed(samplePosition(raster), taps).forEach(sample -> dots.add(dotOfSample(sample)));
                } else {
                    dots.add(border(raster));
                }
            }
            mixtures.add(dots);
        }
        return mixtures;
    }

    /** The cells around a position that a filter weighs; only one where the position is a cell's very centre. */
    private static List<Integer> weighed(BigFraction position, int taps) {
        if (taps == 1) {
            return List.of(floor(position));
        }
        BigFraction fromCentre = position.subtract(BigFraction.of(1, 2));
        int before = floor(fromCentre);
        if (BigFraction.of(before).equals(fromCentre)) {
            return List.of(before);
        }
        List<Integer> cells = new ArrayList<>();
        for (int cell = before - taps / 2 + 1; cell <= before + taps / 2; cell++) {
            cells.add(cell);
        }
        return cells;
    }

    private BigFraction rasterPosition(int panelColumn) {
        return fraction(map.panel().length())
                .divide(fraction(map.panel().extent()))
                .multiply(centre(panelColumn))
                .add(fraction(map.panel().start()));
    }

    private BigFraction samplePosition(int rasterColumn) {
        return fraction(map.captureLength())
                .divide(BigFraction.of(map.pictureWidth()))
                .multiply(centre((int) (rasterColumn - map.pictureLeft())))
                .add(fraction(map.captureStart()));
    }

    private boolean isInPicture(int rasterColumn) {
        long column = rasterColumn - map.pictureLeft();
        return column >= 0
                && column < map.pictureWidth()
                && rasterColumn >= 0
                && rasterColumn < map.rasterActive().floor();
    }

    private int border(int rasterColumn) {
        return rasterColumn < map.pictureLeft() ? -1 : map.count();
    }

    private int dotOfSample(int sample) {
        int dot = floor(centre(sample).divide(perDot).subtract(fraction(map.first())));
        return Math.max(-1, Math.min(map.count(), dot));
    }

    private static BigFraction centre(int cell) {
        return BigFraction.of(2 * cell + 1, 2);
    }

    private static int floor(BigFraction value) {
        int towardsZero = value.intValue();
        return BigFraction.of(towardsZero).compareTo(value) > 0 ? towardsZero - 1 : towardsZero;
    }
}
