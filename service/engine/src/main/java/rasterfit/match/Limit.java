package rasterfit.match;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
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
        return measure.id() + (bound == Bound.AT_MOST ? " at most " : " at least ") + bounded();
    }

    /** The bound alone: {@code 3}. */
    public String bounded() {
        return measure == LimitedMeasure.ACCEPTANCE
                ? AcceptanceGrade.ofRankFromWorst(value).name()
                : value.toSixDigits().toPlainString();
    }

    /**
     * The same limit with the bound moved so far that a value keeps it, rounded outwards to six digits, so that it can be
     * written in a request.
     */
    public Limit relaxedTo(Rational kept) {
        if (measure == LimitedMeasure.ACCEPTANCE) {
            return new Limit(measure, figure, bound, kept, currency);
        }
        RoundingMode outwards = bound == Bound.AT_MOST ? RoundingMode.CEILING : RoundingMode.FLOOR;
        BigDecimal rounded = new BigDecimal(kept.numerator())
                .divide(new BigDecimal(kept.denominator()), new MathContext(6, outwards));
        return new Limit(measure, figure, bound, Rational.of(rounded), currency);
    }

    /** {@code limit.croppedLines}. */
    public String ruleId() {
        return "limit." + measure.id();
    }
}
