package rasterfit.app.rule;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Arrays;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.answer.Items;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.rule.Rules;

/** Lists rules and criteria. */
@RestController
@Tag(name = "rules")
class RuleController {
    @Requires(Scope.READ)
    @GetMapping(path = "/v1/rules", produces = "application/json")
    @Operation(operationId = "listRules", summary = "List every rule by which setups are refused or remarked upon")
    Items<RuleAnswer> rules() {
        return new Items<>(Rules.all().stream().map(RuleAnswer::of).toList());
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/v1/criteria", produces = "application/json")
    @Operation(
            operationId = "listCriteria",
            summary = "List the criteria by which setups are judged, and the weights and limits of every intent")
    CriteriaAnswer criteria() {
        return new CriteriaAnswer(
                Arrays.stream(Criterion.values()).map(CriterionAnswer::of).toList(),
                Arrays.stream(Intent.values()).map(IntentAnswer::of).toList());
    }
}
