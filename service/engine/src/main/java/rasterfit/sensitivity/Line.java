package rasterfit.sensitivity;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rasterfit.match.Criterion;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Settings;

/**
 * A setup as a function of the weights: its utilities do not depend on them.
 *
 * @param utilities of the criteria that apply to it
 */
record Line(Setting setting, Map<Criterion, Double> utilities) {
    /** Sums of the same products in another order differ by less. */
    private static final double ROUNDING = 1e-12;

    /** What is set on which route. */
    record Setting(List<RouteStep> route, List<Settings> settings) {}

    static Line of(RankedSetup setup) {
        Map<Criterion, Double> utilities = new EnumMap<>(Criterion.class);
        for (CriterionValue value : setup.criteria()) {
            utilities.put(value.criterion(), value.utility());
        }
        List<Settings> settings =
                setup.modeSettings().stream().map(ModeSetting::settings).toList();
        return new Line(new Setting(setup.route(), settings), utilities);
    }

    boolean applies(Criterion criterion) {
        return utilities.containsKey(criterion);
    }

    /** Weighted mean of the utilities; all weights that apply being zero, their plain mean, as the ranking has it. */
    double score(Map<Criterion, Double> weights) {
        double weight = 0;
        double sum = 0;
        double plain = 0;
        for (Map.Entry<Criterion, Double> utility : utilities.entrySet()) {
            double own = weights.getOrDefault(utility.getKey(), 0.0);
            weight += own;
            sum += own * utility.getValue();
            plain += utility.getValue();
        }
        return weight > 0 ? sum / weight : plain / utilities.size();
    }

    /** Of all criteria that apply but one: the sum of their weights. */
    double weightBeside(Criterion one, Map<Criterion, Double> weights) {
        return utilities.keySet().stream()
                .filter(criterion -> criterion != one)
                .mapToDouble(criterion -> weights.getOrDefault(criterion, 0.0))
                .sum();
    }

    /** Of all criteria that apply but one: the weighted sum of their utilities. */
    double sumBeside(Criterion one, Map<Criterion, Double> weights) {
        return utilities.entrySet().stream()
                .filter(utility -> utility.getKey() != one)
                .mapToDouble(utility -> weights.getOrDefault(utility.getKey(), 0.0) * utility.getValue())
                .sum();
    }

    /** Whether no weights could ever tell the two apart. */
    boolean isLike(Line other) {
        return hasCriteriaOf(other)
                && utilities.entrySet().stream()
                        .allMatch(utility ->
                                Math.abs(utility.getValue() - other.utilities.getOrDefault(utility.getKey(), 2.0))
                                        < ROUNDING);
    }

    boolean hasCriteriaOf(Line other) {
        return utilities.keySet().equals(other.utilities.keySet());
    }
}
