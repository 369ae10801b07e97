package rasterfit.app.draft;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import tools.jackson.databind.JsonNode;

/**
 * A document made of a few answers. Nothing is stored.
 *
 * @param kind where it belongs: {@code sources}, {@code displays}, {@code converters} or {@code links}
 * @param item as the catalogue and a match take it
 * @param assumed everything that nobody said
 */
record DraftAnswer(
        @Schema(allowableValues = {"displays", "converters", "links"})
        String kind,

        @Schema(ref = "#/components/schemas/GearBody") JsonNode item,
        List<AssumedFact> assumed) {}
