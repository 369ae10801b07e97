package rasterfit.app.answer;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** Numbers as answers write them: plain ones rounded half-even to 6 significant digits, exact ones as strings. */
public final class Plain {
    private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);

    private Plain() {}

    public static BigDecimal of(Rational exact) {
        return withoutExponent(exact.toSixDigits());
    }

    public static @Nullable BigDecimal orAbsent(@Nullable Rational exact) {
        return exact == null ? null : of(exact);
    }

    /** Of a number that was computed in floating point; it has to be finite. */
    public static BigDecimal of(double value) {
        return withoutExponent(new BigDecimal(value).round(SIX_DIGITS).stripTrailingZeros());
    }

    public static @Nullable BigDecimal orAbsent(@Nullable Double value) {
        return value == null ? null : of(value);
    }

    public static String exact(Frequency frequency) {
        return frequency.hz().toString();
    }

    public static @Nullable String exactOrAbsent(@Nullable Frequency frequency) {
        return frequency == null ? null : exact(frequency);
    }

    public static @Nullable String exactOrAbsent(@Nullable Rational exact) {
        return exact == null ? null : exact.toString();
    }

    /** A scale below 0 would be written with an exponent. */
    private static BigDecimal withoutExponent(BigDecimal value) {
        return value.scale() < 0 ? value.setScale(0) : value;
    }
}
