package rasterfit.replay;

import java.math.RoundingMode;
import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/**
 * A claim that the replay cannot confirm.
 *
 * @param measure path of the claim in the answer, such as {@code shape.leastDotWidth}
 */
public record Objection(String measure, @Nullable Object claimed, @Nullable Object measured) {
    private static final int DECIMALS = 9;

    @Override
    public String toString() {
        return measure + " is claimed to be " + told(claimed) + " and measured as " + told(measured);
    }

    private static String told(@Nullable Object value) {
        return value instanceof BigFraction fraction
                ? fraction + " (" + fraction.bigDecimalValue(DECIMALS, RoundingMode.HALF_EVEN) + ")"
                : String.valueOf(value);
    }
}
