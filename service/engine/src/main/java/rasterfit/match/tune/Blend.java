package rasterfit.match.tune;

import rasterfit.gear.Panel;
import rasterfit.quantity.Rational;

/**
 * How many panel columns of the picture mix neighbouring dots: because the scaler's filter reaches over an edge, or
 * because an interpolating panel does (it then weighs the two nearest raster columns; assumption).
 */
final class Blend {
    private final AxisMap map;
    private final int taps;
    private final boolean interpolating;
    private final StepLine toRaster;
    private final StepLine toSample;
    private final StepLine sampleEdge;
    private final StepLine toDot;
    private final Rational perDot;

    /** @param taps of the scaler; 1 where samples are only repeated */
    Blend(AxisMap map, int taps, Panel.Filter filter) {
        this.map = map;
        this.taps = taps;
        PanelAxis panel = map.panel();
        this.interpolating = filter == Panel.Filter.INTERPOLATING && !panel.isOneToOne();
        Rational perPanel = panel.length().dividedBy(panel.extent());
        // Raster position of a panel column's centre, minus half a column: the neighbours lie at whole numbers.
        this.toRaster = StepLine.of(
                perPanel,
                perPanel.dividedBy(2).plus(panel.start()).minus(interpolating ? Rational.HALF : Rational.ZERO));
        Rational perColumn = map.captureLength().dividedBy(map.pictureWidth());
        Rational centre = perColumn.dividedBy(2).plus(map.captureStart());
        this.toSample = StepLine.of(perColumn, centre);
        this.sampleEdge = StepLine.of(perColumn, centre.minus(Rational.HALF));
        this.perDot = map.samplesPerDot() == null ? Rational.ONE : map.samplesPerDot();
        this.toDot =
                StepLine.of(perDot.reciprocal(), Rational.HALF.dividedBy(perDot).minus(map.first()));
    }

    /** Percent of the panel columns on which the active picture falls. */
    Rational percent() {
        Integer pixels = map.panel().pixels();
        int picture = 0;
        int mixed = 0;
        for (int column = 0; column < (pixels == null ? 0 : pixels); column++) {
            Reach reach = new Reach();
            long raster = toRaster.floorAt(column);
            addRaster(reach, raster);
            if (interpolating && !toRaster.isWholeAt(column)) {
                addRaster(reach, raster + 1);
            }
            if (reach.shows) {
                picture++;
                if (reach.least != reach.greatest) {
                    mixed++;
                }
            }
        }
        return picture == 0 ? Rational.ZERO : Rational.of(100L * mixed, picture);
    }

    /** The dots that one panel column mixes; border counts as a dot of its own. */
    private final class Reach {
        private long least = Long.MAX_VALUE;
        private long greatest = Long.MIN_VALUE;
        private boolean shows;

        void addDot(long dot) {
            boolean active = dot >= 0 && dot < map.count();
            long clamped = Math.max(-1, Math.min(map.count(), dot));
            shows |= active;
            least = Math.min(least, clamped);
            greatest = Math.max(greatest, clamped);
        }
    }

    private void addRaster(Reach reach, long raster) {
        long column = raster - map.pictureLeft();
        if (column < 0
                || column >= map.pictureWidth()
                || raster < 0
                || raster >= map.rasterActive().floor()) {
            reach.addDot(column < 0 ? -1 : map.count());
        } else if (taps == 1 || sampleEdge.isWholeAt(column)) {
            reach.addDot(toDot.floorAt(toSample.floorAt(column)));
        } else {
            long first = sampleEdge.floorAt(column) - taps / 2 + 1;
            for (long sample = first; sample < first + taps; sample++) {
                reach.addDot(toDot.floorAt(sample));
            }
        }
    }
}
