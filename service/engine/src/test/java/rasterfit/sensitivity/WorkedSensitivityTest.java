package rasterfit.sensitivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Fact;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Matcher;
import rasterfit.match.Modes;
import rasterfit.match.Reruns;
import rasterfit.match.WorkLimit;
import rasterfit.match.Workbench;
import rasterfit.quantity.Rational;

/**
 * Two converters that differ in price and in how much there is to set, judged by these two alone, worked by hand. Utility
 * of n settings 1/(1 + n/4), of a price 2^(−price/150) (the published curves).
 */
class WorkedSensitivityTest {
    private static final int ROUNDS = 1;

    private static Converter box(String id, String price, Fact settings) {
        return Workbench.converter(id, price, Workbench.samples(1364), Workbench.repeat(2))
                .withSettingsToTune(settings);
    }

    private static MatchRequest judged(double effort, double cost, Converter... converters) {
        Workbench bench = new Workbench().modes(Modes.half525()).converters(converters);
        for (Criterion criterion : Criterion.values()) {
            bench.weight(criterion, 0);
        }
        return bench.weight(Criterion.EFFORT, effort)
                .weight(Criterion.COST, cost)
                .request()
                .ofEveryRoute();
    }

    private static Sensitivity of(MatchRequest request, Reruns.Bound bound) {
        Matcher matcher = new Matcher(WorkLimit.DEFAULT);
        return Sensitivity.of(matcher, bound, request, Catalogue.EMPTY, matcher.match(request, Catalogue.EMPTY));
    }

    private static Sensitivity of(MatchRequest request) {
        return of(request, Sensitivity.BOUND);
    }

    private static WeightRoom room(Sensitivity sensitivity, Criterion criterion) {
        return sensitivity.weights().stream()
                .filter(room -> room.criterion() == criterion)
                .findFirst()
                .orElseThrow();
    }

    private static List<String> ids(List<RouteStep> route) {
        return route.stream().map(RouteStep::id).toList();
    }

    /**
     * Easy: 1 setting, 0.8; 300 EUR, 0.25. Cheap: 4 settings, 0.5; 150 EUR, 0.5. Evenly weighted 1.05 : 1.00. Effort e:
     * 0.8e + 0.25 = 0.5e + 0.5 at e = 5/6; cost c: 0.8 + 0.25c = 0.5 + 0.5c at c = 6/5.
     */
    @Test
    void aWeightCanMoveAsFarAsTheTwoScoresAreApart() {
        Sensitivity sensitivity =
                of(judged(1, 1, box("easy", "300", Fact.known(1)), box("cheap", "150", Fact.known(4))));

        WeightRoom effort = room(sensitivity, Criterion.EFFORT);
        assertThat(effort.share()).isEqualTo(0.5);
        assertThat(effort.upper()).isNull();
        WeightRoom.Bound lower = Objects.requireNonNull(effort.lower());
        assertThat(lower.weight()).isCloseTo(5.0 / 6, within(1e-12));
        assertThat(lower.factor()).isCloseTo(5.0 / 6, within(1e-12));
        // (0.8 · 5/6 + 0.25) / (11/6) = 0.5.
        assertThat(lower.score()).isCloseTo(0.5, within(1e-12));
        assertThat(ids(lower.newFirst())).contains("cheap");
        assertThat(lower.verified()).isTrue();
        assertThat(lower.exact()).isTrue();
        assertThat(lower.sameRoute()).isFalse();
        assertThat(effort.lowerRoute()).isEqualTo(lower);

        WeightRoom cost = room(sensitivity, Criterion.COST);
        assertThat(cost.lower()).isNull();
        assertThat(Objects.requireNonNull(cost.upper()).weight()).isCloseTo(1.2, within(1e-12));
    }

    /**
     * Where one has no price its cost drops out: priced (4 settings, 150 EUR) has (0.5e + 0.5c)/(e + c) = 0.5 whatever
     * the weights, unpriced (8 settings) 1/3. Unpriced with 2 settings has 2/3, always more.
     */
    @Test
    void aCriterionThatDropsOutLeavesTheOthersToCount() {
        Sensitivity behind = of(judged(
                1,
                1,
                box("priced", "150", Fact.known(4)),
                Workbench.converter("gift", null, Workbench.samples(1364), Workbench.repeat(2))
                        .withSettingsToTune(Fact.known(8))));
        assertThat(room(behind, Criterion.COST).upper()).isNull();
        assertThat(room(behind, Criterion.COST).lower()).isNull();
    }

    /**
     * Steady: 4 settings, 0.5; 300 EUR, 0.25. Gift: no price, 8 settings, 1/3. At weights 1 and 1 steady has 0.375 and is
     * first; cost c: (0.5 + 0.25c)/(1 + c) = 1/3 at c = 2; the gift's score does not move.
     */
    @Test
    void aRivalWithoutThatCriterionIsOvertakenWhereItsScoreStands() {
        Sensitivity sensitivity = of(judged(
                1,
                1,
                box("steady", "300", Fact.known(4)),
                Workbench.converter("gift", null, Workbench.samples(1364), Workbench.repeat(2))
                        .withSettingsToTune(Fact.known(8))));
        WeightRoom.Bound upper =
                Objects.requireNonNull(room(sensitivity, Criterion.COST).upper());
        assertThat(upper.weight()).isCloseTo(2, within(1e-12));
        assertThat(ids(upper.newFirst())).contains("gift");
        assertThat(upper.verified()).isTrue();
        assertThat(upper.exact()).isFalse();
    }

    /**
     * Stated: 4 settings, 0.5; 100 EUR. Vague: not stated, 4 [1–12] assumed: 0.5 [0.8–0.25]; 80 EUR. Costs 2^(−2/3) =
     * 0.62996 and 2^(−8/15) = 0.69096. Vague leads by (0.69096 − 0.62996)/2 = 0.0305; with 12 settings it trails by
     * 0.125 − 0.0305 = 0.0945. The line between meets 0 at 4 + 8 · 0.0305/0.125 = 5.952. Its score swings by (0.8 −
     * 0.25)/2.
     */
    @Test
    void theFactThatCanChangeTheFirstPlaceIsToBeMeasuredNext() {
        Sensitivity sensitivity =
                of(judged(1, 1, box("stated", "100", Fact.known(4)), box("vague", "80", Fact.unknown())));

        FactEffect next = Objects.requireNonNull(sensitivity.measureNext());
        assertThat(next.fact()).isEqualTo(new FactPath(FactPath.Kind.CONVERTER, "vague", "vague", "settingsToTune"));
        assertThat(next.estimate().assumed()).isTrue();
        assertThat(next.changesFirst()).isTrue();
        assertThat(next.scoreSwing()).isCloseTo(0.275, within(1e-12));
        assertThat(Objects.requireNonNull(next.changesNear()).toDouble())
                .isCloseTo(4 + 8 * (Math.pow(2, -8.0 / 15) - Math.pow(2, -2.0 / 3)) / 2 / 0.125, within(1e-9));
        FactEffect.AtEnd least = Objects.requireNonNull(next.atLeast());
        FactEffect.AtEnd greatest = Objects.requireNonNull(next.atGreatest());
        assertThat(least.changesFirst()).isFalse();
        assertThat(greatest.changesFirst()).isTrue();
        assertThat(ids(greatest.first())).contains("stated");
    }

    /** A range that a maker states counts like an assumption: 3 to 5 settings are 0.571429 to 0.444444. */
    @Test
    void aRangeIsToldAsStatedAndAFactThatMovesMoreGoesFirst() {
        Fact range = new Fact.Within(Rational.of(3), null, Rational.of(5));
        Sensitivity sensitivity = of(judged(1, 1, box("ranged", "20", range), box("vague", "100", Fact.unknown())));

        assertThat(sensitivity.facts().stream()
                        .map(effect ->
                                effect.fact().item() + " " + effect.fact().of()))
                .containsSubsequence("vague settingsToTune", "ranged settingsToTune");
        FactEffect ranged = sensitivity.facts().stream()
                .filter(effect -> effect.fact().item().equals("ranged"))
                .findFirst()
                .orElseThrow();
        assertThat(ranged.estimate().assumed()).isFalse();
        // (1/(1 + 3/4) − 1/(1 + 5/4)) / 2 = (4/7 − 4/9) / 2.
        assertThat(ranged.scoreSwing()).isCloseTo((4.0 / 7 - 4.0 / 9) / 2, within(1e-12));
        assertThat(ranged.changesFirst()).isFalse();
        assertThat(ranged.changesNear()).isNull();
    }

    /** Everything that the two share by construction is stated. */
    @Test
    void whereAllIsStatedNothingIsToBeMeasured() {
        Sensitivity sensitivity =
                of(judged(1, 1, box("easy", "300", Fact.known(1)), box("cheap", "150", Fact.known(4))));
        assertThat(sensitivity.facts().stream()
                        .filter(effect -> effect.scoreSwing() > 0)
                        .toList())
                .isEmpty();
        assertThat(sensitivity.measureNext()).isNull();
    }

    @Test
    void withoutAFirstPlaceThereIsNothingToMove() {
        MatchRequest request = new Workbench().modes(Modes.half525()).request().ofEveryRoute();
        Sensitivity sensitivity = of(request);
        assertThat(sensitivity.weights()).isEmpty();
        assertThat(sensitivity.facts()).isEmpty();
        assertThat(sensitivity.spent()).isEqualTo(new Reruns.Spent(0, 0));
    }

    @Test
    void beyondTheBoundOnRunsBoundsHoldForWhatWasSeenAndSaySo() {
        MatchRequest request = judged(1, 1, box("easy", "300", Fact.known(1)), box("cheap", "150", Fact.known(4)));
        Sensitivity sensitivity = of(request, new Reruns.Bound(ROUNDS, 1_000_000));
        assertThat(sensitivity.spent().runs()).isEqualTo(ROUNDS);
        assertThat(sensitivity.spent().leftOut()).isPositive();
        WeightRoom.Bound upper =
                Objects.requireNonNull(room(sensitivity, Criterion.COST).upper());
        assertThat(upper.weight()).isCloseTo(1.2, within(1e-12));
        assertThat(upper.verified()).isFalse();
        assertThat(upper.exact()).isFalse();
    }
}
