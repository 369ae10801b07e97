package rasterfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the JDK's integers and decimals, which are the reference here. */
class RationalTest {
    @ParameterizedTest
    @CsvSource({
        "59062500/11, 59062500/11",
        "118125000/22, 59062500/11",
        "341, 341",
        "4433618.75, 17734475/4",
        "-0.5, -1/2",
        "-6/4, -3/2",
        "0.000000000001, 1/1000000000000",
        "0/7, 0",
        "00012, 12"
    })
    void theWrittenFormIsReadExactlyAndWrittenInLowestTerms(String written, String lowestTerms) {
        assertThat(Rational.parse(written)).hasToString(lowestTerms);
        assertThat(Rational.parse(lowestTerms)).isEqualTo(Rational.parse(written));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " 1",
                "1 ",
                "+1",
                "1e6",
                "NaN",
                "Infinity",
                ".5",
                "5.",
                "1/0",
                "1/-2",
                "1/2/3",
                "1.5/2",
                "0x10",
                "1,5",
                "123456789012345678901",
                "0.1234567890123",
                "1/123456789012345678901",
                "١"
            })
    void anythingElseIsRefused(String written) {
        assertThatThrownBy(() -> Rational.parse(written)).isInstanceOf(NumberFormatException.class);
    }

    @Test
    void floorCeilAndRoundAgreeWithTheIntegersOfTheJdk() {
        Random random = new Random(1);
        for (int i = 0; i < 5000; i++) {
            long numerator = random.nextLong() >> random.nextInt(60);
            long denominator = 1 + (random.nextLong() >>> (1 + random.nextInt(62)));
            Rational value = Rational.of(numerator, denominator);
            BigInteger twice = BigInteger.valueOf(denominator).shiftLeft(1);
            // A half upwards is floor(value + 1/2) = floor((2n + d) / 2d).
            BigInteger raised = BigInteger.valueOf(numerator).shiftLeft(1).add(BigInteger.valueOf(denominator));
            BigInteger[] parts = raised.divideAndRemainder(twice);
            long rounded = parts[1].signum() < 0
                    ? parts[0].subtract(BigInteger.ONE).longValueExact()
                    : parts[0].longValueExact();
            assertThat(value.floor()).isEqualTo(Math.floorDiv(numerator, denominator));
            assertThat(value.ceil()).isEqualTo(-Math.floorDiv(-numerator, denominator));
            assertThat(value.round()).isEqualTo(rounded);
        }
    }

    @ParameterizedTest
    @CsvSource({"5/2, 2, 3, 3", "-5/2, -3, -2, -2", "7/3, 2, 3, 2", "-7/3, -3, -2, -2", "4, 4, 4, 4", "0, 0, 0, 0"})
    void aHalfRoundsUpwards(String value, long floor, long ceil, long round) {
        Rational rational = Rational.parse(value);
        assertThat(rational.floor()).isEqualTo(floor);
        assertThat(rational.ceil()).isEqualTo(ceil);
        assertThat(rational.round()).isEqualTo(round);
    }

    @ParameterizedTest
    @CsvSource({
        // Ties go to the even digit, IEEE 754-2019 §4.3.1; the first two differ from rounding a half upwards.
        "1.234565, 1.23456",
        "-1.234565, -1.23456",
        "1.234575, 1.23458",
        "123456.5, 123456",
        "123457.5, 123458",
        "1/3, 0.333333",
        "2/3, 0.666667",
        "8/7, 1.14286",
        "29531250/491381, 60.0985",
        "1234567, 1234570",
        "999999.5, 1000000",
        "0, 0",
        "1/1000, 0.001"
    })
    void sixSignificantDigitsRoundHalfEven(String value, String expected) {
        assertThat(Rational.parse(value).toSixDigits().toPlainString()).isEqualTo(expected);
    }

    @Test
    void sixDigitsAreRoundedOnceFromTheExactValue() {
        MathContext six = new MathContext(6, RoundingMode.HALF_EVEN);
        Random random = new Random(2);
        for (int i = 0; i < 5000; i++) {
            // A decimal with few digits is exact in the JDK, so its rounding is the reference.
            BigDecimal decimal = BigDecimal.valueOf(random.nextInt(), random.nextInt(10));
            assertThat(Rational.of(decimal).toSixDigits()).isEqualByComparingTo(decimal.round(six));
        }
    }

    @Test
    void theFourOperationsObeyCrossMultiplication() {
        Random random = new Random(3);
        for (int i = 0; i < 2000; i++) {
            long a = random.nextInt(2001) - 1000L;
            long b = 1L + random.nextInt(1000);
            long c = random.nextInt(2001) - 1000L;
            long d = 1L + random.nextInt(1000);
            Rational left = Rational.of(a, b);
            Rational right = Rational.of(c, d);
            assertThat(left.plus(right)).isEqualTo(Rational.of(a * d + c * b, b * d));
            assertThat(left.minus(right)).isEqualTo(Rational.of(a * d - c * b, b * d));
            assertThat(left.times(right)).isEqualTo(Rational.of(a * c, b * d));
            assertThat(Integer.signum(left.compareTo(right))).isEqualTo(Long.signum(a * d - c * b));
            if (c != 0) {
                assertThat(left.dividedBy(right)).isEqualTo(Rational.of(a * d, b * c));
            }
        }
    }

    @Test
    void equalValuesAreEqualHoweverTheyWereWritten() {
        assertThat(Rational.of(-3, -6)).isEqualTo(Rational.HALF).hasSameHashCodeAs(Rational.HALF);
        assertThat(Rational.of(3, -6)).isEqualTo(Rational.HALF.negate()).hasToString("-1/2");
        assertThat(Rational.of(3, -6).denominator()).isEqualTo(BigInteger.TWO);
    }

    @Test
    void aZeroDivisorIsAnArithmeticError() {
        assertThatThrownBy(() -> Rational.ONE.dividedBy(Rational.ZERO)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Rational.of(1, 0)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(Rational.ZERO::reciprocal).isInstanceOf(ArithmeticException.class);
    }
}
