package rasterfit.identify;

import rasterfit.gear.LineStandard;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/**
 * The exact timing of a console's mode, without its picture. An interlaced field ends on a half line, a progressive one
 * on a whole line.
 *
 * @param dotsPerLine may be a fraction (855/2)
 */
public record SourceTiming(Frequency dotClock, Rational dotsPerLine, Rational linesPerField) {
    public SourceTiming {
        if (dotClock.hz().signum() <= 0 || dotsPerLine.signum() <= 0 || linesPerField.signum() <= 0) {
            throw new IllegalArgumentException("clock and counts of a timing are positive");
        }
        if (!linesPerField.times(2).isWhole()) {
            throw new IllegalArgumentException(
                    "a field has a whole number of lines or ends on a half line: " + linesPerField);
        }
    }

    public Frequency lineRate() {
        return dotClock.dividedBy(dotsPerLine);
    }

    public Frequency fieldRate() {
        return lineRate().dividedBy(linesPerField);
    }

    public Scan scan() {
        return linesPerField.isWhole() ? Scan.PROGRESSIVE : Scan.INTERLACED;
    }

    public Rational linesPerFrame() {
        return linesPerField.times(scan().fieldsPerFrame());
    }

    /** By the lines of a field: within 5 % of half of a standard's frame or of all of it (as for a console's mode). */
    public LineStandard lineStandard() {
        if (isNear(525)) {
            return LineStandard.L525_60;
        }
        return isNear(625) ? LineStandard.L625_50 : LineStandard.OTHER;
    }

    private boolean isNear(int frameLines) {
        Rational share = linesPerField.dividedBy(frameLines);
        return isWithin5Percent(share, Rational.HALF) || isWithin5Percent(share, Rational.ONE);
    }

    private static boolean isWithin5Percent(Rational value, Rational nominal) {
        return !value.dividedBy(nominal).minus(Rational.ONE).abs().isGreaterThan(Rational.of(5, 100));
    }
}
