package rasterfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

class UnitsTest {
    @Test
    void theLineOfThe625LineSystemLasts64Microseconds() {
        // ITU-R BT.1700: 15 625 Hz.
        assertThat(Frequency.ofHz(15_625).period()).isEqualTo(TimeSpan.ofMicros(Rational.of(64)));
        assertThat(Frequency.ofHz(15_625).period().millis()).isEqualTo(Rational.of(64, 1000));
    }

    @Test
    void percentFromIsSignedAndRelativeToTheNominal() {
        // CTA-861-I table 1 note c: 25.2 MHz is inside ±0.5 % of 25.175 MHz; 25/25175 = 1/1007.
        assertThat(Frequency.ofHz(25_200_000).percentFrom(Frequency.ofHz(25_175_000)))
                .isEqualTo(Rational.of(100, 1007));
        assertThat(Frequency.ofHz(99).percentFrom(Frequency.ofHz(100))).isEqualTo(Rational.of(-1));
    }

    @Test
    void spansMayBeNegative() {
        TimeSpan span = TimeSpan.ZERO.minus(TimeSpan.ofMillis(Rational.of(3, 2)));
        assertThat(span.millis()).isEqualTo(Rational.of(-3, 2));
        assertThat(span.max(TimeSpan.ZERO)).isEqualTo(TimeSpan.ZERO);
        assertThat(span.min(TimeSpan.ZERO)).isEqualTo(span);
    }

    @Test
    void moneyOfDifferentCurrenciesIsNeverAdded() {
        Money euro = new Money(new BigDecimal("95.00"), "EUR");
        assertThat(euro.plus(new Money(new BigDecimal("0.10"), "EUR")).amount()).isEqualByComparingTo("95.10");
        assertThatThrownBy(() -> euro.plus(new Money(BigDecimal.ONE, "JPY")))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Money(BigDecimal.ONE, "euro")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Money(new BigDecimal("-1"), "EUR")).isInstanceOf(IllegalArgumentException.class);
    }
}
