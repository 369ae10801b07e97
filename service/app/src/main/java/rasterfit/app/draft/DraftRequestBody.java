package rasterfit.app.draft;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * The answers to the questions of a template.
 *
 * @param answers one member for each question that is answered, by its name
 * @param measured the names of those whose answer was measured; the others count as declared
 */
record DraftRequestBody(
        @Schema(type = "object") JsonNode answers, @Nullable List<String> measured) {}
