package rasterfit.match.tune;

import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.MatchRequest;
import rasterfit.match.Matcher;
import rasterfit.match.WorkLimit;
import rasterfit.match.property.Altered;
import rasterfit.match.property.GearArbitraries;
import rasterfit.quantity.Rational;

/** Whatever the engine refuses in one go or leaves out because something better is kept: looking at all comes to the same. */
@Domain(GearArbitraries.class)
class ExhaustivePropertyTest {
    @Property(seed = "21", edgeCases = EdgeCasesMode.NONE)
    @Label("Counts, refusals by rule, best scores and marks are those of looking at every setting of random gear")
    @StatisticsReport(onFailureOnly = true)
    void theAnswerIsThatOfLookingAtEverySetting(@ForAll MatchRequest request, @ForAll("limits") List<Limit> limits) {
        MatchRequest limited = Altered.settingsPerRoute(Altered.limits(request, limits), 1);
        Exhaustive exhaustive = compared(limited);
        // A console that the input of a converter does not follow is refused in one go.
        Converter box = limited.equipment().converters().get(0);
        Exhaustive blind = compared(Altered.converter(
                limited,
                box.id(),
                converter -> Altered.with(
                        converter,
                        "inputs",
                        converter.inputs().stream()
                                .map(input -> Altered.with(input, "scans", Set.of()))
                                .toList())));

        blind.refused().keySet().forEach(rule -> Statistics.label("blind").collect(rule));
        Statistics.label("blind")
                .coverage(seen -> List.of("input.scan-not-accepted", "buffer.lines-exceed-memory")
                        .forEach(rule -> seen.check(rule).count(times -> times > 0)));
        Statistics.label("setups").collect(exhaustive.setups() == 0 ? "none" : "some");
        Statistics.label("setups").coverage(seen -> seen.check("some").percentage(share -> share > 30));
        exhaustive
                .refused()
                .keySet()
                .forEach(rule -> Statistics.label("refused").collect(rule));
        Statistics.label("refused")
                .coverage(seen -> List.of(
                                "buffer.lines-exceed-memory",
                                "digitise.sample-rate-exceeds-converter",
                                "input.half-height-not-shown",
                                "link.clock-exceeds-converter",
                                "link.clock-exceeds-display",
                                "lock.pull-exceeds-range",
                                "scale.lines-cropped-exceed-limit",
                                "limit.aspectErrorPercent",
                                "limit.totalLatencyMs")
                        .forEach(rule -> seen.check(rule).count(times -> times > 0)));
    }

    private static Exhaustive compared(MatchRequest request) {
        Exhaustive exhaustive = Exhaustive.of(request);
        exhaustive.compareWith(new Matcher(WorkLimit.DEFAULT).match(request, Catalogue.EMPTY));
        return exhaustive;
    }

    @Provide
    Arbitrary<List<Limit>> limits() {
        return Arbitraries.of(
                        Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.of(4)),
                        Limit.atMost(LimitedMeasure.TOTAL_LATENCY_MS, Rational.of(40)),
                        Limit.atMost(LimitedMeasure.ADDED_LATENCY_MS, Rational.of(2)),
                        Limit.atLeast(LimitedMeasure.DOT_WIDTH_RATIO, Rational.of(1, 2)),
                        Limit.atMost(LimitedMeasure.CROPPED_USED_LINES, Rational.of(8)),
                        Limit.atLeast(LimitedMeasure.COVERAGE_PERCENT, Rational.of(50)),
                        Limit.atLeast(LimitedMeasure.ACCEPTANCE, Rational.of(3)))
                .list()
                .uniqueElements()
                .ofMaxSize(2);
    }
}
