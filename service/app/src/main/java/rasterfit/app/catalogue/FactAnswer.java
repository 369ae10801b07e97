package rasterfit.app.catalogue;

import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.StatedFact;
import rasterfit.gear.Basis;
import tools.jackson.databind.JsonNode;

/**
 * One value of an item with what it rests on.
 *
 * @param of the path of the value: names of members and ids of elements, or the index of an element without an id
 * @param basis DECLARED where nothing is stated
 * @param stated whether an entry of the provenance says so
 * @param statedOf the path of that entry, the longest that leads to the value; empty for the whole item
 */
record FactAnswer(
        String of,
        @Schema(types = {"string", "number", "boolean"}) JsonNode value,

        @Schema(allowableValues = {"MEASURED", "PUBLISHED", "DECLARED", "ASSUMED"})
        Basis basis,

        boolean stated,
        @Nullable String statedOf,
        @Nullable String source,
        @Nullable String note) {

    static FactAnswer of(StatedFact fact) {
        return new FactAnswer(
                String.join("/", fact.path()),
                fact.value(),
                fact.basis(),
                fact.statedOf() != null,
                fact.statedOf() == null ? null : String.join("/", fact.statedOf()),
                fact.source(),
                fact.note());
    }
}
