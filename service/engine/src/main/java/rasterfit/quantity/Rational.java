package rasterfit.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Pattern;
import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/**
 * An exact rational number without a unit, in lowest terms with a positive denominator.
 *
 * <p>Nearly all numbers of a match fit into two 64-bit integers, and its tables are filled by millions of operations, so
 * those are done in place; what overflows is left to {@link BigFraction}, and comes back once it fits again.
 */
public final class Rational implements Comparable<Rational> {
    public static final Rational ZERO = new Rational(0, 1, null);
    public static final Rational ONE = new Rational(1, 1, null);
    public static final Rational HALF = new Rational(1, 2, null);

    private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);
    private static final Pattern WRITTEN = Pattern.compile("-?[0-9]{1,20}(?:\\.[0-9]{1,12}|/[0-9]{1,20})?");
    private static final long EXACT_IN_DOUBLE = 1L << 53;

    private final long numerator;
    private final long denominator;
    /** The value where it does not fit; the other two fields are then 0. */
    private final @Nullable BigFraction large;

    private Rational(long numerator, long denominator, @Nullable BigFraction large) {
        this.numerator = numerator;
        this.denominator = denominator;
        this.large = large;
    }

    /** Long.MIN_VALUE counts as too large, so that every small number can be negated. */
    private static Rational of(BigFraction value) {
        BigInteger top = value.getNumerator();
        BigInteger bottom = value.getDenominator();
        if (bottom.signum() < 0) {
            // The library keeps the sign where it was given.
            top = top.negate();
            bottom = bottom.negate();
        }
        return top.bitLength() < 63 && bottom.bitLength() < 63
                ? new Rational(top.longValue(), bottom.longValue(), null)
                : new Rational(0, 0, BigFraction.of(top, bottom));
    }

    public static Rational of(long whole) {
        return of(whole, 1);
    }

    /**
     * The quotient of two whole numbers.
     *
     * @throws ArithmeticException if the denominator is zero
     */
    public static Rational of(long numerator, long denominator) {
        if (denominator <= 0 || numerator == Long.MIN_VALUE) {
            return of(BigFraction.of(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator)));
        }
        long divisor = gcd(numerator, denominator);
        return new Rational(numerator / divisor, denominator / divisor, null);
    }

    /** The exact value of a decimal number. */
    public static Rational of(BigDecimal decimal) {
        BigInteger unscaled = decimal.unscaledValue();
        return decimal.scale() >= 0
                ? of(BigFraction.of(unscaled, BigInteger.TEN.pow(decimal.scale())))
                : of(BigFraction.of(unscaled.multiply(BigInteger.TEN.pow(-decimal.scale()))));
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
        BigInteger bottom = new BigInteger(text.substring(slash + 1));
        if (bottom.signum() == 0) {
            throw new NumberFormatException("zero denominator: " + text);
        }
        return of(BigFraction.of(new BigInteger(text.substring(0, slash)), bottom));
    }

    public Rational plus(Rational other) {
        if (large == null && other.large == null) {
            long common = gcd(denominator, other.denominator);
            long left = other.denominator / common;
            long right = denominator / common;
            if (fits(numerator, left) && fits(other.numerator, right) && fits(denominator, left)) {
                long first = numerator * left;
                long second = other.numerator * right;
                long sum = first + second;
                boolean overflows = ((first ^ sum) & (second ^ sum)) < 0;
                if (!overflows && sum != Long.MIN_VALUE) {
                    return of(sum, denominator * left);
                }
            }
        }
        return of(big().add(other.big()));
    }

    public Rational minus(Rational other) {
        return plus(other.negate());
    }

    public Rational times(Rational other) {
        if (large == null && other.large == null) {
            long cross = gcd(numerator, other.denominator);
            long otherCross = gcd(other.numerator, denominator);
            long top = numerator / cross;
            long otherTop = other.numerator / otherCross;
            long bottom = denominator / otherCross;
            long otherBottom = other.denominator / cross;
            if (fits(top, otherTop) && fits(bottom, otherBottom)) {
                return new Rational(top * otherTop, bottom * otherBottom, null);
            }
        }
        return of(big().multiply(other.big()));
    }

    public Rational times(long factor) {
        return times(of(factor));
    }

    /**
     * The quotient.
     *
     * @throws ArithmeticException if the divisor is zero
     */
    public Rational dividedBy(Rational divisor) {
        return times(divisor.reciprocal());
    }

    public Rational dividedBy(long divisor) {
        return dividedBy(of(divisor));
    }

    /**
     * One divided by this number.
     *
     * @throws ArithmeticException if this number is zero
     */
    public Rational reciprocal() {
        if (large == null && numerator != 0) {
            return numerator > 0
                    ? new Rational(denominator, numerator, null)
                    : new Rational(-denominator, -numerator, null);
        }
        return of(big().reciprocal());
    }

    public Rational negate() {
        return large == null ? new Rational(-numerator, denominator, null) : of(large.negate());
    }

    public Rational abs() {
        return signum() < 0 ? negate() : this;
    }

    public Rational max(Rational other) {
        return compareTo(other) >= 0 ? this : other;
    }

    public Rational min(Rational other) {
        return compareTo(other) <= 0 ? this : other;
    }

    public int signum() {
        return large == null ? Long.signum(numerator) : large.signum();
    }

    public boolean isWhole() {
        return large == null ? denominator == 1 : large.getDenominator().equals(BigInteger.ONE);
    }

    public BigInteger numerator() {
        return large == null ? BigInteger.valueOf(numerator) : large.getNumerator();
    }

    /** Always positive. */
    public BigInteger denominator() {
        return large == null ? BigInteger.valueOf(denominator) : large.getDenominator();
    }

    /**
     * The greatest whole number that is not above this one.
     *
     * @throws ArithmeticException if it does not fit into a long
     */
    public long floor() {
        if (large == null) {
            return Math.floorDiv(numerator, denominator);
        }
        BigInteger[] parts = large.getNumerator().divideAndRemainder(large.getDenominator());
        return Math.subtractExact(parts[0].longValueExact(), parts[1].signum() < 0 ? 1 : 0);
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

    /** The nearest double. */
    public double toDouble() {
        boolean exactParts = large == null && Math.abs(numerator) <= EXACT_IN_DOUBLE && denominator <= EXACT_IN_DOUBLE;
        return exactParts ? (double) numerator / denominator : big().doubleValue();
    }

    /** Rounded half-even to 6 significant digits, the form of every plain number in an answer. */
    public BigDecimal toSixDigits() {
        return new BigDecimal(numerator())
                .divide(new BigDecimal(denominator()), SIX_DIGITS)
                .stripTrailingZeros();
    }

    @Override
    public int compareTo(Rational other) {
        if (large == null
                && other.large == null
                && fits(numerator, other.denominator)
                && fits(other.numerator, denominator)) {
            return Long.compare(numerator * other.denominator, other.numerator * denominator);
        }
        // Not the library's comparison: version 1.2 orders two negative fractions by magnitude.
        return numerator()
                .multiply(other.denominator())
                .compareTo(other.numerator().multiply(denominator()));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Rational that
                && numerator == that.numerator
                && denominator == that.denominator
                && (large == null ? that.large == null : large.equals(that.large));
    }

    @Override
    public int hashCode() {
        return large == null ? Long.hashCode(numerator * 31 + denominator) : large.hashCode();
    }

    /** {@code 341} or {@code 8/7}: the form that {@link #parse} reads. */
    @Override
    public String toString() {
        return isWhole() ? numerator().toString() : numerator() + "/" + denominator();
    }

    private BigFraction big() {
        return large == null ? BigFraction.of(numerator, denominator) : large;
    }

    /** Whether a product fits into 63 bits and a sign. */
    private static boolean fits(long a, long b) {
        long high = Math.multiplyHigh(a, b);
        long low = a * b;
        return (high == 0 && low >= 0) || (high == -1 && low < 0 && low != Long.MIN_VALUE);
    }

    /** Of absolute values; 1 rather than 0 for two zeros. */
    private static long gcd(long a, long b) {
        long left = Math.abs(a);
        long right = Math.abs(b);
        while (right != 0) {
            long rest = left % right;
            left = right;
            right = rest;
        }
        return Math.max(1, left);
    }
}
