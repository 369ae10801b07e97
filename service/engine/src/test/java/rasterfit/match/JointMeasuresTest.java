package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rasterfit.gear.Mode;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/**
 * Limits over several modes that share a setting. The definition is that of ../shared/API.md: a limit binds on every mode,
 * so of one setting the mode counts that misses by more, and of all settings the one is told that misses by the least.
 * What is refused is found by asking without the limit and looking at the measures of every mode of every setting.
 */
class JointMeasuresTest {
    private static final int ALL = 100_000;

    /** Two dot clocks on one line, and pictures of different shapes, heights and places on it. */
    private static final Mode NARROW = Modes.as(
            Modes.of("59062500/11", "342", "262", Scan.PROGRESSIVE, new rasterfit.gear.Window(256, 240, 64, 18)),
            "narrow",
            2,
            false);

    private static final Mode WIDE = Modes.as(
            Modes.of("78750000/11", "456", "262", Scan.PROGRESSIVE, new rasterfit.gear.Window(300, 200, 100, 30)),
            "wide",
            1,
            false);

    private static Workbench bench(Mode... modes) {
        return new Workbench()
                .modes(modes)
                .top(ALL)
                .settingsPerRoute(ALL)
                .converters(
                        Workbench.converter(
                                "scaler",
                                Workbench.samples(684, 858, 1368),
                                Workbench.scale(
                                        2,
                                        List.of(Workbench.locked(3000, 40), Workbench.free(2, Frequency.ofHz(60))),
                                        16,
                                        4)),
                        Workbench.converter("repeater", "40", Workbench.samples(342, 858), Workbench.repeat(2, 4)))
                .display(Workbench.television(2, 16, 4, 2));
    }

    private static Arguments limit(Limit limit, Function<Measures, @Nullable Rational> of) {
        return Arguments.of(limit, of);
    }

    static Stream<Arguments> aLimitOnAMeasureOfTwoTables() {
        return Stream.of(
                limit(
                        Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.of(3)),
                        measures -> measures.shape().aspectErrorPercent().abs()),
                limit(
                        Limit.atLeast(LimitedMeasure.COVERAGE_PERCENT, Rational.of(55)),
                        measures -> measures.shape().coveragePercent()),
                limit(
                        Limit.atLeast(LimitedMeasure.COVERAGE_HEIGHT_PERCENT, Rational.of(80)),
                        measures -> measures.shape().coverageHeightPercent()),
                limit(
                        Limit.atMost(LimitedMeasure.TOTAL_LATENCY_MS, Rational.of(14)),
                        measures -> measures.totalLatencyMs().greatest()),
                limit(
                        new Limit(
                                LimitedMeasure.TOTAL_LATENCY_MS,
                                LatencyFigure.BOTTOM,
                                Limit.Bound.AT_MOST,
                                Rational.parse("11"),
                                null),
                        measures -> measures.totalLatencyMs().bottom()),
                limit(
                        Limit.atMost(LimitedMeasure.CROPPED_USED_LINES, Rational.of(5)),
                        measures -> measures.shape().croppedUsedLines()),
                limit(
                        Limit.atMost(LimitedMeasure.ADDED_LATENCY_MS, Rational.of(5)),
                        measures -> measures.addedLatencyMs().greatest()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("aLimitOnAMeasureOfTwoTables")
    void theModeThatMissesByMoreCountsAndOfAllSettingsTheNearestIsTold(
            Limit limit, Function<Measures, @Nullable Rational> figure) {
        for (Mode[] order : new Mode[][] {{NARROW, WIDE}, {WIDE, NARROW}}) {
            MatchResult without = bench(order).match();
            List<Rational> failing = new ArrayList<>();
            for (RankedSetup setup : without.ranked()) {
                worst(setup, limit, figure).ifPresent(failing::add);
            }
            assertThat(failing).isNotEmpty().hasSizeLessThan(without.ranked().size());
            MatchResult with = bench(order).limits(limit).match();

            RefusalGroup group = with.refused().stream()
                    .filter(each -> each.rule().id().equals(limit.ruleId()))
                    .findFirst()
                    .orElseThrow();
            assertThat(group.count()).isEqualTo(failing.size());
            Rational nearest = failing.stream()
                    .min(Comparator.comparing(value -> miss(limit, value)))
                    .orElseThrow();
            assertThat(group.nearest()).isNotNull();
            assertThat(group.nearest().value()).isEqualTo(nearest);
            assertThat(with.ranked()).hasSize(without.ranked().size() - failing.size());
        }
    }

    private static Rational miss(Limit limit, Rational value) {
        return value.minus(limit.value()).abs();
    }

    /** The figure of the mode that misses the limit by more; empty if all keep it. */
    private static Optional<Rational> worst(
            RankedSetup setup, Limit limit, Function<Measures, @Nullable Rational> figure) {
        Map<String, Measures> byMode = setup.modeSettings().get(0).measuresByMode();
        assertThat(byMode).hasSize(2);
        return byMode.values().stream()
                .map(figure)
                .filter(value -> value != null
                        && (limit.bound() == Limit.Bound.AT_MOST
                                ? value.isGreaterThan(limit.value())
                                : value.isLessThan(limit.value())))
                .max(Comparator.comparing(value -> miss(limit, value)));
    }

    static Stream<Arguments> aMeasureThatIsComparedAsAPlainNumber() {
        return Stream.of(
                Arguments.of(LimitedMeasure.ASPECT_ERROR_PERCENT, (Function<Measures, Rational>)
                        measures -> measures.shape().aspectErrorPercent().abs()),
                Arguments.of(LimitedMeasure.COVERAGE_PERCENT, (Function<Measures, Rational>)
                        measures -> measures.shape().coveragePercent()),
                Arguments.of(LimitedMeasure.COVERAGE_HEIGHT_PERCENT, (Function<Measures, Rational>)
                        measures -> measures.shape().coverageHeightPercent()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("aMeasureThatIsComparedAsAPlainNumber")
    void whatIsExactlyAtItsLimitKeepsIt(LimitedMeasure measure, Function<Measures, Rational> figure) {
        List<Rational> values = bench(Modes.half525()).match().ranked().stream()
                .map(setup -> figure.apply(setup.modeSettings().get(0).measures()))
                .toList();
        List<Rational> distinct = values.stream().distinct().sorted().toList();
        assertThat(distinct).hasSizeGreaterThan(2);
        // The second and the last but one: some settings lie below them, some above.
        for (Rational exact : List.of(distinct.get(1), distinct.get(distinct.size() - 2))) {
            assertThat(bench(Modes.half525())
                            .limits(Limit.atMost(measure, exact))
                            .match()
                            .ranked())
                    .hasSize((int) values.stream()
                            .filter(value -> !value.isGreaterThan(exact))
                            .count());
            assertThat(bench(Modes.half525())
                            .limits(Limit.atLeast(measure, exact))
                            .match()
                            .ranked())
                    .hasSize((int) values.stream()
                            .filter(value -> !value.isLessThan(exact))
                            .count());
        }
    }
}
