package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Link;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Matcher;
import rasterfit.match.WorkLimit;
import rasterfit.quantity.Rational;
import rasterfit.rule.Stage;

/** Order counts only where the gear's own document gives it a meaning. */
@Domain(GearArbitraries.class)
@Domain(DomainContext.Global.class)
class OrderPropertyTest {
    @Property(seed = "16", edgeCases = EdgeCasesMode.NONE)
    @Label(
            "The order of converters, cables, inputs, outputs and limits in catalogue or request changes no bit of the answer")
    @StatisticsReport(onFailureOnly = true)
    void theOrderOfGearChangesNothing(@ForAll MatchRequest request, @ForAll long seed) {
        MatchRequest plain = Altered.settingsPerRoute(withTwin(request), 3);
        MatchResult expected = Ranking.match(plain);
        Random random = new Random(seed);
        List<Converter> converters = shuffled(plain.equipment().converters(), random);
        List<Link> links = shuffled(plain.equipment().links(), random);
        MatchRequest other = Altered.links(Altered.converters(plain, converters), links);
        other = Altered.limits(other, shuffled(other.limits(), random));
        other = Altered.with(
                other,
                "display",
                Altered.with(other.display(), "inputs", shuffled(other.display().inputs(), random)));
        other = Altered.with(
                other,
                "source",
                Altered.with(other.source(), "outputs", shuffled(other.source().outputs(), random)));

        assertThat(Ranking.match(other)).isEqualTo(expected);
        assertThat(matchFromCatalogue(other, converters, links)).isEqualTo(expected);
        boolean ties = checkTies(expected.ranked());
        Statistics.label("orders")
                .collect(other.equals(plain) ? "same order" : ties ? "setups with ties" : "few or no setups");
        Statistics.label("orders")
                .coverage(seen -> seen.check("setups with ties").percentage(share -> share > 30));
    }

    /** With a second piece of the first converter, so that setups come to the same score, and with limits to shuffle. */
    private static MatchRequest withTwin(MatchRequest request) {
        List<Converter> converters = new ArrayList<>(request.equipment().converters());
        converters.add(Altered.with(converters.get(0), "id", "another-box"));
        return Altered.limited(
                Altered.converters(request, converters),
                Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.of(40)),
                Limit.atMost(LimitedMeasure.TOTAL_LATENCY_MS, Rational.of(150)));
    }

    /** Of equal scores the chain whose parts come first by their ids is first. Whether there were any. */
    private static boolean checkTies(List<RankedSetup> ranked) {
        boolean ties = false;
        for (int i = 1; i < ranked.size(); i++) {
            RankedSetup one = ranked.get(i - 1);
            RankedSetup next = ranked.get(i);
            if (one.score() == next.score() && !one.route().equals(next.route())) {
                ties = true;
                assertThat(chain(one)).isLessThan(chain(next));
            }
        }
        return ties;
    }

    private static String chain(RankedSetup setup) {
        return setup.route().stream()
                .map(step -> step.id()
                        + (step.port() == null || step.stage() == Stage.SOURCE_OUTPUT ? "" : ":" + step.port()))
                .collect(Collectors.joining(" > "));
    }

    /** The same gear as the catalogue's; its revision is the one that an empty catalogue has. */
    private static MatchResult matchFromCatalogue(MatchRequest request, List<Converter> converters, List<Link> links) {
        MatchRequest bare = Altered.with(request, "equipment", new MatchRequest.Equipment(true, List.of(), List.of()));
        Catalogue catalogue = Catalogue.of(Catalogue.EMPTY.revision(), List.of(), List.of(), converters, links);
        return new Matcher(WorkLimit.DEFAULT).match(bare, catalogue);
    }

    @Property(seed = "17", edgeCases = EdgeCasesMode.NONE)
    @Label(
            "The order of modes, of ways and timings of a converter, of aspect controls and listed timings changes no score")
    @StatisticsReport(onFailureOnly = true)
    void theOrderInsideOfGearChangesNoScore(@ForAll MatchRequest request, @ForAll long seed) {
        Random random = new Random(seed);
        MatchRequest other = Altered.converters(
                request,
                request.equipment().converters().stream()
                        .map(converter -> inside(converter, random))
                        .toList());
        for (DisplayInput input : request.display().inputs()) {
            other = Altered.input(other, input.id(), each -> inside(each, random));
        }
        List<Mode> modes = request.source().modes();
        boolean leadIsPlain =
                modes.size() == 1 || !modes.get(0).share().equals(modes.get(1).share());
        if (leadIsPlain) {
            // Of equal shares the first mode leads its group.
            other = Altered.with(other, "source", Altered.with(other.source(), "modes", shuffled(modes, random)));
        }
        MatchResult expected = Ranking.match(request);
        MatchResult actual = Ranking.match(other);

        assertThat(actual.counts()).isEqualTo(expected.counts());
        assertThat(tally(actual)).isEqualTo(tally(expected));
        Map<List<RouteStep>, List<RankedSetup>> routes = byRoute(expected);
        Map<List<RouteStep>, List<RankedSetup>> others = byRoute(actual);
        assertThat(others.keySet()).isEqualTo(routes.keySet());
        routes.forEach((route, setups) -> {
            List<RankedSetup> found = others.get(route);
            assertThat(found).hasSameSizeAs(setups);
            for (int i = 0; i < setups.size(); i++) {
                assertThat(found.get(i).score()).isCloseTo(setups.get(i).score(), within(Ranking.ROUNDING));
            }
        });
        Statistics.label("orders").collect(expected.ranked().size() > 1 ? "setups" : "too few");
        Statistics.label("orders").coverage(seen -> seen.check("setups").percentage(share -> share > 40));
    }

    private static Converter inside(Converter converter, Random random) {
        List<Processing> ways = converter.processing().stream()
                .map(way -> way instanceof Processing.RasterScale scale ? inside(scale, random) : way)
                .toList();
        return Altered.with(converter, "processing", shuffled(ways, random));
    }

    private static Processing inside(Processing.RasterScale scale, Random random) {
        Processing.RasterScale timings = Altered.with(scale, "timings", shuffled(scale.timings(), random));
        Processing.RasterScale locks = Altered.with(timings, "rateLocks", shuffled(scale.rateLocks(), random));
        return Altered.with(locks, "deinterlacers", shuffled(scale.deinterlacers(), random));
    }

    private static DisplayInput inside(DisplayInput input, Random random) {
        DisplayInput controls = Altered.with(input, "aspectControls", shuffled(input.aspectControls(), random));
        return input.sink() == null
                ? controls
                : Altered.with(
                        controls,
                        "sink",
                        Altered.with(
                                input.sink(), "listed", shuffled(input.sink().listed(), random)));
    }

    private static <T> List<T> shuffled(List<T> list, Random random) {
        List<T> copy = new ArrayList<>(list);
        Collections.shuffle(copy, random);
        return copy;
    }

    private static Map<String, Long> tally(MatchResult result) {
        Map<String, Long> counts = new java.util.TreeMap<>();
        for (RefusalGroup group : result.refused()) {
            counts.merge(group.of() + " " + group.rule().id(), group.count(), Long::sum);
        }
        return counts;
    }

    private static Map<List<RouteStep>, List<RankedSetup>> byRoute(MatchResult result) {
        Map<List<RouteStep>, List<RankedSetup>> routes = new java.util.HashMap<>();
        for (RankedSetup setup : result.ranked()) {
            routes.computeIfAbsent(setup.route(), missing -> new ArrayList<>()).add(setup);
        }
        return routes;
    }
}
