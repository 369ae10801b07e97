package rasterfit.match.tune;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/**
 * The line slope·x + offset over whole x, rounded down or up: exact, in 64-bit integers where these hold it for every
 * |x| below 2^20 (no raster is larger), otherwise in rational arithmetic.
 */
final class StepLine {
    private static final int GREATEST_X_BITS = 20;
    private static final int SAFE_BITS = 62;

    private final long slope;
    private final long offset;
    private final long divisor;
    private final @Nullable Slow slow;

    /** The line whose common denominator needs more than 64 bits. */
    private record Slow(Rational slope, Rational offset) {
        Rational at(long x) {
            return slope.times(x).plus(offset);
        }
    }

    private StepLine(long slope, long offset, long divisor, @Nullable Slow slow) {
        this.slope = slope;
        this.offset = offset;
        this.divisor = divisor;
        this.slow = slow;
    }

    static StepLine of(Rational slope, Rational offset) {
        BigInteger common = slope.denominator()
                .multiply(offset.denominator())
                .divide(slope.denominator().gcd(offset.denominator()));
        BigInteger scaledSlope = slope.numerator().multiply(common.divide(slope.denominator()));
        BigInteger scaledOffset = offset.numerator().multiply(common.divide(offset.denominator()));
        boolean fits = common.bitLength() <= SAFE_BITS
                && scaledOffset.bitLength() < SAFE_BITS
                && scaledSlope.bitLength() + GREATEST_X_BITS < SAFE_BITS;
        return fits
                ? new StepLine(
                        scaledSlope.longValueExact(), scaledOffset.longValueExact(), common.longValueExact(), null)
                : new StepLine(0, 0, 1, new Slow(slope, offset));
    }

    long floorAt(long x) {
        return slow == null
                ? Math.floorDiv(slope * x + offset, divisor)
                : slow.at(x).floor();
    }

    long ceilAt(long x) {
        return slow == null
                ? -Math.floorDiv(-(slope * x + offset), divisor)
                : slow.at(x).ceil();
    }

    boolean isWholeAt(long x) {
        return slow == null ? (slope * x + offset) % divisor == 0 : slow.at(x).isWhole();
    }
}
