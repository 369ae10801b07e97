package rasterfit.match.tune;

import java.util.Map;
import java.util.Set;
import rasterfit.match.Criterion;

/** A whole setup by brute force: its score, and where it lies on the four axes of dominance (DOMAIN.md §11). */
record Whole(double score, double picture, double latency, double risk, double cost) {
    private static final double ROUNDING = 1e-12;
    private static final Set<Criterion> PICTURE = Set.of(
            Criterion.DOT_UNIFORMITY, Criterion.ASPECT, Criterion.COVERAGE, Criterion.MOTION, Criterion.LINK_DETAIL);

    /**
     * The weighted mean of what applies; the plain one where all of its weights are zero.
     *
     * @param utilities of the criteria that apply
     * @param weights where not 1
     */
    static Whole of(Map<Criterion, Double> utilities, Map<Criterion, Double> weights) {
        return new Whole(
                mean(utilities, weights, utilities.keySet()),
                mean(utilities, weights, PICTURE),
                utilities.getOrDefault(Criterion.LATENCY, 0.0),
                utilities.getOrDefault(Criterion.ACCEPTANCE, 0.0)
                        * utilities.getOrDefault(Criterion.MODE_SWITCH_GAP, 1.0),
                utilities.getOrDefault(Criterion.COST, 0.0));
    }

    private static double mean(
            Map<Criterion, Double> utilities, Map<Criterion, Double> weights, Set<Criterion> criteria) {
        double sum = 0;
        double total = 0;
        double plain = 0;
        int applying = 0;
        for (Criterion criterion : criteria) {
            Double utility = utilities.get(criterion);
            if (utility != null) {
                double weight = weights.getOrDefault(criterion, 1.0);
                sum += weight * utility;
                total += weight;
                plain += utility;
                applying++;
            }
        }
        return total > 0 ? sum / total : plain / applying;
    }

    /** Whether all figures are the same but for rounding. */
    boolean isLike(Whole other, double rounding) {
        return Math.abs(score - other.score) < rounding
                && Math.abs(picture - other.picture) < rounding
                && Math.abs(latency - other.latency) < rounding
                && Math.abs(risk - other.risk) < rounding
                && Math.abs(cost - other.cost) < rounding;
    }

    boolean dominates(Whole other) {
        boolean asGood = picture >= other.picture - ROUNDING
                && latency >= other.latency - ROUNDING
                && risk >= other.risk - ROUNDING
                && cost >= other.cost - ROUNDING;
        boolean better = picture > other.picture + ROUNDING
                || latency > other.latency + ROUNDING
                || risk > other.risk + ROUNDING
                || cost > other.cost + ROUNDING;
        return asGood && better;
    }
}
