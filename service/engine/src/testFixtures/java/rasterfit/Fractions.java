package rasterfit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.apache.commons.numbers.fraction.BigFraction;
import rasterfit.quantity.Rational;

/** Between the engine's exact numbers, the library's fractions that the simulations use, and printed decimals. */
public final class Fractions {
    private Fractions() {}

    public static BigFraction fraction(Rational value) {
        return BigFraction.of(value.numerator(), value.denominator());
    }

    /** Numerator and denominator must fit into 64 bits. */
    public static Rational rational(BigFraction value) {
        return Rational.of(
                value.getNumerator().longValueExact(), value.getDenominator().longValueExact());
    }

    /** Rounded as printed: half away from zero. */
    public static String printed(Rational value, int decimals) {
        return new BigDecimal(value.numerator())
                .divide(new BigDecimal(value.denominator()), decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
