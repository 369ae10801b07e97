package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Catalogue;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Matcher;
import rasterfit.match.WorkLimit;
import rasterfit.sensitivity.Sensitivity;
import rasterfit.sensitivity.WeightRoom;

/** Every bound on a weight is where the ranking says it is: run at points before it, and beyond it. */
@Domain(GearArbitraries.class)
class WeightRoomPropertyTest {
    /** Sums of the same products in another order. */
    private static final double ROUNDING = 1e-9;

    /** Beyond a bound, relatively; far enough that the lead is more than rounding. */
    private static final double[] BEYOND = {1e-6, 1e-4, 1e-2};

    @Property(seed = "31", edgeCases = EdgeCasesMode.NONE)
    @Label("Before a bound on a weight nothing is better than the first place, beyond it something is")
    @StatisticsReport(onFailureOnly = true)
    void aBoundIsWhereTheFirstPlaceIsLost(@ForAll MatchRequest drawn) {
        MatchRequest request = drawn.ofEveryRoute();
        MatchResult result = Ranking.match(request);
        Sensitivity sensitivity =
                Sensitivity.of(new Matcher(WorkLimit.DEFAULT), Sensitivity.BOUND, request, Catalogue.EMPTY, result);
        Statistics.label("ranked").collect(result.ranked().isEmpty() ? "none" : "some");
        for (WeightRoom room : sensitivity.weights()) {
            RankedSetup first = result.ranked().get(0);
            if (room.weight() > 0) {
                check(request, first, room, room.lower(), room.lowerRoute(), 0);
            }
            check(request, first, room, room.upper(), room.upperRoute(), Sensitivity.MOST_WEIGHT);
        }
        Statistics.label("bound").coverage(seen -> {
            seen.check("settings").count(count -> count > 3);
            seen.check("route").count(count -> count > 3);
            seen.check("none").count(count -> count > 3);
        });
    }

    private static void check(
            MatchRequest request,
            RankedSetup first,
            WeightRoom room,
            WeightRoom.@Nullable Bound bound,
            WeightRoom.@Nullable Bound route,
            double end) {
        Statistics.label("bound").collect(bound == null ? "none" : bound.sameRoute() ? "settings" : "route");
        if (bound == null) {
            for (double share : new double[] {0.001, 0.5, 1}) {
                double at = room.weight() + share * (end - room.weight());
                assertThat(lead(request, first, room.criterion(), at))
                        .as("%s at %s", room.criterion(), at)
                        .isLessThanOrEqualTo(ROUNDING);
            }
            return;
        }
        if (bound.exact()) {
            for (double share : new double[] {0, 0.3, 0.9, 0.999999}) {
                double at = room.weight() + share * (bound.weight() - room.weight());
                assertThat(lead(request, first, room.criterion(), at))
                        .as("%s at %s before %s", room.criterion(), at, bound)
                        .isLessThanOrEqualTo(ROUNDING);
            }
        }
        if (bound.verified()) {
            assertThat(lead(request, first, room.criterion(), bound.weight())).isLessThanOrEqualTo(ROUNDING);
            assertThat(bound.score())
                    .isCloseTo(score(first, moved(request, room.criterion(), bound.weight())), within(ROUNDING));
        }
        checkBeyond(request, first, room, bound, end);
        if (route != null && route.verified()) {
            checkRoute(request, first, room, route);
        }
    }

    private static void checkBeyond(
            MatchRequest request, RankedSetup first, WeightRoom room, WeightRoom.Bound bound, double end) {
        double greatest = 0;
        for (double beyond : BEYOND) {
            double step = beyond * Math.max(bound.weight(), room.weight() == 0 ? 1 : room.weight());
            double at = end == 0 ? Math.max(0, bound.weight() - step) : bound.weight() + step;
            greatest = Math.max(greatest, lead(request, first, room.criterion(), at));
        }
        assertThat(greatest).as("%s beyond %s", room.criterion(), bound).isPositive();
    }

    /** At the bound the route of the first place and the new one are equally good, whatever their settings. */
    private static void checkRoute(MatchRequest request, RankedSetup first, WeightRoom room, WeightRoom.Bound route) {
        List<RankedSetup> ranked =
                match(request, room.criterion(), route.weight()).ranked();
        double own = best(ranked, first);
        double other = ranked.stream()
                .filter(setup -> setup.route().equals(route.newFirst()))
                .mapToDouble(RankedSetup::score)
                .max()
                .orElse(0);
        assertThat(other).as("%s %s", room.criterion(), route).isCloseTo(own, within(ROUNDING));
        assertThat(route.newFirst()).isNotEqualTo(first.route());
    }

    private static double best(List<RankedSetup> ranked, RankedSetup first) {
        return ranked.stream()
                .filter(setup -> setup.route().equals(first.route()))
                .mapToDouble(RankedSetup::score)
                .max()
                .orElse(0);
    }

    /** By how much the best setup at a moved weight is better than the first place with its settings. */
    private static double lead(MatchRequest request, RankedSetup first, Criterion criterion, double weight) {
        double best = match(request, criterion, weight).ranked().get(0).score();
        return best - score(first, moved(request, criterion, weight));
    }

    private static MatchResult match(MatchRequest request, Criterion criterion, double weight) {
        return Ranking.match(
                request.withJudgement(request.intent(), moved(request, criterion, weight), request.limits()));
    }

    private static Map<Criterion, Double> moved(MatchRequest request, Criterion criterion, double weight) {
        Map<Criterion, Double> moved = new EnumMap<>(Criterion.class);
        for (Criterion each : Criterion.values()) {
            moved.put(each, request.weights().getOrDefault(each, 1.0));
        }
        moved.put(criterion, weight);
        return moved;
    }

    /** The definition: the mean of the utilities, weighted; evenly where all weights are zero. */
    private static double score(RankedSetup setup, Map<Criterion, Double> weights) {
        double sum = 0;
        double all = 0;
        double plain = 0;
        for (CriterionValue value : setup.criteria()) {
            sum += weights.get(value.criterion()) * value.utility();
            all += weights.get(value.criterion());
            plain += value.utility();
        }
        return all > 0 ? sum / all : plain / setup.criteria().size();
    }
}
