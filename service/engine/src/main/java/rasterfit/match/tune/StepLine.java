package rasterfit.match.tune;

import java.math.BigInteger;
import rasterfit.quantity.Rational;

/** The line slope·x + offset over whole x, rounded down or up, in 64-bit integers; it throws rather than overflow. */
final class StepLine {
    private final long slope;
    private final long offset;
    private final long divisor;

    private StepLine(long slope, long offset, long divisor) {
        this.slope = slope;
        this.offset = offset;
        this.divisor = divisor;
    }

    /**
     * Brings both to their common denominator.
     *
     * @throws ArithmeticException if that or a numerator needs more than 63 bits
     */
    static StepLine of(Rational slope, Rational offset) {
        BigInteger common = slope.denominator()
                .multiply(offset.denominator())
                .divide(slope.denominator().gcd(offset.denominator()));
        return new StepLine(
                slope.numerator().multiply(common.divide(slope.denominator())).longValueExact(),
                offset.numerator().multiply(common.divide(offset.denominator())).longValueExact(),
                common.longValueExact());
    }

    private long scaled(long x) {
        return Math.addExact(Math.multiplyExact(slope, x), offset);
    }

    long floorAt(long x) {
        return Math.floorDiv(scaled(x), divisor);
    }

    long ceilAt(long x) {
        return -Math.floorDiv(-scaled(x), divisor);
    }

    boolean isWholeAt(long x) {
        return scaled(x) % divisor == 0;
    }
}
