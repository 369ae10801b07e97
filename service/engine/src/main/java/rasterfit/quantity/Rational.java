package rasterfit.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Pattern;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * An exact rational number without a unit. Arithmetic is that of {@link BigFraction}; this type adds the written form of
 * the interface (a decimal or a fraction of integers) and the roundings that raster arithmetic needs.
 */
public final class Rational implements Comparable<Rational> {
    public static final Rational ZERO = new Rational(BigFraction.ZERO);
    public static final Rational ONE = new Rational(BigFraction.ONE);
    public static final Rational HALF = of(1, 2);

    private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);
    private static final Pattern WRITTEN = Pattern.compile("-?[0-9]{1,20}(?:\\.[0-9]{1,12}|/[0-9]{1,20})?");

    private final BigFraction value;

    private Rational(BigFraction value) {
        // The library keeps the sign where it was given; a positive denominator makes the written form unique.
        this.value = value.getDenominator().signum() > 0
                ? value
                : BigFraction.of(
                        value.getNumerator().negate(), value.getDenominator().negate());
    }

    public static Rational of(long whole) {
        return new Rational(BigFraction.of(whole));
    }

    /** @throws ArithmeticException if the denominator is zero */
    public static Rational of(long numerator, long denominator) {
        return new Rational(BigFraction.of(numerator, denominator));
    }

    /** The exact value of a decimal number. */
    public static Rational of(BigDecimal decimal) {
        BigInteger unscaled = decimal.unscaledValue();
        return decimal.scale() >= 0
                ? new Rational(BigFraction.of(unscaled, BigInteger.TEN.pow(decimal.scale())))
                : new Rational(BigFraction.of(unscaled.multiply(BigInteger.TEN.pow(-decimal.scale()))));
    }

    /**
     * Reads {@code 59062500/11}, {@code 341} or {@code 4433618.75}: up to 20 digits, up to 12 decimals.
     *
     * @throws NumberFormatException if the text has another form or a zero denominator
     */
    public static Rational parse(String text) {
        if (!WRITTEN.matcher(text).matches()) {
            throw new NumberFormatException("not a decimal number or a fraction of integers: " + text);
        }
        int slash = text.indexOf('/');
        if (slash < 0) {
            return of(new BigDecimal(text));
        }
        BigInteger denominator = new BigInteger(text.substring(slash + 1));
        if (denominator.signum() == 0) {
            throw new NumberFormatException("zero denominator: " + text);
        }
        return new Rational(BigFraction.of(new BigInteger(text.substring(0, slash)), denominator));
    }

    public Rational plus(Rational other) {
        return new Rational(value.add(other.value));
    }

    public Rational minus(Rational other) {
        return new Rational(value.subtract(other.value));
    }

    public Rational times(Rational other) {
        return new Rational(value.multiply(other.value));
    }

    public Rational times(long factor) {
        return new Rational(value.multiply(factor));
    }

    /** @throws ArithmeticException if the divisor is zero */
    public Rational dividedBy(Rational divisor) {
        return new Rational(value.divide(divisor.value));
    }

    public Rational dividedBy(long divisor) {
        return new Rational(value.divide(divisor));
    }

    public Rational reciprocal() {
        return new Rational(value.reciprocal());
    }

    public Rational negate() {
        return new Rational(value.negate());
    }

    public Rational abs() {
        return new Rational(value.abs());
    }

    public Rational max(Rational other) {
        return compareTo(other) >= 0 ? this : other;
    }

    public Rational min(Rational other) {
        return compareTo(other) <= 0 ? this : other;
    }

    public int signum() {
        return value.signum();
    }

    public boolean isWhole() {
        return value.getDenominator().equals(BigInteger.ONE);
    }

    public BigInteger numerator() {
        return value.getNumerator();
    }

    /** Always positive. */
    public BigInteger denominator() {
        return value.getDenominator();
    }

    /** The greatest whole number that is not above this one. */
    public long floor() {
        BigInteger[] parts = value.getNumerator().divideAndRemainder(value.getDenominator());
        return parts[0].longValueExact() - (parts[1].signum() < 0 ? 1 : 0);
    }

    /** The least whole number that is not below this one. */
    public long ceil() {
        return -negate().floor();
    }

    /** The nearest whole number, a half upwards. */
    public long round() {
        return plus(HALF).floor();
    }

    public boolean isLessThan(Rational other) {
        return compareTo(other) < 0;
    }

    public boolean isGreaterThan(Rational other) {
        return compareTo(other) > 0;
    }

    public double toDouble() {
        return value.doubleValue();
    }

    /** Rounded half-even to 6 significant digits, the form of every plain number in an answer. */
    public BigDecimal toSixDigits() {
        return new BigDecimal(value.getNumerator())
                .divide(new BigDecimal(value.getDenominator()), SIX_DIGITS)
                .stripTrailingZeros();
    }

    @Override
    public int compareTo(Rational other) {
        // Not the library's comparison: version 1.2 orders two negative fractions by magnitude. Denominators are
        // positive.
        return numerator()
                .multiply(other.denominator())
                .compareTo(other.numerator().multiply(denominator()));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Rational that && value.equals(that.value);
    }

    @Override
    public int hashCode() {
        return value.hashCode();
    }

    /** {@code 341} or {@code 8/7}: the form that {@link #parse} reads. */
    @Override
    public String toString() {
        return isWhole() ? value.getNumerator().toString() : value.getNumerator() + "/" + value.getDenominator();
    }
}
