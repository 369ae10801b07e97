package rasterfit.app.draft;

import io.swagger.v3.oas.annotations.media.Schema;
import tools.jackson.databind.JsonNode;

/**
 * What is taken where a question is not answered.
 *
 * @param reason why
 * @param source a document, {@code common practice}, or {@code assumption}
 */
record AskDefault(
        @Schema(types = {"string", "number", "boolean", "array"})
        JsonNode value,

        String reason,
        String source) {}
