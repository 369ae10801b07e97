package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.RankedSetup;

/** Dominance over the four axes of DOMAIN.md §11, by comparing every setup with every other. */
@Domain(GearArbitraries.class)
class ParetoPropertyTest {
    private static final Set<Criterion> PICTURE = Set.of(
            Criterion.DOT_UNIFORMITY, Criterion.ASPECT, Criterion.COVERAGE, Criterion.MOTION, Criterion.LINK_DETAIL);

    private record Axes(double picture, double latency, double risk, double cost) {
        boolean dominates(Axes other) {
            double[] gains = {picture - other.picture, latency - other.latency, risk - other.risk, cost - other.cost};
            boolean better = false;
            for (double gain : gains) {
                if (gain < -Ranking.ROUNDING) {
                    return false;
                }
                better |= gain > Ranking.ROUNDING;
            }
            return better;
        }
    }

    @Property(seed = "11", edgeCases = EdgeCasesMode.NONE)
    @Label("A setup is marked undominated exactly when no other of the answer is as good on all axes and better on one")
    @StatisticsReport(onFailureOnly = true)
    void marksAreThoseOfComparingEverySetupWithEveryOther(@ForAll MatchRequest request) {
        List<RankedSetup> all = Ranking.match(request).ranked();
        List<Axes> axes = all.stream().map(setup -> axes(setup, request)).toList();
        long marked = 0;
        for (int i = 0; i < all.size(); i++) {
            Axes own = axes.get(i);
            boolean undominated = axes.stream().noneMatch(other -> other.dominates(own));
            assertThat(all.get(i).paretoOptimal())
                    .as("rank %d of %d, %s", i + 1, all.size(), own)
                    .isEqualTo(undominated);
            marked += undominated ? 1 : 0;
        }
        Statistics.label("setups")
                .collect(all.isEmpty() ? "none" : marked == all.size() ? "all marked" : "some marked");
        Statistics.label("setups").coverage(seen -> seen.check("some marked").percentage(share -> share > 50));
    }

    /** Picture is the mean of its five by the weights asked for; what does not apply drops out, on the risk axis as 1. */
    private static Axes axes(RankedSetup setup, MatchRequest request) {
        Map<Criterion, Double> utilities = new EnumMap<>(Criterion.class);
        for (CriterionValue value : setup.criteria()) {
            utilities.put(value.criterion(), value.utility());
        }
        double sum = 0;
        double weights = 0;
        double plain = 0;
        int applying = 0;
        for (Criterion criterion : PICTURE) {
            Double utility = utilities.get(criterion);
            if (utility != null) {
                double weight = request.weights().getOrDefault(criterion, 1.0);
                sum += weight * utility;
                weights += weight;
                plain += utility;
                applying++;
            }
        }
        return new Axes(
                weights > 0 ? sum / weights : plain / applying,
                utilities.getOrDefault(Criterion.LATENCY, 1.0),
                utilities.getOrDefault(Criterion.ACCEPTANCE, 1.0)
                        * utilities.getOrDefault(Criterion.MODE_SWITCH_GAP, 1.0),
                utilities.getOrDefault(Criterion.COST, 0.0));
    }
}
