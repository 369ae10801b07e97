package rasterfit.timing;

import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * The counts and the clock of a raster, from which all rates follow. Horizontal counts are in pixels (or a console's
 * dots), vertical counts are per frame: an interlaced frame has two fields of half of {@code verticalTotal} lines.
 *
 * @param pixelClock pixels per second
 * @param horizontalTotal pixels per line; consoles exist with a fraction here (855/2)
 * @param verticalTotal lines per frame (525 for the interlaced 525-line raster, 262 for its half-height progressive kin)
 */
public record Raster(
        Frequency pixelClock,
        int horizontalActive,
        Rational horizontalTotal,
        int verticalActive,
        Rational verticalTotal,
        Scan scan) {

    public Raster {
        if (pixelClock.hz().signum() <= 0) {
            throw new IllegalArgumentException("pixel clock must be positive: " + pixelClock);
        }
        if (horizontalActive <= 0 || !Rational.of(horizontalActive).isLessThan(horizontalTotal)) {
            throw new IllegalArgumentException(
                    "horizontal active " + horizontalActive + " must lie between 0 and the total " + horizontalTotal);
        }
        if (verticalActive <= 0 || !Rational.of(verticalActive).isLessThan(verticalTotal)) {
            throw new IllegalArgumentException(
                    "vertical active " + verticalActive + " must lie between 0 and the total " + verticalTotal);
        }
    }

    public Frequency lineRate() {
        return pixelClock.dividedBy(horizontalTotal);
    }

    public Rational linesPerField() {
        return verticalTotal.dividedBy(scan.fieldsPerFrame());
    }

    /** Fields per second; the frame rate of a progressive raster. */
    public Frequency fieldRate() {
        return lineRate().dividedBy(linesPerField());
    }

    /** The same counts at the clock that gives this field rate. */
    public Raster atFieldRate(Frequency fieldRate) {
        return new Raster(
                fieldRate.times(linesPerField()).times(horizontalTotal),
                horizontalActive,
                horizontalTotal,
                verticalActive,
                verticalTotal,
                scan);
    }

    public boolean hasSameActiveAs(Raster other) {
        return horizontalActive == other.horizontalActive
                && verticalActive == other.verticalActive
                && scan == other.scan;
    }

    public boolean hasSameCountsAs(Raster other) {
        return hasSameActiveAs(other)
                && horizontalTotal.equals(other.horizontalTotal)
                && verticalTotal.equals(other.verticalTotal);
    }
}
