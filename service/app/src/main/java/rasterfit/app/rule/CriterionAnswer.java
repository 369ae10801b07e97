package rasterfit.app.rule;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import rasterfit.app.answer.Plain;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;

/**
 * A criterion.
 *
 * @param unit of the value that the curve takes; empty for a pure number
 * @param curve how the value becomes a utility from 0 to 1
 * @param source {@code assumption}: all curves are our own defaults
 * @param weights by intent, before they are normalised to a sum of 1
 */
record CriterionAnswer(String id, String unit, String curve, String source, Map<String, BigDecimal> weights) {
    static CriterionAnswer of(Criterion criterion) {
        Map<String, BigDecimal> weights = new LinkedHashMap<>();
        for (Intent intent : Intent.values()) {
            weights.put(intent.name(), Plain.of(intent.weights().getOrDefault(criterion, 0.0)));
        }
        return new CriterionAnswer(criterion.id(), criterion.unit(), criterion.curve(), "assumption", weights);
    }
}
