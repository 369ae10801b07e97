package rasterfit.match.tune;

import java.util.Optional;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Basis;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Estimate;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.OwnEvidence;
import rasterfit.gear.OwnEvidence.OwnReading;
import rasterfit.gear.Panel;
import rasterfit.match.Latency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/**
 * Delay of the display itself, at its top row: the same for every row, since the rest is scanning out, which the
 * converter's delay already counts. What the owner read goes before measured by others, published, declared and assumed.
 */
final class DisplayLag {
    /** Between the half-height rasters (up to 314 lines) and the full-height ones (from 525). */
    private static final Rational FULL_HEIGHT_LINES = Rational.of(400);

    private DisplayLag() {}

    /**
     * Own readings of the lag go before all others; an own upper bound is put on what the others say.
     *
     * @param label under which the raster is listed, to find readings made at it; may be empty
     */
    static Latency of(Display display, DisplayInput input, Raster raster, String label, Steps steps) {
        Optional<OwnReading> own = own(input, label);
        Latency lag;
        if (own.isEmpty()) {
            lag = stated(display, input, raster, label, steps);
        } else if (own.get().isBound()) {
            lag = bounded(own.get(), display, input, raster, label, steps);
        } else {
            lag = read(own.get().reading(), display, input, raster, steps);
        }
        // A reading made at this very raster holds the field that it waits for.
        boolean holdsField =
                own.isPresent() && !own.get().isBound() && own.get().reading().timing() != null;
        return takesAsInterlaced(input, raster) && !holdsField ? lag.plus(oneField(raster, steps)) : lag;
    }

    /** The own reading that counts for a raster; a reading of the lag itself before a bound. */
    static Optional<OwnReading> own(DisplayInput input, String label) {
        OwnEvidence evidence = input.own();
        return evidence.reading(label, false).or(() -> evidence.reading(label, true));
    }

    /** Without anything that an owner found out, and without what half-height rasters wait for. */
    private static Latency stated(Display display, DisplayInput input, Raster raster, String label, Steps steps) {
        Optional<LagReading> best = best(input, label);
        return best.isPresent()
                ? read(best.get(), display, input, raster, steps)
                : assumed(display, input, raster, steps);
    }

    private static Optional<LagReading> best(DisplayInput input, String label) {
        Optional<LagReading> best = Optional.empty();
        for (LagReading reading : input.lag()) {
            String timing = reading.timing();
            boolean applies = timing == null || timing.equals(label);
            if (applies && (best.isEmpty() || isBetter(reading, best.get()))) {
                best = Optional.of(reading);
            }
        }
        return best;
    }

    /** What the display is said to have, cut at the bound; without any reading, the class's delay below the bound. */
    private static Latency bounded(
            OwnReading own, Display display, DisplayInput input, Raster raster, String label, Steps steps) {
        if (best(input, label).isEmpty()) {
            return read(own.reading(), display, input, raster, steps);
        }
        Latency stated = stated(display, input, raster, label, steps);
        Rational bound = atTop(own.reading(), display, raster).greatest();
        Rational typical = stated.typical().min(bound);
        steps.tell(
                "displayLagBound",
                step -> step.in("without it", stated.typical(), "ms")
                        .in("bound", bound, "ms")
                        .by("the lesser of both", "definition: from press to light holds the console's delay too")
                        .gives(typical, "ms"));
        return flat(stated.least().min(bound), typical, stated.greatest().min(bound), stated.basis());
    }

    /** Whether the input takes a progressive raster of half height for a field of an interlaced one. */
    static boolean takesAsInterlaced(DisplayInput input, Raster raster) {
        return input.halfHeight() == HalfHeight.AS_INTERLACED
                && raster.scan() == Scan.PROGRESSIVE
                && raster.verticalTotal().isLessThan(FULL_HEIGHT_LINES);
    }

    private static Latency oneField(Raster raster, Steps steps) {
        Rational ms = raster.fieldRate().period().millis();
        steps.tell(
                "halfHeightDelay",
                step -> step.in("field period", ms, "ms")
                        .by(
                                "one field",
                                "assumption: a half-height raster taken as interlaced waits for its other field")
                        .gives(ms, "ms"));
        return new Latency(ms, ms, ms, ms, ms, ms, Basis.ASSUMED);
    }

    /** A stronger basis first, then a reading made at this very timing. */
    private static boolean isBetter(LagReading candidate, LagReading present) {
        int basis = candidate.basis().compareTo(present.basis());
        return basis < 0 || (basis == 0 && candidate.timing() != null && present.timing() == null);
    }

    private static Latency read(LagReading reading, Display display, DisplayInput input, Raster raster, Steps steps) {
        Estimate atTop = atTop(reading, display, raster);
        Rational least = atTop.least();
        Rational typical = atTop.typical();
        Rational greatest = atTop.greatest();
        Basis basis = reading.basis();
        if (reading.method() == LagReading.Method.PRESS_TO_LIGHT) {
            // The reading holds the console's own delay too: an upper bound over what the class would have.
            Estimate own = assumption(display, input, raster);
            least = own.least().min(least);
            typical = own.typical().min(typical);
            basis = Basis.ASSUMED;
        }
        Rational top = typical;
        steps.tell(
                "displayLagMs",
                step -> step.in("reading", estimate(reading).typical(), "ms")
                        .in("scan-out to the row read", scanOutMs(reading, display.panel(), raster), "ms")
                        .by(
                                "reading − row / rows · active lines / total lines · frame period, at least 0; a reading from"
                                        + " press to light bounds it from above, and the class's delay is taken below",
                                "definition: at the top row")
                        .gives(top, "ms"));
        return flat(least, typical, greatest, basis);
    }

    private static Estimate estimate(LagReading reading) {
        return reading.ms().orAssume(Estimate.exactly(0));
    }

    /** No display shows a row before it has arrived: a reading below the scan-out to its row counts as none. */
    private static Estimate atTop(LagReading reading, Display display, Raster raster) {
        Estimate read = estimate(reading);
        Rational scanOut = scanOutMs(reading, display.panel(), raster);
        return new Estimate(
                read.least().minus(scanOut).max(Rational.ZERO),
                read.typical().minus(scanOut).max(Rational.ZERO),
                read.greatest().minus(scanOut).max(Rational.ZERO),
                false);
    }

    private static Rational scanOutMs(LagReading reading, Panel panel, Raster raster) {
        Integer row = reading.referenceRow();
        if (row == null || !(panel instanceof Panel.Grid grid)) {
            return Rational.ZERO;
        }
        Rational height = Rational.of(row, grid.rows());
        Rational active = Rational.of(raster.verticalActive()).dividedBy(raster.verticalTotal());
        return raster.fieldRate().period().times(height).times(active).millis();
    }

    private static Latency assumed(Display display, DisplayInput input, Raster raster, Steps steps) {
        Estimate estimate = assumption(display, input, raster);
        steps.tell(
                "displayLagMs",
                step -> step.in("class", display.displayClass().name())
                        .in("least", estimate.least(), "ms")
                        .in("greatest", estimate.greatest(), "ms")
                        .by("typical of the class, at the top row", "assumption, from common experience")
                        .gives(estimate.typical(), "ms"));
        return flat(estimate.least(), estimate.typical(), estimate.greatest(), Basis.ASSUMED);
    }

    private static Estimate assumption(Display display, DisplayInput input, Raster raster) {
        boolean sdOrInterlaced = raster.scan() == Scan.INTERLACED || isStandardDefinition(raster);
        return Assumptions.displayLagMs(display.displayClass(), Boolean.TRUE.equals(input.lowDelay()), sdOrInterlaced);
    }

    /** Up to 576 active lines, the height of the 625-line raster. */
    static boolean isStandardDefinition(Raster raster) {
        return raster.verticalActive() <= 576;
    }

    private static Latency flat(Rational least, Rational typical, Rational greatest, Basis basis) {
        return new Latency(typical, typical, typical, least, typical, greatest, basis);
    }
}
