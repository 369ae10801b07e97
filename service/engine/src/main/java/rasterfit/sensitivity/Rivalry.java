package rasterfit.sensitivity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import rasterfit.match.Criterion;

/**
 * When one setup overtakes another while one weight t moves and the others stay. A score is (P + t·u)/(W + t), P and W the
 * weighted utilities and the weights of all other criteria that apply, and P/W where the criterion does not apply. The
 * difference of two scores, times both denominators, is a polynomial of degree two in t at most, of degree one where the
 * same criteria apply to both; its signs decide, exactly but for the rounding of the arithmetic.
 */
final class Rivalry {
    /** Differences of scores below this are rounding. */
    private static final double ROUNDING = 1e-13;

    private final Line first;
    private final Line other;
    private final Criterion criterion;
    private final Map<Criterion, Double> weights;
    private final double a;
    private final double b;
    private final double c;

    Rivalry(Line first, Line other, Criterion criterion, Map<Criterion, Double> weights) {
        this.first = first;
        this.other = other;
        this.criterion = criterion;
        this.weights = weights;
        double p = first.sumBeside(criterion, weights);
        double w = first.weightBeside(criterion, weights);
        double q = other.sumBeside(criterion, weights);
        double v = other.weightBeside(criterion, weights);
        double u = first.utilities().getOrDefault(criterion, 0.0);
        double x = other.utilities().getOrDefault(criterion, 0.0);
        int own = first.applies(criterion) ? 1 : 0;
        int others = other.applies(criterion) ? 1 : 0;
        if (first.hasCriteriaOf(other)) {
            this.a = 0;
            this.b = own * (x - u);
            this.c = q - p;
        } else {
            this.a = own * others * (x - u);
            this.b = q * own + others * x * w - p * others - own * u * v;
            this.c = q * w - p * v;
        }
    }

    /**
     * The weight nearest to {@code from} beyond which the other is better; empty if there is none up to {@code to}.
     *
     * @param to above or below {@code from}
     */
    OptionalDouble overtakenBetween(double from, double to) {
        if (first.isLike(other)) {
            return OptionalDouble.empty();
        }
        List<Double> ends = new ArrayList<>(List.of(from));
        List<Double> between = new ArrayList<>(roots());
        between.removeIf(root -> !(root > Math.min(from, to) && root < Math.max(from, to)));
        Collections.sort(between);
        if (to < from) {
            Collections.reverse(between);
        }
        ends.addAll(between);
        ends.add(to);
        for (int i = 0; i + 1 < ends.size(); i++) {
            double middle = (ends.get(i) + ends.get(i + 1)) / 2;
            if (lead(middle) > ROUNDING) {
                return OptionalDouble.of(ends.get(i));
            }
        }
        return OptionalDouble.empty();
    }

    /** By how much the other is better. */
    private double lead(double weight) {
        Map<Criterion, Double> moved = Weights.with(weights, criterion, weight);
        return other.score(moved) - first.score(moved);
    }

    private List<Double> roots() {
        if (a == 0) {
            return b == 0 ? List.of() : List.of(-c / b);
        }
        double discriminant = b * b - 4 * a * c;
        if (discriminant < 0) {
            return List.of();
        }
        // Without the cancellation of the textbook formula.
        double q = -(b + Math.copySign(Math.sqrt(discriminant), b)) / 2;
        return q == 0 ? List.of(0.0) : List.of(q / a, c / q);
    }
}
