package rasterfit.match;

import rasterfit.gear.Basis;
import rasterfit.quantity.Rational;

/**
 * Delay in ms, per picture line: from the moment a source line begins to arrive until the first output line that shows
 * it begins to leave.
 *
 * @param middle of source line ⌊n/2⌋ of the n lines shown; at mean age where the age of a stored field varies
 * @param least over all output lines (and ages)
 * @param typical the middle line at mean age
 * @param greatest over all output lines (and ages)
 */
public record Latency(
        Rational top,
        Rational middle,
        Rational bottom,
        Rational least,
        Rational typical,
        Rational greatest,
        Basis basis) {

    public static final Latency NONE = new Latency(
            Rational.ZERO, Rational.ZERO, Rational.ZERO, Rational.ZERO, Rational.ZERO, Rational.ZERO, Basis.COMPUTED);

    public Rational figure(LatencyFigure figure) {
        return switch (figure) {
            case TOP -> top;
            case MIDDLE -> middle;
            case BOTTOM -> bottom;
            case LEAST -> least;
            case TYPICAL -> typical;
            case GREATEST -> greatest;
        };
    }

    /** Figure by figure; the weaker basis counts. */
    public Latency plus(Latency other) {
        return new Latency(
                top.plus(other.top),
                middle.plus(other.middle),
                bottom.plus(other.bottom),
                least.plus(other.least),
                typical.plus(other.typical),
                greatest.plus(other.greatest),
                basis.ordinal() >= other.basis.ordinal() ? basis : other.basis);
    }
}
