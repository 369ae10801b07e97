package rasterfit.match.tune;

import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Panel;
import rasterfit.quantity.Rational;

/**
 * How a display lays an active raster on its panel under one of its aspect controls.
 *
 * <p>Filling and keeping the signalled aspect hide {@code overscan} of the raster at each edge; one-to-one hides
 * nothing unless the raster is larger than the panel.
 */
record PanelFit(PanelAxis horizontal, PanelAxis vertical) {
    /**
     * @param activeColumns of the raster; on a tube possibly a fraction, as are the rows
     * @param signalledAspect absent where the link signals none: a television then fills, a monitor takes the samples as
     *     square (assumption)
     * @param overscan share of the raster hidden at each edge
     */
    static PanelFit of(
            AspectControl control,
            Panel panel,
            DisplayClass displayClass,
            Rational activeColumns,
            Rational activeRows,
            @Nullable Rational signalledAspect,
            Rational overscan) {
        if (panel instanceof Panel.Tube) {
            return new PanelFit(
                    overscanned(activeColumns, panel.aspect(), null, 0, overscan),
                    overscanned(activeRows, Rational.ONE, null, 0, overscan));
        }
        Panel.Grid grid = (Panel.Grid) panel;
        if (control == AspectControl.ONE_TO_ONE) {
            return new PanelFit(oneToOne(activeColumns, grid.columns()), oneToOne(activeRows, grid.rows()));
        }
        Rational aspect = grid.aspect();
        if (control == AspectControl.SIGNALLED) {
            if (signalledAspect != null) {
                aspect = signalledAspect;
            } else if (displayClass == DisplayClass.MONITOR) {
                aspect = activeColumns.dividedBy(activeRows);
            }
        }
        boolean wide = !aspect.isLessThan(grid.aspect());
        int columns = wide ? grid.columns() : (int) aspect.times(grid.rows()).round();
        int rows = wide ? (int) Rational.of(grid.columns()).dividedBy(aspect).round() : grid.rows();
        return new PanelFit(
                overscanned(activeColumns, Rational.of(columns), columns, (grid.columns() - columns) / 2, overscan),
                overscanned(activeRows, Rational.of(rows), rows, (grid.rows() - rows) / 2, overscan));
    }

    private static PanelAxis overscanned(
            Rational active, Rational extent, @Nullable Integer pixels, long offset, Rational overscan) {
        return new PanelAxis(
                active.times(overscan), active.times(Rational.ONE.minus(overscan.times(2))), extent, pixels, offset);
    }

    private static PanelAxis oneToOne(Rational active, int pixels) {
        int columns = (int) active.floor();
        if (columns <= pixels) {
            return new PanelAxis(
                    Rational.ZERO, Rational.of(columns), Rational.of(columns), columns, (pixels - columns) / 2);
        }
        return new PanelAxis(Rational.of((columns - pixels) / 2), Rational.of(pixels), Rational.of(pixels), pixels, 0);
    }
}
