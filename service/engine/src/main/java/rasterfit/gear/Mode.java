package rasterfit.gear;

import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/**
 * One video mode of a console. Lines are those of a field.
 *
 * @param dotsPerLine may be a fraction (855/2)
 * @param linesPerField may end on a half (525/2)
 * @param share weight of the mode in the owned library, positive, not yet normalised
 * @param duringPlay whether the mode is entered in the middle of play
 * @param used the area really drawn, inside {@code active}
 * @param usedAssumed whether position or size of {@code used} was assumed
 */
public record Mode(
        String name,
        LineStandard lineStandard,
        Frequency dotClock,
        Rational dotsPerLine,
        Rational linesPerField,
        Scan scan,
        Rational share,
        boolean duringPlay,
        Window active,
        Window used,
        boolean usedAssumed,
        PictureShape shape) {

    public Mode {
        if (dotClock.hz().signum() <= 0) {
            throw new IllegalArgumentException("dot clock must be positive");
        }
        if (!linesPerField.times(2).isWhole()) {
            throw new IllegalArgumentException("a field has a whole number of lines or ends on a half line");
        }
        if (share.signum() <= 0) {
            throw new IllegalArgumentException("share must be positive");
        }
        if (Rational.of(active.firstDot() + active.dots()).isGreaterThan(dotsPerLine)) {
            throw new IllegalArgumentException("the active dots end after the line of " + dotsPerLine + " dots");
        }
        if (Rational.of(active.firstLine() + active.lines()).isGreaterThan(linesPerField)) {
            throw new IllegalArgumentException("the active lines end after the field of " + linesPerField + " lines");
        }
        // Something is left for sync and blanking.
        if (!Rational.of(active.dots()).isLessThan(dotsPerLine)
                || !Rational.of(active.lines()).isLessThan(linesPerField)) {
            throw new IllegalArgumentException("the active dots and lines leave no blanking in " + dotsPerLine
                    + " dots by " + linesPerField + " lines");
        }
        if (!active.contains(used)) {
            throw new IllegalArgumentException("the used area lies outside of the active one");
        }
    }

    public Frequency lineRate() {
        return dotClock.dividedBy(dotsPerLine);
    }

    public Frequency fieldRate() {
        return lineRate().dividedBy(linesPerField);
    }

    public boolean isInterlaced() {
        return scan == Scan.INTERLACED;
    }

    /**
     * Whether every field is progressive with about half of the lines of its standard's frame. The bound lies half way
     * between the half-height rasters (up to 314 lines) and the full-height ones (from 525 lines).
     */
    public boolean isHalfHeightProgressive() {
        return scan == Scan.PROGRESSIVE
                && lineStandard != LineStandard.OTHER
                && linesPerField.isLessThan(Rational.of(400));
    }

    /** Active lines of a whole frame: those of both fields if interlaced. */
    public int frameLines() {
        return active.lines() * scan.fieldsPerFrame();
    }

    public Raster raster() {
        return new Raster(
                dotClock, active.dots(), dotsPerLine, frameLines(), linesPerField.times(scan.fieldsPerFrame()), scan);
    }
}
