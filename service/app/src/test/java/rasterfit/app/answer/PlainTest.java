package rasterfit.app.answer;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.quantity.Rational;

/** Six significant digits, rounded half-even by hand; no exponent. */
class PlainTest {
    @ParameterizedTest
    @CsvSource({
        "1/3, 0.333333",
        "2/3, 0.666667",
        "-2/3, -0.666667",
        "1000000, 1000000",
        "123456789, 123457000",
        "1234565, 1234560",
        "1234575, 1234580",
        "1/1000000000, 0.000000001",
        "0, 0",
        "3/2, 1.5"
    })
    void rationalsAreRoundedHalfEvenToSixDigits(String exact, String written) {
        assertThat(Plain.of(Rational.parse(exact)).toPlainString()).isEqualTo(written);
    }

    @Test
    void trailingZerosAndExponentsAreLeftOut() {
        assertThat(Plain.of(Rational.of(148_500_000)).toString()).isEqualTo("148500000");
        assertThat(Plain.of(0.25).toString()).isEqualTo("0.25");
        assertThat(Plain.of(6e6).toString()).isEqualTo("6000000");
    }

    @Test
    void theAbsentStaysAbsent() {
        assertThat(Plain.orAbsent((Rational) null)).isNull();
        assertThat(Plain.orAbsent((Double) null)).isNull();
        assertThat(Plain.exactOrAbsent((Rational) null)).isNull();
    }
}
