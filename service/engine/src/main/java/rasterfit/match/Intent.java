package rasterfit.match;

import static rasterfit.match.Criterion.ACCEPTANCE;
import static rasterfit.match.Criterion.ASPECT;
import static rasterfit.match.Criterion.COST;
import static rasterfit.match.Criterion.COVERAGE;
import static rasterfit.match.Criterion.DOT_UNIFORMITY;
import static rasterfit.match.Criterion.EFFORT;
import static rasterfit.match.Criterion.LATENCY;
import static rasterfit.match.Criterion.LINK_DETAIL;
import static rasterfit.match.Criterion.MODE_SWITCH_GAP;
import static rasterfit.match.Criterion.MOTION;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rasterfit.quantity.Rational;

/** A named set of weights and limits (assumption; a request may replace any of them). */
public enum Intent {
    EVEN_WEIGHTS,
    LEAST_DELAY,
    TRUEST_PICTURE;

    private static final List<Criterion> ORDER = List.of(
            DOT_UNIFORMITY, ASPECT, COVERAGE, MOTION, LATENCY, ACCEPTANCE, LINK_DETAIL, MODE_SWITCH_GAP, EFFORT, COST);

    /** Weights before normalisation. */
    public Map<Criterion, Double> weights() {
        double[] values = switch (this) {
            case EVEN_WEIGHTS -> new double[] {1, 1, 1, 1, 1, 1, 1, 1, 1, 1};
            case LEAST_DELAY -> new double[] {1, 1, .5, 2, 6, 3, 1, 1, .5, 1};
            case TRUEST_PICTURE -> new double[] {4, 3, 2, 3, 1, 2, 3, 1, .5, .5};
        };
        Map<Criterion, Double> weights = new EnumMap<>(Criterion.class);
        for (int i = 0; i < values.length; i++) {
            weights.put(ORDER.get(i), values[i]);
        }
        return weights;
    }

    /** Limits that bind unless they would leave nothing; then they become findings. */
    public List<Limit> limits() {
        return switch (this) {
            case EVEN_WEIGHTS -> List.of();
            case LEAST_DELAY ->
                List.of(Limit.atMost(LimitedMeasure.ADDED_LATENCY_FIELDS, Rational.ONE), notWorseThanUnpromised());
            case TRUEST_PICTURE ->
                List.of(
                        Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.of(3)),
                        Limit.atMost(LimitedMeasure.CROPPED_USED_LINES_PERCENT, Rational.of(4)),
                        Limit.atLeast(LimitedMeasure.DROP_OR_REPEAT_EVERY_SECONDS, Rational.of(5)),
                        notWorseThanUnpromised());
        };
    }

    private static Limit notWorseThanUnpromised() {
        return Limit.atLeast(LimitedMeasure.ACCEPTANCE, AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED.rankFromWorst());
    }
}
