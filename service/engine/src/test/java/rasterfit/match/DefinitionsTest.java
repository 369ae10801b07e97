package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Basis;
import rasterfit.gear.Variant;
import rasterfit.quantity.Rational;
import rasterfit.rule.Refusal;

/** Grades, figures, limits and intents as ../shared/DOMAIN.md section 11 and ../shared/API.md define them. */
class DefinitionsTest {
    private static Map<Criterion, Double> weights(double... inOrder) {
        List<Criterion> order = List.of(
                Criterion.DOT_UNIFORMITY,
                Criterion.ASPECT,
                Criterion.COVERAGE,
                Criterion.MOTION,
                Criterion.LATENCY,
                Criterion.ACCEPTANCE,
                Criterion.LINK_DETAIL,
                Criterion.MODE_SWITCH_GAP,
                Criterion.EFFORT,
                Criterion.COST);
        Map<Criterion, Double> weights = new java.util.EnumMap<>(Criterion.class);
        for (int i = 0; i < order.size(); i++) {
            weights.put(order.get(i), inOrder[i]);
        }
        return weights;
    }

    @Test
    void intentsHaveTheWeightsOfTheTrade() {
        // ../shared/DOMAIN.md section 11, "Intents".
        assertThat(Intent.LEAST_DELAY.weights()).isEqualTo(weights(1, 1, .5, 2, 6, 3, 1, 1, .5, 1));
        assertThat(Intent.TRUEST_PICTURE.weights()).isEqualTo(weights(4, 3, 2, 3, 1, 2, 3, 1, .5, .5));
        assertThat(Intent.EVEN_WEIGHTS.weights()).isEqualTo(weights(1, 1, 1, 1, 1, 1, 1, 1, 1, 1));
    }

    @Test
    void intentsHaveTheLimitsOfTheTrade() {
        // Converter's greatest ≤ one field | aspect ≤ 3 %, drawn lines lost ≤ 4 %, beats ≤ 0.2/s; acceptance ≥ not
        // promised.
        assertThat(Intent.EVEN_WEIGHTS.limits()).isEmpty();
        assertThat(Intent.LEAST_DELAY.limits())
                .extracting(Limit::told)
                .containsExactly("addedLatencyFields at most 1", "acceptance at least WITHIN_LIMITS_NOT_PROMISED");
        assertThat(Intent.TRUEST_PICTURE.limits())
                .extracting(Limit::told)
                .containsExactly(
                        "aspectErrorPercent at most 3",
                        "croppedUsedLinesPercent at most 4",
                        "dropOrRepeatEverySeconds at least 5",
                        "acceptance at least WITHIN_LIMITS_NOT_PROMISED");
    }

    @Test
    void gradesAreOrderedFromTestedToOutside() {
        // The order and utilities of ../shared/DOMAIN.md sections 9 and 11.
        assertThat(AcceptanceGrade.values())
                .extracting(AcceptanceGrade::utility)
                .containsExactly(1.0, 1.0, 0.9, 0.85, 0.5, 0.15, 0.1, 0.05);
        for (AcceptanceGrade grade : AcceptanceGrade.values()) {
            assertThat(AcceptanceGrade.ofRankFromWorst(grade.rankFromWorst())).isEqualTo(grade);
            assertThat(grade.isAtLeast(grade)).isTrue();
            assertThat(grade.worse(grade)).isEqualTo(grade);
        }
        assertThat(AcceptanceGrade.OUTSIDE_LIMITS.rankFromWorst()).isEqualTo(Rational.ZERO);
        assertThat(AcceptanceGrade.TESTED.rankFromWorst()).isEqualTo(Rational.of(7));
        assertThat(AcceptanceGrade.LISTED.isAtLeast(AcceptanceGrade.NEAR_LISTED))
                .isTrue();
        assertThat(AcceptanceGrade.NEAR_LISTED.isAtLeast(AcceptanceGrade.LISTED))
                .isFalse();
        assertThat(AcceptanceGrade.LISTED.worse(AcceptanceGrade.NEAR_LISTED)).isEqualTo(AcceptanceGrade.NEAR_LISTED);
        assertThat(AcceptanceGrade.NEAR_LISTED.worse(AcceptanceGrade.LISTED)).isEqualTo(AcceptanceGrade.NEAR_LISTED);
        assertThat(AcceptanceGrade.LISTED.lowered()).isEqualTo(AcceptanceGrade.NEAR_LISTED);
        assertThat(AcceptanceGrade.LIMITS_UNKNOWN.lowered()).isEqualTo(AcceptanceGrade.OUTSIDE_LIMITS);
        assertThat(AcceptanceGrade.OUTSIDE_LIMITS.lowered()).isEqualTo(AcceptanceGrade.OUTSIDE_LIMITS);
    }

    private static Latency latency(int top, int middle, int bottom, int least, int typical, int greatest, Basis basis) {
        return new Latency(
                Rational.of(top),
                Rational.of(middle),
                Rational.of(bottom),
                Rational.of(least),
                Rational.of(typical),
                Rational.of(greatest),
                basis);
    }

    @Test
    void latenciesAddFigureByFigureAndTheWeakerBasisCounts() {
        Latency one = latency(1, 2, 3, 4, 5, 6, Basis.MEASURED);
        Latency other = latency(10, 20, 30, 40, 50, 60, Basis.ASSUMED);

        assertThat(one.plus(other)).isEqualTo(latency(11, 22, 33, 44, 55, 66, Basis.ASSUMED));
        assertThat(other.plus(one)).isEqualTo(latency(11, 22, 33, 44, 55, 66, Basis.ASSUMED));
        assertThat(one.plus(one).basis()).isEqualTo(Basis.MEASURED);
        assertThat(LatencyFigure.values())
                .extracting(figure -> one.figure(figure).floor())
                .containsExactly(1L, 2L, 3L, 4L, 5L, 6L);
    }

    @Test
    void aBareLatencyMeansItsGreatestForAnUpperBoundAndItsLeastForALowerOne() {
        assertThat(Limit.atMost(LimitedMeasure.ADDED_LATENCY_MS, Rational.ONE).figure())
                .isEqualTo(LatencyFigure.GREATEST);
        assertThat(Limit.atLeast(LimitedMeasure.ADDED_LATENCY_MS, Rational.ONE).figure())
                .isEqualTo(LatencyFigure.LEAST);
        assertThat(Limit.atMost(LimitedMeasure.CROPPED_LINES, Rational.ONE).figure())
                .isNull();
        Limit named = new Limit(
                LimitedMeasure.TOTAL_LATENCY_MS, LatencyFigure.TYPICAL, Limit.Bound.AT_MOST, Rational.ONE, null);
        assertThat(named.figure()).isEqualTo(LatencyFigure.TYPICAL);
        for (LimitedMeasure measure : LimitedMeasure.values()) {
            assertThat(measure.isLatency())
                    .isEqualTo(List.of("addedLatencyMs", "displayLagMs", "totalLatencyMs")
                            .contains(measure.id()));
        }
    }

    @Test
    void aBoundIsKeptAtItsValue() {
        Limit most = Limit.atMost(LimitedMeasure.CROPPED_LINES, Rational.of(4));
        Limit least = Limit.atLeast(LimitedMeasure.CROPPED_LINES, Rational.of(4));

        assertThat(most.isKeptBy(Rational.of(4))).isTrue();
        assertThat(most.isKeptBy(Rational.parse("4.001"))).isFalse();
        assertThat(most.isKeptBy(Rational.of(3))).isTrue();
        assertThat(least.isKeptBy(Rational.of(4))).isTrue();
        assertThat(least.isKeptBy(Rational.parse("3.999"))).isFalse();
        assertThat(least.isKeptBy(Rational.of(5))).isTrue();
        assertThat(most.told()).isEqualTo("croppedLines at most 4");
        assertThat(least.ruleId()).isEqualTo("limit.croppedLines");
    }

    @Test
    void aCheckAsksTheLimitsOfOneMeasureOnly() {
        Limit lines = Limit.atMost(LimitedMeasure.CROPPED_LINES, Rational.of(4));
        Limit dots = Limit.atMost(LimitedMeasure.CROPPED_DOTS, Rational.of(2));
        Limit bottom = new Limit(
                LimitedMeasure.ADDED_LATENCY_MS, LatencyFigure.BOTTOM, Limit.Bound.AT_MOST, Rational.of(2), null);
        LimitCheck check = new LimitCheck(List.of(lines, dots, bottom));

        assertThat(check.on(LimitedMeasure.CROPPED_DOTS)).containsExactly(dots);
        assertThat(check.check(LimitedMeasure.CROPPED_LINES, Rational.of(4))).isNull();
        assertThat(check.check(LimitedMeasure.CROPPED_LINES, (Rational) null)).isNull();
        assertThat(check.check(LimitedMeasure.COVERAGE_PERCENT, Rational.of(4))).isNull();
        Refusal refusal = check.check(LimitedMeasure.CROPPED_LINES, Rational.of(5));
        assertThat(refusal).isNotNull();
        assertThat(refusal.rule().id()).isEqualTo("limit.croppedLines");
        assertThat(refusal.value()).isEqualTo(Rational.of(5));
        assertThat(refusal.limit()).isEqualTo(Rational.of(4));
        assertThat(refusal.unit()).isEqualTo("lines");
        assertThat(refusal.message()).contains("at most 4");
        // Bottom is 3, though every other figure would keep it.
        Refusal late = check.check(LimitedMeasure.ADDED_LATENCY_MS, latency(1, 1, 3, 1, 1, 1, Basis.COMPUTED));
        assertThat(late).isNotNull();
        assertThat(late.value()).isEqualTo(Rational.of(3));
        assertThat(check.check(LimitedMeasure.ADDED_LATENCY_MS, latency(9, 9, 2, 9, 9, 9, Basis.COMPUTED)))
                .isNull();
        assertThat(check.check(LimitedMeasure.DISPLAY_LAG_MS, latency(9, 9, 9, 9, 9, 9, Basis.COMPUTED)))
                .isNull();
    }

    @Test
    void gradesAreRefusedByName() {
        Limit limit = Limit.atLeast(LimitedMeasure.ACCEPTANCE, AcceptanceGrade.LISTED.rankFromWorst());
        Refusal refusal = LimitCheck.refusal(limit, AcceptanceGrade.LARGER_THAN_LISTED.rankFromWorst());

        assertThat(refusal.message()).startsWith("LARGER_THAN_LISTED of acceptance against at least LISTED");
        // Counted from the worst: larger than listed is 2 above, listed 6.
        assertThat(refusal.value()).isEqualTo(Rational.of(2));
        assertThat(refusal.limit()).isEqualTo(Rational.of(6));
        assertThat(limit.told()).isEqualTo("acceptance at least LISTED");
    }

    @Test
    void workIsAllowedUpToItsLimit() {
        WorkLimit limit = new WorkLimit(10, () -> false);
        assertThatCode(() -> limit.checkSettings(10)).doesNotThrowAnyException();
        assertThatCode(limit::check).doesNotThrowAnyException();
        assertThatExceptionOfType(TooMuchWork.class).isThrownBy(() -> limit.checkSettings(11));
        assertThatExceptionOfType(OutOfTime.class).isThrownBy(new WorkLimit(10, () -> true)::check);
        // DEVELOPERS.md, decision 14.
        assertThat(WorkLimit.DEFAULT.maxSettings()).isEqualTo(2_000_000);
        assertThatCode(WorkLimit.DEFAULT::check).doesNotThrowAnyException();
        assertThat(new Matcher(limit).workLimit()).isSameAs(limit);
    }

    @Test
    void namesAreFoundAndOthersAreNot() {
        for (Criterion criterion : Criterion.values()) {
            assertThat(Criterion.byId(criterion.id())).contains(criterion);
            assertThat(criterion.curve()).isNotBlank();
        }
        for (LimitedMeasure measure : LimitedMeasure.values()) {
            assertThat(LimitedMeasure.byId(measure.id())).contains(measure);
        }
        assertThat(Criterion.byId("beauty")).isEmpty();
        assertThat(LimitedMeasure.byId("beauty")).isEmpty();
        assertThat(Criterion.LATENCY.unit()).isEqualTo("ms");
        assertThat(LimitedMeasure.BUFFERED_LINES.unit()).isEqualTo("lines");
    }

    @Test
    void aRequestAsksForAtLeastOneSetupOfEachRoute() {
        assertThatCode(() -> request(1, 1)).doesNotThrowAnyException();
        assertThatIllegalArgumentException().isThrownBy(() -> request(0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> request(1, 0));
    }

    private static MatchRequest request(int top, int settingsPerRoute) {
        MatchRequest any = new Workbench().modes(Modes.half525()).request();
        Variant source = any.source();
        return new MatchRequest(
                any.sourceName(),
                source,
                any.display(),
                any.equipment(),
                any.intent(),
                any.weights(),
                any.limits(),
                any.pixelAspect(),
                any.explain(),
                top,
                settingsPerRoute);
    }

    @Test
    void aRatioOfNothingIsNothing() {
        // ../shared/API.md: the ratio is 0 when a dot vanishes; a tube has no grid, so it is absent.
        assertThat(shape(1, 2).dotWidthRatio()).isEqualTo(Rational.HALF);
        assertThat(shape(0, 2).dotWidthRatio()).isEqualTo(Rational.ZERO);
        assertThat(shape(0, 0).dotWidthRatio()).isEqualTo(Rational.ZERO);
        assertThat(shape(null, null).dotWidthRatio()).isNull();
        assertThat(shape(1, 2).lineHeightRatio()).isEqualTo(Rational.HALF);
        assertThat(shape(null, 2).lineHeightRatio()).isNull();
    }

    private static Measures.Shape shape(
            @org.jspecify.annotations.Nullable Integer least, @org.jspecify.annotations.Nullable Integer greatest) {
        Rational zero = Rational.ZERO;
        return new Measures.Shape(
                null, null, zero, zero, zero, zero, zero, zero, zero, zero, least, greatest, least, greatest, null);
    }
}
