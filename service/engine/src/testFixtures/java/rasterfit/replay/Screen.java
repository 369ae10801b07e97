package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Assumptions;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Panel;
import rasterfit.quantity.Rational;
import rasterfit.sim.ResampleSim;

/**
 * The face of a display, under one of its aspect controls, with a raster laid on it. A tube has no grid; it is given a
 * fine one, since positions are followed as exact fractions and its pixels are never counted.
 *
 * @param hasGrid whether pixels can be counted
 */
record Screen(ResampleSim.Panel columns, ResampleSim.Panel rows, boolean hasGrid) {
    private static final int TUBE_CELLS = 400;

    /**
     * Lays a raster on the face.
     *
     * @param rasterColumns active columns of the raster
     * @param signalledAspect of the picture; absent where the link signals none
     */
    static Screen of(
            Chain chain,
            AspectControl control,
            int rasterColumns,
            int rasterRows,
            @Nullable Rational signalledAspect) {
        Panel panel = chain.display().panel();
        BigFraction hidden = hiddenAtEachEdge(chain, rasterRows);
        if (panel instanceof Panel.Grid grid) {
            return control == AspectControl.ONE_TO_ONE
                    ? new Screen(oneToOne(rasterColumns, grid.columns()), oneToOne(rasterRows, grid.rows()), true)
                    : shaped(chain, control, grid, rasterColumns, rasterRows, signalledAspect, hidden);
        }
        // Width to height in lowest terms, many cells to each.
        int columns = panel.aspect().numerator().intValueExact() * TUBE_CELLS;
        int rows = panel.aspect().denominator().intValueExact() * TUBE_CELLS;
        return new Screen(
                stretched(rasterColumns, columns, columns, hidden), stretched(rasterRows, rows, rows, hidden), false);
    }

    private static Screen shaped(
            Chain chain,
            AspectControl control,
            Panel.Grid grid,
            int rasterColumns,
            int rasterRows,
            @Nullable Rational signalledAspect,
            BigFraction hidden) {
        BigFraction face = BigFraction.of(grid.columns(), grid.rows());
        BigFraction aspect = face;
        if (control == AspectControl.SIGNALLED && signalledAspect != null) {
            aspect = fraction(signalledAspect);
        } else if (control == AspectControl.SIGNALLED && chain.display().displayClass() == DisplayClass.MONITOR) {
            aspect = BigFraction.of(rasterColumns, rasterRows); // a monitor assumes square samples, others fill
        }
        // The largest area of that aspect, in whole pixels.
        int columns = grid.columns();
        int rows = grid.rows();
        if (aspect.compareTo(face) < 0) {
            columns = nearest(aspect.multiply(grid.rows()));
        } else {
            rows = nearest(BigFraction.of(grid.columns()).divide(aspect));
        }
        return new Screen(
                stretched(rasterColumns, grid.columns(), columns, hidden),
                stretched(rasterRows, grid.rows(), rows, hidden),
                true);
    }

    /** A raster without its hidden edges, on some cells in the middle of all. */
    private static ResampleSim.Panel stretched(int active, int all, int cells, BigFraction hidden) {
        BigFraction start = hidden.multiply(active);
        return new ResampleSim.Panel(
                all, start, BigFraction.of(active).subtract(start.multiply(2)), cells, (all - cells) / 2);
    }

    /** One sample a pixel, in the middle; of a raster that is larger than the panel the middle is seen. */
    private static ResampleSim.Panel oneToOne(int active, int pixels) {
        return active <= pixels
                ? new ResampleSim.Panel(
                        pixels, BigFraction.ZERO, BigFraction.of(active), active, (pixels - active) / 2)
                : new ResampleSim.Panel(
                        pixels, BigFraction.of((active - pixels) / 2), BigFraction.of(pixels), pixels, 0);
    }

    /** Overscan as a share of the active raster; up to 576 lines are standard definition. */
    private static BigFraction hiddenAtEachEdge(Chain chain, int rasterRows) {
        Rational percent = chain.displayInput()
                .overscanPercent()
                .orAssume(Assumptions.overscanPercent(chain.display().displayClass(), rasterRows <= 576))
                .typical();
        return fraction(percent).divide(100);
    }

    private static int nearest(BigFraction positive) {
        return positive.add(BigFraction.of(1, 2)).intValue();
    }
}
