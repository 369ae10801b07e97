package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** The default curves of ../shared/DOMAIN.md section 11 at points worked by hand. */
class CurvesTest {
    private static final Offset<Double> EXACT = within(1e-12);

    @Test
    void evennessIsTwiceTheRatioLessOne() {
        assertThat(Curves.evenness(1)).isCloseTo(1, EXACT);
        assertThat(Curves.evenness(0.8)).isCloseTo(0.6, EXACT);
        assertThat(Curves.evenness(0.5)).isCloseTo(0, EXACT);
        assertThat(Curves.evenness(0.2)).isCloseTo(0, EXACT);
    }

    @Test
    void softEdgesCountAgainstTheDotsAlone() {
        // 0.8 · (1 − 0.25) = 0.6.
        assertThat(Curves.uniformity(0.8, 0.25, 1)).isCloseTo(0.6, EXACT);
        assertThat(Curves.uniformity(0.8, 0.25, 0.5)).isCloseTo(0.5, EXACT);
    }

    @Test
    void aspectIsFlatToOnePercentAndNothingFromFifteen() {
        assertThat(Curves.aspect(0)).isCloseTo(1, EXACT);
        assertThat(Curves.aspect(-1)).isCloseTo(1, EXACT);
        // (15 − 8)/14 = 0.5, either way.
        assertThat(Curves.aspect(8)).isCloseTo(0.5, EXACT);
        assertThat(Curves.aspect(-8)).isCloseTo(0.5, EXACT);
        assertThat(Curves.aspect(15)).isCloseTo(0, EXACT);
        assertThat(Curves.aspect(40)).isCloseTo(0, EXACT);
    }

    @Test
    void coverageIsTheDrawnShareOfTheGreatestTimesWhatIsKept() {
        assertThat(Curves.coverage(50, 100, 1, 1)).isCloseTo(0.5, EXACT);
        assertThat(Curves.coverage(150, 100, 1, 1)).isCloseTo(1, EXACT);
        // 0.5 · 0.8 · 0.9 = 0.36.
        assertThat(Curves.coverage(50, 100, 0.8, 0.9)).isCloseTo(0.36, EXACT);
    }

    @Test
    void motionFallsWithBeatsWholeFramesAndTears() {
        assertThat(Curves.motion(0, false, false)).isCloseTo(1, EXACT);
        // 1/(1 + 4 · 0.25) = 0.5.
        assertThat(Curves.motion(0.25, false, false)).isCloseTo(0.5, EXACT);
        assertThat(Curves.motion(0.25, true, false)).isCloseTo(0.25, EXACT);
        assertThat(Curves.motion(0.25, false, true)).isCloseTo(0.35, EXACT);
        assertThat(Curves.motion(0.25, true, true)).isCloseTo(0.175, EXACT);
    }

    @Test
    void halvesFollowTheirUnits() {
        assertThat(Curves.latency(0)).isCloseTo(1, EXACT);
        assertThat(Curves.latency(16.7)).isCloseTo(0.5, EXACT);
        assertThat(Curves.gap(2)).isCloseTo(0.5, EXACT);
        assertThat(Curves.cost(150)).isCloseTo(0.5, EXACT);
        assertThat(Curves.effort(4)).isCloseTo(0.5, EXACT);
        assertThat(Curves.effort(12)).isCloseTo(0.25, EXACT);
    }
}
