package rasterfit.match.tune;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/**
 * Where one direction of an active raster lands on a panel: the part [start, start + length) of the raster, in raster
 * columns, covers {@code extent} of the panel.
 *
 * @param extent in panel columns; on a tube in any unit that both directions share
 * @param pixels the same as a count; absent on a tube, which has no grid
 * @param offset first panel column of the covered part
 */
record PanelAxis(
        Rational start,
        Rational length,
        Rational extent,
        @Nullable Integer pixels,
        long offset) {
    /** Panel columns per raster column. */
    Rational magnification() {
        return extent.dividedBy(length);
    }

    /** The same place on the panel, without counting its pixels. */
    PanelAxis withoutGrid() {
        return new PanelAxis(start, length, extent, null, offset);
    }

    boolean isOneToOne() {
        return extent.equals(length) && start.isWhole();
    }
}
