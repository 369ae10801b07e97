package rasterfit.match;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/**
 * A bound that every mode of a setup must keep. A measure that does not apply to a setup (lines held by a free-running
 * output, say) does not bind it; only an unknown price fails.
 *
 * @param figure which figure of a latency; absent for other measures
 * @param value in the measure's unit; {@link AcceptanceGrade#rankFromWorst} for acceptance
 * @param currency of a price; absent otherwise
 */
public record Limit(
        LimitedMeasure measure,
        @Nullable LatencyFigure figure,
        Bound bound,
        Rational value,
        @Nullable String currency) {

    public enum Bound {
        AT_MOST,
        AT_LEAST
    }

    /** The greatest figure binds an upper bound, the least a lower one, unless another is named. */
    public Limit {
        if (measure.isLatency() && figure == null) {
            figure = bound == Bound.AT_MOST ? LatencyFigure.GREATEST : LatencyFigure.LEAST;
        }
    }

    public static Limit atMost(LimitedMeasure measure, Rational value) {
        return new Limit(measure, null, Bound.AT_MOST, value, null);
    }

    public static Limit atLeast(LimitedMeasure measure, Rational value) {
        return new Limit(measure, null, Bound.AT_LEAST, value, null);
    }

    public boolean isKeptBy(Rational actual) {
        return bound == Bound.AT_MOST ? !actual.isGreaterThan(value) : !actual.isLessThan(value);
    }

    /** {@code aspectErrorPercent at most 3}. */
    public String told() {
        String bounded = measure == LimitedMeasure.ACCEPTANCE
                ? AcceptanceGrade.ofRankFromWorst(value).name()
                : value.toSixDigits().toPlainString();
        return measure.id() + (bound == Bound.AT_MOST ? " at most " : " at least ") + bounded;
    }

    /** {@code limit.croppedLines}. */
    public String ruleId() {
        return "limit." + measure.id();
    }
}
