package rasterfit.rule;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/**
 * Why a candidate is out: the rule, and the value against its limit where the rule compares numbers.
 *
 * @param value in {@code unit}; absent where the rule does not compare numbers
 * @param message the value first, then what would help
 */
public record Refusal(
        Rule rule,
        @Nullable Rational value,
        @Nullable Rational limit,
        @Nullable String unit,
        String message) {

    /** How far the value misses the limit, relative to the limit; 0 where there are no numbers. */
    public double miss() {
        if (value == null || limit == null) {
            return 0;
        }
        double distance = value.minus(limit).abs().toDouble();
        double scale = limit.abs().toDouble();
        return scale == 0 ? distance : distance / scale;
    }
}
