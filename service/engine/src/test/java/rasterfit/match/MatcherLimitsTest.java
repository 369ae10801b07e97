package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rasterfit.gear.Converter;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * Limits of a request. What they must refuse is found by asking without any limit for every setting and looking at the
 * measures of each; the definition is that of the interface: a limit binds on every mode, a bare latency means its greatest
 * figure for an upper bound and its least for a lower one, prices compare at their greatest and an unknown one fails.
 */
class MatcherLimitsTest {
    private static final int ALL = 100_000;

    private static Workbench bench() {
        return new Workbench()
                .modes(Modes.half525())
                .top(ALL)
                .settingsPerRoute(ALL)
                .converters(
                        Workbench.converter(
                                "scaler",
                                Workbench.samples(682, 858, 1364),
                                Workbench.scale(
                                        2,
                                        List.of(
                                                Workbench.locked(3000, 40),
                                                Workbench.free(2, Frequency.ofHz(60)),
                                                Workbench.free(1, Frequency.ofHz(50))),
                                        16,
                                        4)),
                        Workbench.converter("repeater", "40", Workbench.samples(341, 858), Workbench.repeat(2, 4, 5)))
                .display(Workbench.television(2, 16, 4, 2));
    }

    private static Measures measures(RankedSetup setup) {
        return setup.modeSettings().get(0).measures();
    }

    private static @Nullable Rational count(@Nullable Integer value) {
        return value == null ? null : Rational.of(value);
    }

    private static Arguments atMost(LimitedMeasure measure, String value, Function<Measures, @Nullable Rational> of) {
        return Arguments.of(Limit.atMost(measure, Rational.parse(value)), of);
    }

    private static Arguments atLeast(LimitedMeasure measure, String value, Function<Measures, @Nullable Rational> of) {
        return Arguments.of(Limit.atLeast(measure, Rational.parse(value)), of);
    }

    private static Limit typical(LimitedMeasure measure, String atMost) {
        return new Limit(measure, LatencyFigure.TYPICAL, Limit.Bound.AT_MOST, Rational.parse(atMost), null);
    }

    static Stream<Arguments> aLimitAndTheFigureThatItMeans() {
        return Stream.of(
                atMost(
                        LimitedMeasure.ADDED_LATENCY_MS,
                        "5",
                        measures -> measures.addedLatencyMs().greatest()),
                atLeast(
                        LimitedMeasure.ADDED_LATENCY_MS,
                        "1/10",
                        measures -> measures.addedLatencyMs().least()),
                Arguments.of(typical(LimitedMeasure.ADDED_LATENCY_MS, "17"), (Function<Measures, @Nullable Rational>)
                        measures -> measures.addedLatencyMs().typical()),
                atMost(LimitedMeasure.ADDED_LATENCY_FIELDS, "1", Measures::addedLatencyFields),
                atMost(
                        LimitedMeasure.TOTAL_LATENCY_MS,
                        "14",
                        measures -> measures.totalLatencyMs().greatest()),
                atMost(LimitedMeasure.BUFFERED_LINES, "14", measures -> count(measures.bufferedLines())),
                atMost(
                        LimitedMeasure.ASPECT_ERROR_PERCENT,
                        "3",
                        measures -> measures.shape().aspectErrorPercent().abs()),
                atLeast(
                        LimitedMeasure.COVERAGE_PERCENT,
                        "60",
                        measures -> measures.shape().coveragePercent()),
                atLeast(
                        LimitedMeasure.COVERAGE_HEIGHT_PERCENT,
                        "95",
                        measures -> measures.shape().coverageHeightPercent()),
                atMost(
                        LimitedMeasure.CROPPED_LINES,
                        "10",
                        measures -> measures.shape().croppedLines()),
                atMost(
                        LimitedMeasure.CROPPED_DOTS,
                        "1/2",
                        measures -> measures.shape().croppedDots()),
                atMost(
                        LimitedMeasure.CROPPED_USED_LINES,
                        "5",
                        measures -> measures.shape().croppedUsedLines()),
                atMost(
                        LimitedMeasure.CROPPED_USED_DOTS,
                        "5",
                        measures -> measures.shape().croppedUsedDots()),
                atMost(
                        LimitedMeasure.CROPPED_USED_LINES_PERCENT,
                        "4",
                        measures -> measures.shape().croppedUsedLinesPercent()),
                atLeast(
                        LimitedMeasure.DOT_WIDTH_RATIO,
                        "4/5",
                        measures -> measures.shape().dotWidthRatio()),
                atLeast(
                        LimitedMeasure.LINE_HEIGHT_RATIO,
                        "1",
                        measures -> measures.shape().lineHeightRatio()),
                atLeast(
                        LimitedMeasure.VERTICAL_SCALE,
                        "4",
                        measures -> measures.shape().verticalScale()),
                atMost(
                        LimitedMeasure.HORIZONTAL_SCALE,
                        "5",
                        measures -> measures.shape().horizontalScale()),
                atLeast(
                        LimitedMeasure.SAMPLES_PER_DOT,
                        "2",
                        measures -> measures.sampling() == null
                                ? null
                                : measures.sampling().samplesPerDot()),
                atLeast(LimitedMeasure.DROP_OR_REPEAT_EVERY_SECONDS, "5", Measures::dropOrRepeatEverySeconds),
                Arguments.of(
                        Limit.atLeast(LimitedMeasure.ACCEPTANCE, AcceptanceGrade.NEAR_LISTED.rankFromWorst()),
                        (Function<Measures, @Nullable Rational>)
                                measures -> measures.acceptance().grade().rankFromWorst()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("aLimitAndTheFigureThatItMeans")
    void aLimitRefusesWhatExceedsItAndTellsTheNearestMiss(Limit limit, Function<Measures, @Nullable Rational> figure) {
        MatchResult without = bench().match();
        MatchResult with = bench().limits(limit).match();
        List<Rational> failing = new ArrayList<>();
        for (RankedSetup setup : without.ranked()) {
            Rational value = figure.apply(measures(setup));
            boolean atMost = limit.bound() == Limit.Bound.AT_MOST;
            if (value != null && (atMost ? value.compareTo(limit.value()) > 0 : value.compareTo(limit.value()) < 0)) {
                failing.add(value);
            }
        }
        assertThat(failing)
                .as("settings that fail, of %d", without.ranked().size())
                .isNotEmpty()
                .hasSizeLessThan(without.ranked().size());

        assertThat(with.ranked()).hasSize(without.ranked().size() - failing.size());
        RefusalGroup group = group(with, limit.ruleId()).orElseThrow();
        assertThat(group.count()).isEqualTo(failing.size());
        assertThat(group.of()).isEqualTo(RefusalGroup.Of.SETTING);
        Rational nearest = failing.stream()
                .min(Comparator.comparing(value -> value.minus(limit.value()).abs()))
                .orElseThrow();
        assertThat(group.nearest()).isNotNull();
        assertThat(group.nearest().limit()).isEqualTo(limit.value());
        assertThat(group.nearest().value().toDouble()).isCloseTo(nearest.toDouble(), within(1e-9));
        assertThat(with.counts().settings()).isEqualTo(without.counts().settings());
        assertThat(with.counts().refusedSettings()).isEqualTo(without.counts().refusedSettings() + failing.size());
    }

    private static Optional<RefusalGroup> group(MatchResult result, String rule) {
        return result.refused().stream()
                .filter(group -> group.rule().id().equals(rule))
                .findFirst();
    }

    @Test
    void ofSeveralLimitsTheFirstByRuleCounts() {
        Limit latency = Limit.atMost(LimitedMeasure.ADDED_LATENCY_MS, Rational.of(5));
        Limit total = Limit.atMost(LimitedMeasure.TOTAL_LATENCY_MS, Rational.of(14));
        Limit scale = Limit.atLeast(LimitedMeasure.VERTICAL_SCALE, Rational.of(4));
        long addedFails = 0;
        long totalFails = 0;
        long scaleFails = 0;
        for (RankedSetup setup : bench().match().ranked()) {
            Measures measures = measures(setup);
            if (measures.addedLatencyMs().greatest().isGreaterThan(latency.value())) {
                addedFails++;
            } else if (measures.totalLatencyMs().greatest().isGreaterThan(total.value())) {
                totalFails++;
            } else if (measures.shape().verticalScale().isLessThan(scale.value())) {
                scaleFails++;
            }
        }
        MatchResult result = bench().limits(scale, total, latency).match();

        assertThat(group(result, latency.ruleId()).orElseThrow().count()).isEqualTo(addedFails);
        assertThat(group(result, total.ruleId()).orElseThrow().count()).isEqualTo(totalFails);
        assertThat(group(result, scale.ruleId()).orElseThrow().count()).isEqualTo(scaleFails);
    }

    @Test
    void settingsAreRefusedOrRankedAndNothingElse() {
        MatchResult result = bench().limits(Limit.atMost(LimitedMeasure.CROPPED_LINES, Rational.of(12)))
                .match();
        long told = result.refused().stream()
                .filter(group -> group.of() == RefusalGroup.Of.SETTING)
                .mapToLong(RefusalGroup::count)
                .sum();

        assertThat(told).isEqualTo(result.counts().refusedSettings());
        assertThat(result.counts().refusedSettings() + result.ranked().size())
                .isEqualTo(result.counts().settings());
    }

    private static Workbench priced(@Nullable String first, @Nullable String second) {
        Converter one = Workbench.converter("one", first, Workbench.samples(858), Workbench.repeat(2));
        Converter two = Workbench.converter("two", second, Workbench.samples(858), Workbench.repeat(2));
        return new Workbench().modes(Modes.half525()).converters(one, two);
    }

    private static Limit price(String atMost, String currency) {
        return new Limit(LimitedMeasure.PRICE, null, Limit.Bound.AT_MOST, Rational.parse(atMost), currency);
    }

    @Test
    void anUnknownPriceFailsAnUpperLimitButNothingElse() {
        assertThat(priced("100", null).match().ranked()).hasSize(2);
        assertThat(priced("100", null).limits(price("1000", "EUR")).match().ranked())
                .hasSize(1);
    }

    @Test
    void aPriceInAnotherCurrencyFails() {
        assertThat(priced("100", "50").limits(price("1000", "JPY")).match().ranked())
                .isEmpty();
    }

    /** Only whole fields at 50 Hz: more than one field of delay, and a beat of ten fields a second. */
    private static Workbench slow() {
        return new Workbench()
                .modes(Modes.half525())
                .converters(Workbench.converter(
                        "slow",
                        Workbench.samples(858),
                        Workbench.scale(1, List.of(Workbench.free(2, Frequency.ofHz(60))), 16)));
    }

    @Test
    void limitsOfAnIntentThatLeaveNothingBecomeFindings() {
        // 262 lines at 60.0985 Hz into stored fields: up to two fields and more, beyond the intent's one field.
        MatchResult result = slow().intent(Intent.LEAST_DELAY).match();

        assertThat(result.ranked()).isNotEmpty().allSatisfy(setup -> {
            assertThat(measures(setup).addedLatencyFields()).isGreaterThan(Rational.ONE);
            assertThat(setup.findings())
                    .anySatisfy(finding -> assertThat(finding.rule().id()).isEqualTo("intent.limit-not-kept"));
        });
        assertThat(group(result, "limit.addedLatencyFields")).isEmpty();
    }

    @Test
    void limitsOfAnIntentBindWhereSomethingKeepsThem() {
        MatchResult result = bench().intent(Intent.LEAST_DELAY).match();

        assertThat(result.ranked()).isNotEmpty().allSatisfy(setup -> {
            assertThat(measures(setup).addedLatencyFields()).isLessThanOrEqualTo(Rational.ONE);
            assertThat(setup.findings())
                    .noneSatisfy(finding -> assertThat(finding.rule().id()).isEqualTo("intent.limit-not-kept"));
        });
        assertThat(group(result, "limit.addedLatencyFields")).isPresent();
    }

    @Test
    void limitsOfTheRequestBindEvenWhereTheIntentsDoNot() {
        Limit own = Limit.atMost(LimitedMeasure.ADDED_LATENCY_MS, Rational.of(5));
        MatchResult result = slow().intent(Intent.LEAST_DELAY).limits(own).match();

        assertThat(result.ranked()).isEmpty();
        assertThat(group(result, own.ruleId())).isPresent();
    }
}
