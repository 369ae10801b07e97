package rasterfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.Random;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;

/** In place or beyond 64 bits, the arithmetic is that of a general-purpose library: commons-numbers' BigFraction. */
class RationalOverflowTest {
    private static final int CASES = 200_000;

    @Test
    void everyOperationAgreesWithTheLibraryOnBothSidesOfTheLimit() {
        Random random = new Random(20251125);
        for (int i = 0; i < CASES; i++) {
            long a = anyLong(random);
            long b = positive(random);
            long c = anyLong(random);
            long d = positive(random);
            Rational left = Rational.of(a, b);
            Rational right = Rational.of(c, d);
            BigFraction exactLeft = BigFraction.of(a, b);
            BigFraction exactRight = BigFraction.of(c, d);
            assertSame(left.plus(right), exactLeft.add(exactRight));
            assertSame(left.minus(right), exactLeft.subtract(exactRight));
            assertSame(left.times(right), exactLeft.multiply(exactRight));
            if (c != 0) {
                assertSame(left.dividedBy(right), exactLeft.divide(exactRight));
            }
            assertSame(left.times(right).dividedBy(d).times(d), exactLeft.multiply(exactRight));
            BigInteger cross = BigInteger.valueOf(a)
                    .multiply(BigInteger.valueOf(d))
                    .subtract(BigInteger.valueOf(c).multiply(BigInteger.valueOf(b)));
            assertThat(left.compareTo(right)).isEqualTo(cross.signum());
            assertThat(left.toDouble()).isEqualTo(exactLeft.doubleValue());
            BigInteger[] parts = BigInteger.valueOf(a).divideAndRemainder(BigInteger.valueOf(b));
            assertThat(left.floor()).isEqualTo(parts[0].longValueExact() - (parts[1].signum() < 0 ? 1 : 0));
        }
    }

    private static void assertSame(Rational ours, BigFraction library) {
        BigInteger numerator = library.getNumerator();
        BigInteger denominator = library.getDenominator();
        boolean negative = denominator.signum() < 0;
        assertThat(ours.numerator()).isEqualTo(negative ? numerator.negate() : numerator);
        assertThat(ours.denominator()).isEqualTo(denominator.abs());
    }

    /** Of any length, so that small, large and limiting numbers meet. */
    private static long anyLong(Random random) {
        long value = random.nextLong() >> random.nextInt(64);
        return random.nextInt(50) == 0 ? Long.MIN_VALUE + random.nextInt(3) : value;
    }

    private static long positive(Random random) {
        return Math.max(1, random.nextLong() >>> (1 + random.nextInt(62)));
    }
}
