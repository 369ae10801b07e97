package rasterfit.match.tune;

import java.math.BigInteger;
import rasterfit.quantity.Rational;

/**
 * The step function x → ⌈slope·x + offset⌉ over whole x, in 64-bit integers; it throws rather than overflow.
 */
final class CeilLine {
    private final long slope;
    private final long offset;
    private final long divisor;

    private CeilLine(long slope, long offset, long divisor) {
        this.slope = slope;
        this.offset = offset;
        this.divisor = divisor;
    }

    /** @throws ArithmeticException if the common denominator or a numerator needs more than 63 bits */
    static CeilLine of(Rational slope, Rational offset) {
        BigInteger common = slope.denominator()
                .multiply(offset.denominator())
                .divide(slope.denominator().gcd(offset.denominator()));
        return new CeilLine(
                slope.numerator().multiply(common.divide(slope.denominator())).longValueExact(),
                offset.numerator().multiply(common.divide(offset.denominator())).longValueExact(),
                common.longValueExact());
    }

    long at(long x) {
        return -Math.floorDiv(-Math.addExact(Math.multiplyExact(slope, x), offset), divisor);
    }
}
