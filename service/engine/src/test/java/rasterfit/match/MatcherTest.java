package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** What whole answers promise, whatever the numbers. */
class MatcherTest {
    private static Converter scaler(String id) {
        return Workbench.converter(
                id,
                Workbench.samples(682, 858, 1364),
                Workbench.scale(4, List.of(Workbench.locked(6000, 60), Workbench.free(2)), 16, 4));
    }

    private static Converter repeater(String id) {
        return Workbench.converter(id, "40", Workbench.samples(858, 1364), Workbench.repeat(2, 4, 5));
    }

    private static Workbench bench() {
        return new Workbench().modes(Modes.half525()).converters(scaler("a"), repeater("b"));
    }

    @Test
    void aScoreIsTheSumOfItsParts() {
        for (RankedSetup setup : bench().weight(Criterion.LATENCY, 3).match().ranked()) {
            double sum = 0;
            double weights = 0;
            for (MatchResult.CriterionValue value : setup.criteria()) {
                sum += value.weight() * value.utility();
                weights += value.weight();
            }
            assertThat(setup.score()).isCloseTo(sum, within(1e-12));
            assertThat(weights).isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void theSameQuestionGivesTheSameAnswerInWhateverOrderTheGearStands() {
        MatchResult one = new Workbench()
                .modes(Modes.half525())
                .converters(scaler("a"), repeater("b"), scaler("c"))
                .match();
        MatchResult other = new Workbench()
                .modes(Modes.half525())
                .converters(scaler("c"), scaler("a"), repeater("b"))
                .match();
        assertThat(other).isEqualTo(one);
    }

    @Test
    void refusedAndAcceptedSettingsAddUp() {
        MatchResult result = bench().match();
        long refused = result.refused().stream()
                .filter(group -> group.of() == RefusalGroup.Of.SETTING)
                .mapToLong(RefusalGroup::count)
                .sum();
        assertThat(refused).isEqualTo(result.counts().refusedSettings()).isPositive();
        assertThat(result.counts().settings()).isGreaterThan(refused);
    }

    @Test
    void aLimitRefusesByItsOwnRuleAndNamesTheNearest() {
        MatchResult result = bench().limits(Limit.atMost(LimitedMeasure.ADDED_LATENCY_MS, Rational.of(1, 100)))
                .match();
        assertThat(result.ranked()).isEmpty();
        RefusalGroup group = result.refused().stream()
                .filter(refused -> refused.rule().id().equals("limit.addedLatencyMs"))
                .findFirst()
                .orElseThrow();
        assertThat(group.nearest()).isNotNull();
        // The repeater's line of 63.5 µs and 2 µs of electronics misses 10 µs by the least.
        assertThat(rasterfit.Fractions.printed(group.nearest().value(), 4)).isEqualTo("0.0655");
        assertThat(group.nearest().limit()).isEqualTo(Rational.of(1, 100));
        assertThat(group.nearest().route()).anyMatch(id -> id.startsWith("b"));
    }

    @Test
    void aLooserLimitNeverLosesASetup() {
        int before = 0;
        for (int ms = 0; ms <= 40; ms += 5) {
            int now = bench().limits(Limit.atMost(LimitedMeasure.TOTAL_LATENCY_MS, Rational.of(ms)))
                    .match()
                    .ranked()
                    .size();
            assertThat(now).isGreaterThanOrEqualTo(before);
            before = now;
        }
        assertThat(before).isEqualTo(2);
    }

    @Test
    void anUnknownPriceFailsAPriceLimitAndAKnownOneIsHeldAgainstItsGreatest() {
        Workbench bench = new Workbench()
                .modes(Modes.half525())
                .converters(
                        Workbench.converter("cheap", "40", Workbench.samples(858), Workbench.repeat(2)),
                        Workbench.converter("dear", "41", Workbench.samples(858), Workbench.repeat(2)),
                        Workbench.converter("unpriced", null, Workbench.samples(858), Workbench.repeat(2)))
                .limits(new Limit(LimitedMeasure.PRICE, null, Limit.Bound.AT_MOST, Rational.of(40), "EUR"));
        MatchResult result = bench.match();
        assertThat(result.ranked()).hasSize(1);
        assertThat(result.ranked().get(0).price().amount()).isEqualByComparingTo(new BigDecimal("40"));
        assertThat(result.refused())
                .filteredOn(group -> group.rule().id().equals("limit.price"))
                .singleElement()
                .matches(group -> group.count() == 2 && group.of() == RefusalGroup.Of.ROUTE);
    }

    @Test
    void limitsOfAnIntentThatLeaveNothingAreToldInsteadOfKept() {
        // A lone free-running output drops a field every 6.3 s... of a 50 Hz source on 60 Hz ten each second.
        Workbench bench = new Workbench()
                .modes(Modes.of("5320342.5", "341", "312", Scan.PROGRESSIVE, new Window(256, 240, 65, 41)))
                .converters(Workbench.converter(
                        "free",
                        Workbench.samples(1364),
                        Workbench.scale(1, List.of(Workbench.free(2, Frequency.ofHz(60))), 16)))
                .intent(Intent.TRUEST_PICTURE);
        RankedSetup setup = bench.match().ranked().get(0);
        assertThat(setup.findings()).anyMatch(finding -> finding.rule().id().equals("intent.limit-not-kept"));
        // With a locked output beside it the limits bind again.
        RankedSetup better = bench.converters(Workbench.converter(
                        "locked",
                        Workbench.samples(1364),
                        Workbench.scale(1, List.of(Workbench.locked(6000, null)), 31)))
                .match()
                .ranked()
                .get(0);
        assertThat(better.findings()).noneMatch(finding -> finding.rule().id().equals("intent.limit-not-kept"));
    }

    @Test
    void anUnlistedSetupNamesAListedFallbackOnTheSameEquipmentOrSaysThatThereIsNone() {
        MatchResult result = new Workbench()
                .modes(Modes.half525())
                .converters(
                        Workbench.converter("both", "40", Workbench.samples(858, 1364), Workbench.repeat(2, 4)),
                        Workbench.converter("none", "40", Workbench.samples(1364), Workbench.repeat(4)))
                .weight(Criterion.ACCEPTANCE, 0)
                .weight(Criterion.DOT_UNIFORMITY, 50)
                .match();
        for (RankedSetup setup : result.ranked()) {
            Measures.Acceptance acceptance =
                    setup.modeSettings().get(0).measures().acceptance();
            boolean both = setup.route().stream().anyMatch(step -> step.id().equals("both"));
            assertThat(acceptance.grade()).isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
            if (both) {
                assertThat(acceptance.fallback()).isNotNull();
                assertThat(acceptance.fallback().listedAs()).isEqualTo("vic:2");
                assertThat(acceptance.fallback().settings().samplesPerLine()).isEqualTo(858);
            } else {
                assertThat(acceptance.fallback()).isNull();
                assertThat(setup.findings())
                        .anyMatch(finding -> finding.message().contains("no setting"));
            }
        }
        assertThat(result.ranked()).hasSize(2);
    }

    @Test
    void theHeadOfALongerRankingIsTheShorterOne() {
        List<RankedSetup> all = bench().settingsPerRoute(50).match().ranked();
        List<RankedSetup> some = bench().settingsPerRoute(50).top(7).match().ranked();
        assertThat(all.size()).isGreaterThan(50);
        assertThat(some).isEqualTo(all.subList(0, 7));
        assertThat(all).isSortedAccordingTo((a, b) -> Double.compare(b.score(), a.score()));
    }

    @Test
    void aModeThatNothingCanShowLeavesTheRouteOutAndIsExplained() {
        MatchResult result = new Workbench()
                .modes(
                        Modes.half525(),
                        Modes.of("40000000", "1000", "600", Scan.PROGRESSIVE, new Window(800, 500, 100, 20)))
                .converters(repeater("b"))
                .match();
        assertThat(result.ranked()).isEmpty();
        assertThat(result.refused()).extracting(group -> group.rule().id()).contains("input.field-rate-outside-range");
    }

    @Test
    void explainedStepsNameInputsFormulaSourceAndResult() {
        List<Step> steps = bench().explained()
                .match()
                .ranked()
                .get(0)
                .modeSettings()
                .get(0)
                .steps();
        assertThat(steps)
                .extracting(Step::name)
                .contains(
                        "pixelAspectRatio",
                        "lineRate",
                        "fieldRate",
                        "samplesPerDot",
                        "verticalScale",
                        "horizontalScale",
                        "aspectErrorPercent",
                        "addedLatencyMs",
                        "bufferedLines",
                        "acceptance",
                        "totalLatencyMs");
        assertThat(steps).allSatisfy(step -> {
            assertThat(step.formula()).isNotBlank();
            assertThat(step.source()).isNotBlank();
            assertThat(step.result()).isNotBlank();
            assertThat(step.inputs()).isNotEmpty();
        });
    }

    @Test
    void workIsLimitedByACountAndByAClock() {
        MatchRequest request = bench().request();
        assertThatThrownBy(() -> new Matcher(new WorkLimit(10, () -> false)).match(request, Catalogue.EMPTY))
                .isInstanceOf(TooMuchWork.class)
                .hasMessageContaining("10");
        assertThatThrownBy(() -> new Matcher(new WorkLimit(1_000_000, () -> true)).match(request, Catalogue.EMPTY))
                .isInstanceOf(OutOfTime.class);
    }

    @Test
    void aRequestWithoutAnyChainIsToldWhy() {
        MatchResult result = new Workbench().modes(Modes.half525()).match();
        assertThat(result.counts().routes()).isZero();
        assertThat(result.refused())
                .singleElement()
                .matches(group -> group.rule().id().equals("chain.nothing-mates")
                        && group.message().contains("SCART")
                        && group.message().contains("HDMI"));
    }

    @Test
    void aModeWithoutBlankingIsNoMode() {
        assertThatThrownBy(() -> Modes.of("59062500/11", "341", "262", Scan.PROGRESSIVE, new Window(341, 240, 0, 18)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("blanking");
    }

    /** 240 lines around the 224 from line 38 on would end at 270 of 262: they are moved up to end with the field. */
    @Test
    void repeatedLinesStayInsideOfTheField() {
        Settings settings = new Workbench()
                .modes(Modes.of("59062500/11", "341", "262", Scan.PROGRESSIVE, new Window(256, 224, 65, 38)))
                .converters(repeater("b"))
                .match()
                .ranked()
                .get(0)
                .modeSettings()
                .get(0)
                .settings();
        assertThat(settings.lines()).isEqualTo(240);
        assertThat(settings.firstLine()).isEqualTo(22);
    }

    /** One dot and one line of a 1 kHz clock would be drawn millions of columns wide. */
    @Test
    void absurdShapesNeitherOverflowNorExhaust() {
        MatchResult result = new Workbench()
                .modes(Modes.of("10000", "3", "262", Scan.PROGRESSIVE, new Window(1, 1, 1, 1)))
                .converters(scaler("a"))
                .match();
        assertThat(result.counts().settings()).isLessThan(1_000_000);
    }
}
