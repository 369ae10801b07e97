package rasterfit.app.draft;

import io.swagger.v3.oas.annotations.media.Schema;
import tools.jackson.databind.JsonNode;

/**
 * Something that nobody said.
 *
 * @param of the path in the document, as in its provenance
 * @param value what is taken; where only a range is known, an object with least, typical and greatest
 * @param written whether the document has the member; if not, it is absent and the engine takes this by itself
 * @param reason why
 */
public record AssumedFact(
        String of,

        @Schema(types = {"string", "number", "boolean", "object", "array"})
        JsonNode value,

        boolean written,
        String reason) {}
