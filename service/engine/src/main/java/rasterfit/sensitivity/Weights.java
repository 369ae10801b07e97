package rasterfit.sensitivity;

import java.util.EnumMap;
import java.util.Map;
import rasterfit.match.Criterion;

/** Weights with one of them moved. */
final class Weights {
    private Weights() {}

    static Map<Criterion, Double> with(Map<Criterion, Double> weights, Criterion criterion, double weight) {
        Map<Criterion, Double> moved = new EnumMap<>(weights);
        moved.put(criterion, weight);
        return moved;
    }
}
