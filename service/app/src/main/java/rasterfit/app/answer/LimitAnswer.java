package rasterfit.app.answer;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;

/**
 * A limit, in the form in which a request states it. Exactly one of {@code atMost} and {@code atLeast} is present: the
 * name of a grade for acceptance, an amount as a string for a price, a number for all others.
 *
 * @param measure with the figure of a latency behind a dot
 * @param unit of the value; empty for a pure number
 */
public record LimitAnswer(
        String measure,

        @Schema(oneOf = {BigDecimal.class, String.class}) @Nullable
        Object atMost,

        @Schema(oneOf = {BigDecimal.class, String.class}) @Nullable
        Object atLeast,

        @Nullable String currency,
        String unit) {

    public static LimitAnswer of(Limit limit) {
        boolean isUpper = limit.bound() == Limit.Bound.AT_MOST;
        String figure =
                limit.figure() == null ? "" : "." + limit.figure().name().toLowerCase(Locale.ROOT);
        Object value = value(limit);
        return new LimitAnswer(
                limit.measure().id() + figure,
                isUpper ? value : null,
                isUpper ? null : value,
                limit.currency(),
                limit.measure().unit());
    }

    private static Object value(Limit limit) {
        if (limit.measure() == LimitedMeasure.ACCEPTANCE) {
            return grade(limit).name();
        }
        BigDecimal number = Plain.of(limit.value());
        return limit.measure() == LimitedMeasure.PRICE ? number.toPlainString() : number;
    }

    private static AcceptanceGrade grade(Limit limit) {
        for (AcceptanceGrade grade : AcceptanceGrade.values()) {
            if (grade.rankFromWorst().equals(limit.value())) {
                return grade;
            }
        }
        throw new IllegalStateException("no grade has the rank " + limit.value());
    }
}
