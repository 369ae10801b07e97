package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.match.Criterion;

/** Weights by ../shared/DOMAIN.md section 11 and ../shared/API.md: normalised to 1, what does not apply drops out. */
class ScoringTest {
    @Test
    void weightsAreSharesOfThoseThatApply() {
        // 3 + 1 apply; of the picture axis only the 3 and a 0.
        Scoring scoring = Scoring.of(
                Map.of(Criterion.ASPECT, 3.0, Criterion.LATENCY, 1.0, Criterion.COST, 5.0),
                EnumSet.of(Criterion.ASPECT, Criterion.COVERAGE, Criterion.LATENCY));

        assertThat(scoring.weight(Criterion.ASPECT)).isCloseTo(0.75, within(1e-12));
        assertThat(scoring.weight(Criterion.LATENCY)).isCloseTo(0.25, within(1e-12));
        assertThat(scoring.weight(Criterion.COVERAGE)).isZero();
        assertThat(scoring.weight(Criterion.COST)).isZero();
        assertThat(scoring.applies(Criterion.COVERAGE)).isTrue();
        assertThat(scoring.applies(Criterion.COST)).isFalse();
        assertThat(scoring.picture(Criterion.ASPECT)).isCloseTo(1, within(1e-12));
        assertThat(scoring.picture(Criterion.COVERAGE)).isZero();
        assertThat(scoring.picture(Criterion.LATENCY)).isZero();
    }

    @Test
    void whereAllWeightsAreZeroTheyCountEvenly() {
        // Four criteria a quarter each; the picture axis has two of them.
        Scoring scoring = Scoring.of(
                Map.of(), EnumSet.of(Criterion.ASPECT, Criterion.MOTION, Criterion.LATENCY, Criterion.EFFORT));

        assertThat(scoring.weight(Criterion.EFFORT)).isCloseTo(0.25, within(1e-12));
        assertThat(scoring.picture(Criterion.ASPECT)).isCloseTo(0.5, within(1e-12));
        assertThat(scoring.picture(Criterion.MOTION)).isCloseTo(0.5, within(1e-12));
    }
}
