package rasterfit.rule;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** Edges of digital link clocks: 25 MHz (HDMI 1.3a §6.4) and 165 MHz where nothing more is declared (§8.3). */
class LinkClockRulesTest {
    @Test
    void anUndeclaredDisplayTakes165MegahertzAndNotOneHertzMore() {
        assertThat(LinkClockRules.UNDECLARED_MAXIMUM).isEqualTo(Frequency.ofHz(165_000_000));
        assertThat(LinkClockRules.display(Frequency.ofHz(165_000_000), LinkClockRules.UNDECLARED_MAXIMUM))
                .isEmpty();
        Refusal refusal = LinkClockRules.display(Frequency.ofHz(165_000_001), LinkClockRules.UNDECLARED_MAXIMUM)
                .orElseThrow();
        assertThat(refusal.rule().id()).isEqualTo("link.clock-exceeds-display");
        assertThat(refusal.value()).isEqualTo(Rational.of(165_000_001));
        assertThat(refusal.limit()).isEqualTo(Rational.of(165_000_000));
    }

    @Test
    void aConvertersOwnMaximumCounts() {
        Frequency greatest = Frequency.ofHz(297_000_000);
        assertThat(LinkClockRules.converter(greatest, greatest)).isEmpty();
        assertThat(LinkClockRules.converter(Frequency.parseHz("297000000.001"), greatest))
                .hasValueSatisfying(
                        refusal -> assertThat(refusal.rule().id()).isEqualTo("link.clock-exceeds-converter"));
    }

    @Test
    void twentyFiveMegapixelsAreTheLeast() {
        assertThat(LinkClockRules.least(Frequency.ofHz(25_000_000))).isEmpty();
        // VIC 1 at 59.94 Hz runs at 25.175 MHz, 720 × 480 interlaced without repetition would at 13.5 MHz.
        assertThat(LinkClockRules.least(Frequency.ofHz(25_175_000))).isEmpty();
        assertThat(LinkClockRules.least(Frequency.ofHz(13_500_000)))
                .hasValueSatisfying(refusal -> assertThat(refusal.rule().id()).isEqualTo("link.clock-below-minimum"));
        assertThat(LinkClockRules.least(Frequency.ofHz(24_999_999))).isPresent();
    }
}
