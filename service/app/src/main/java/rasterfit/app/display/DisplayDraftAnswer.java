package rasterfit.app.display;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import rasterfit.app.draft.AssumedFact;
import rasterfit.rule.Finding;
import rasterfit.rule.Severity;
import rasterfit.rule.Stage;
import tools.jackson.databind.JsonNode;

/**
 * A display made from its EDIDs. Nothing is stored.
 *
 * @param kind {@code displays}
 * @param item as the catalogue and a match take it
 * @param assumed everything that neither the EDIDs nor the caller said
 * @param findings where the ports disagree, and what was taken out of their EDIDs
 */
record DisplayDraftAnswer(
        @Schema(allowableValues = "displays") String kind,
        @Schema(ref = "#/components/schemas/DisplayBody") JsonNode item,
        List<AssumedFact> assumed,
        List<PortFinding> findings) {

    /** Something that should be known of the display. */
    record PortFinding(String rule, Severity severity, Stage stage, String message) {
        static PortFinding of(Finding finding) {
            return new PortFinding(
                    finding.rule().id(),
                    finding.rule().severity(),
                    finding.rule().stage(),
                    finding.message());
        }
    }
}
