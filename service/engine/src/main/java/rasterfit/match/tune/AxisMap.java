package rasterfit.match.tune;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/**
 * One direction of the way from source to panel: dots (or lines) → samples → picture in the output raster → panel.
 * Every stage takes the sample under the centre of its own element, so a dot owns the panel columns whose centre, traced
 * back through all stages, lands on it.
 *
 * @param first position of the first active dot, in dots from the left edge of the captured window
 * @param count active dots
 * @param usedFirst the same for the dots really drawn
 * @param usedCount dots really drawn
 * @param samplesPerDot absent where nothing is sampled: dots are then carried as they are
 * @param captureStart left edge of the captured window, in samples (dots where nothing is sampled) from the anchor at
 *     which the sample grid starts
 * @param captureLength width of the captured window in the same unit
 * @param pictureLeft first raster column of the drawn window; negative when its left part falls off
 * @param pictureWidth raster columns on which the whole captured window would be drawn
 * @param rasterActive active columns of the raster
 * @param panel where the raster lands
 */
record AxisMap(
        Rational first,
        int count,
        Rational usedFirst,
        int usedCount,
        @Nullable Rational samplesPerDot,
        Rational captureStart,
        Rational captureLength,
        long pictureLeft,
        long pictureWidth,
        Rational rasterActive,
        PanelAxis panel) {

    /**
     * @param scale panel columns per dot, through all stages
     * @param least width of the narrowest dot that is wholly visible; 0 if one vanishes; absent without a grid
     * @param drawn extent of the visible active picture on the panel, in panel columns
     */
    record Shape(
            Rational scale,
            Rational cropped,
            Rational croppedUsed,
            Rational drawn,
            @Nullable Integer least,
            @Nullable Integer greatest) {}

    private Rational perDot() {
        return samplesPerDot == null ? Rational.ONE : samplesPerDot;
    }

    Rational scale() {
        return perDot().times(pictureWidth).dividedBy(captureLength).times(panel.magnification());
    }

    Shape measure() {
        // The visible part of the raster, traced back to dots.
        Rational left = panel.start().max(Rational.of(Math.max(pictureLeft, 0)));
        Rational right = panel.start()
                .plus(panel.length())
                .min(Rational.of(pictureLeft + pictureWidth))
                .min(rasterActive);
        Rational visibleFrom = toDots(left);
        Rational visibleTo = toDots(right.max(left));
        Rational shown = overlap(first, count, visibleFrom, visibleTo);
        Rational shownUsed = overlap(usedFirst, usedCount, visibleFrom, visibleTo);
        Rational scale = scale();
        int[] widths = panel.pixels() == null ? new int[0] : extremes(visibleFrom, visibleTo);
        return new Shape(
                scale,
                Rational.of(count).minus(shown),
                Rational.of(usedCount).minus(shownUsed),
                shown.times(scale),
                widths.length == 0 ? null : widths[0],
                widths.length == 0 ? null : widths[1]);
    }

    private Rational toDots(Rational rasterColumn) {
        return rasterColumn
                .minus(Rational.of(pictureLeft))
                .times(captureLength)
                .dividedBy(pictureWidth)
                .plus(captureStart)
                .dividedBy(perDot());
    }

    private static Rational overlap(Rational from, int count, Rational visibleFrom, Rational visibleTo) {
        Rational length = from.plus(Rational.of(count)).min(visibleTo).minus(from.max(visibleFrom));
        return length.max(Rational.ZERO);
    }

    /** Least and greatest number of panel columns over the active dots that are wholly visible. */
    private int[] extremes(Rational visibleFrom, Rational visibleTo) {
        int from = (int) Math.max(0, visibleFrom.minus(first).ceil());
        int to = (int) Math.min(count, visibleTo.minus(first).floor());
        if (from >= to) {
            return new int[] {0, 0};
        }
        Edges edges = edges();
        long least = Long.MAX_VALUE;
        long greatest = 0;
        long edge = edges.at(from);
        for (int dot = from; dot < to; dot++) {
            long next = edges.at(dot + 1);
            least = Math.min(least, next - edge);
            greatest = Math.max(greatest, next - edge);
            edge = next;
        }
        return new int[] {(int) least, (int) greatest};
    }

    /** Maps the left edge of a dot to the first panel column whose centre lies on it or beyond. */
    private Edges edges() {
        Rational perDot = perDot();
        // First sample whose centre is at or after the edge: (s + 1/2) ≥ perDot·(first + dot).
        StepLine toSample = samplesPerDot == null
                ? null
                : StepLine.of(perDot, perDot.times(first).minus(Rational.HALF));
        // First picture column whose centre falls into that sample: start + (o + 1/2)·length/width ≥ s.
        Rational columnsPerSample = Rational.of(pictureWidth).dividedBy(captureLength);
        Rational start = samplesPerDot == null ? captureStart.minus(first) : captureStart;
        StepLine toColumn = StepLine.of(
                columnsPerSample, columnsPerSample.times(start).negate().minus(Rational.HALF));
        // First panel column whose centre falls into that raster column.
        Rational magnification = panel.magnification();
        StepLine toPanel = StepLine.of(
                magnification,
                Rational.of(pictureLeft)
                        .minus(panel.start())
                        .times(magnification)
                        .minus(Rational.HALF));
        long firstColumn = Math.max(0, -pictureLeft);
        long lastColumn = Math.min(pictureWidth, rasterActive.floor() - pictureLeft);
        Integer pixels = panel.pixels();
        return new Edges(toSample, toColumn, toPanel, firstColumn, lastColumn, pixels == null ? 0 : pixels);
    }

    private record Edges(
            @Nullable StepLine toSample,
            StepLine toColumn,
            StepLine toPanel,
            long firstColumn,
            long lastColumn,
            int pixels) {
        long at(long dot) {
            long sample = toSample == null ? dot : toSample.ceilAt(dot);
            long column = Math.min(lastColumn, Math.max(firstColumn, toColumn.ceilAt(sample)));
            return Math.min(pixels, Math.max(0, toPanel.ceilAt(column)));
        }
    }
}
