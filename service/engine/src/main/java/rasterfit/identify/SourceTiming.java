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

    /** Sync and equalising leave at most so many lines for a picture: 2.5 lines of field sync (ITU-R BT.1700). */
    private static final Rational FIELD_SYNC_LINES = Rational.of(5, 2);

    /** Line sync takes 4.7 µs of 64 µs (ITU-R BT.1700); at twice the line rate half of it. */
    private static final Rational LINE_SYNC_SHARE = Rational.of(47, 640);

    /** The picture takes 52 µs of 64 µs (ITU-R BT.1700: 12 µs of blanking); the 525-line share is the same to 2 %. */
    private static final Rational STANDARD_PICTURE_SHARE = Rational.of(52, 64);

    /** Consoles draw at least so much of the standard's picture width, and little more than all of it (assumption). */
    private static final Rational LEAST_USUAL_WIDTH = Rational.of(80, 100);

    private static final Rational GREATEST_USUAL_WIDTH = Rational.of(103, 100);

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

    /** Whether a line has room for so many dots beside its sync. */
    static boolean hasRoomForDots(Rational dotsPerLine, int activeDots) {
        return !Rational.of(activeDots).dividedBy(dotsPerLine).isGreaterThan(Rational.ONE.minus(LINE_SYNC_SHARE));
    }

    /** Whether a field has room for so many lines beside its sync. */
    static boolean hasRoomForLines(Rational linesPerField, int activeLines) {
        return !Rational.of(activeLines).plus(FIELD_SYNC_LINES).isGreaterThan(linesPerField);
    }

    /** Whether so many dots make a picture about as wide as the standard's. */
    boolean isOfUsualWidth(int activeDots) {
        Rational width = Rational.of(activeDots).dividedBy(dotsPerLine).dividedBy(STANDARD_PICTURE_SHARE);
        return !width.isLessThan(LEAST_USUAL_WIDTH) && !width.isGreaterThan(GREATEST_USUAL_WIDTH);
    }
}
