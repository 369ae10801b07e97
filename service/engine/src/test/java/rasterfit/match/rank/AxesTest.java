package rasterfit.match.rank;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rasterfit.match.rank.Setup.Axes;

/** Dominance by its definition: at least as good on all of picture, latency, risk and cost, and better on one. */
class AxesTest {
    private static final Axes HALF = new Axes(0.5, 0.5, 0.5, 0.5);

    @Test
    void betterOnOneAxisAndEqualOnTheOthersDominates() {
        for (Axes better : new Axes[] {
            new Axes(0.6, 0.5, 0.5, 0.5),
            new Axes(0.5, 0.6, 0.5, 0.5),
            new Axes(0.5, 0.5, 0.6, 0.5),
            new Axes(0.5, 0.5, 0.5, 0.6)
        }) {
            assertThat(better.dominates(HALF)).isTrue();
            assertThat(HALF.dominates(better)).isFalse();
        }
    }

    @Test
    void worseOnAnyAxisDoesNotDominate() {
        for (Axes mixed : new Axes[] {
            new Axes(0.4, 0.9, 0.9, 0.9),
            new Axes(0.9, 0.4, 0.9, 0.9),
            new Axes(0.9, 0.9, 0.4, 0.9),
            new Axes(0.9, 0.9, 0.9, 0.4)
        }) {
            assertThat(mixed.dominates(HALF)).isFalse();
        }
    }

    @Test
    void equalsDoNotDominateEachOther() {
        assertThat(HALF.dominates(new Axes(0.5, 0.5, 0.5, 0.5))).isFalse();
    }
}
