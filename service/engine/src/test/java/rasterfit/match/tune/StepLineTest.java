package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rasterfit.quantity.Rational;

/** Lines rounded at whole numbers against integers of any length, with fractions on both sides of what 64 bits hold. */
class StepLineTest {
    private static final int MOST_X = (1 << 20) - 1;

    private static Rational fraction(Random random, int numeratorBits, int denominatorBits) {
        BigInteger numerator = new BigInteger(numeratorBits, random);
        BigInteger denominator = new BigInteger(denominatorBits, random).add(BigInteger.ONE);
        return Rational.parse((random.nextBoolean() ? "" : "-") + numerator + "/" + denominator);
    }

    private static BigInteger floor(BigInteger numerator, BigInteger denominator) {
        BigInteger[] parts = numerator.divideAndRemainder(denominator);
        return parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
    }

    @Test
    void roundingIsExactForEveryLengthOfTheFraction() {
        Random random = new Random(20_251_126);
        for (int round = 0; round < 20_000; round++) {
            Rational slope = fraction(random, 1 + random.nextInt(48), 1 + random.nextInt(31));
            Rational offset = fraction(random, 1 + random.nextInt(62), 1 + random.nextInt(31));
            long x = random.nextInt(4) == 0 ? MOST_X : random.nextInt(2 * MOST_X) - MOST_X;
            BigInteger numerator = slope.numerator()
                    .multiply(BigInteger.valueOf(x))
                    .multiply(offset.denominator())
                    .add(offset.numerator().multiply(slope.denominator()));
            BigInteger denominator = slope.denominator().multiply(offset.denominator());
            BigInteger down = floor(numerator, denominator);
            boolean whole = numerator.mod(denominator).signum() == 0;
            if (down.bitLength() > 62) {
                continue;
            }
            StepLine line = StepLine.of(slope, offset);
            assertThat(line.floorAt(x)).as("%s · %d + %s", slope, x, offset).isEqualTo(down.longValueExact());
            assertThat(line.ceilAt(x))
                    .as("%s · %d + %s", slope, x, offset)
                    .isEqualTo(down.longValueExact() + (whole ? 0 : 1));
            assertThat(line.isWholeAt(x)).as("%s · %d + %s", slope, x, offset).isEqualTo(whole);
        }
    }

    @Test
    void wholePlacesAreToldApart() {
        // 3/2 · 4 + 1/2 = 6.5; 3/2 · 5 + 1/2 = 8.
        StepLine line = StepLine.of(Rational.of(3, 2), Rational.HALF);
        assertThat(line.isWholeAt(4)).isFalse();
        assertThat(line.floorAt(4)).isEqualTo(6);
        assertThat(line.ceilAt(4)).isEqualTo(7);
        assertThat(line.isWholeAt(5)).isTrue();
        assertThat(line.floorAt(5)).isEqualTo(8);
        assertThat(line.ceilAt(5)).isEqualTo(8);
        // −3/2 · 4 + 1/2 = −5.5.
        StepLine falling = StepLine.of(Rational.of(-3, 2), Rational.HALF);
        assertThat(falling.floorAt(4)).isEqualTo(-6);
        assertThat(falling.ceilAt(4)).isEqualTo(-5);
    }
}
