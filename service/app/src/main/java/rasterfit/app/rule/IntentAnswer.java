package rasterfit.app.rule;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rasterfit.app.answer.LimitAnswer;
import rasterfit.app.answer.Plain;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;

/**
 * A named set of weights and limits.
 *
 * @param weights by criterion, before they are normalised to a sum of 1
 * @param limits bind unless they would leave nothing; then they become findings
 */
record IntentAnswer(String id, Map<String, BigDecimal> weights, List<LimitAnswer> limits) {
    static IntentAnswer of(Intent intent) {
        Map<String, BigDecimal> weights = new LinkedHashMap<>();
        for (Criterion criterion : Criterion.values()) {
            weights.put(criterion.id(), Plain.of(intent.weights().getOrDefault(criterion, 0.0)));
        }
        return new IntentAnswer(
                intent.name(),
                weights,
                intent.limits().stream().map(LimitAnswer::of).toList());
    }
}
