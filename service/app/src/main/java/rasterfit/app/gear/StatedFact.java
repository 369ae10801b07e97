package rasterfit.app.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;
import tools.jackson.databind.JsonNode;

/**
 * One value of a document with what it rests on.
 *
 * @param path from the document to the value, as in the provenance
 * @param statedOf the path of the entry that says so; absent where none does and the value counts as declared
 */
public record StatedFact(
        List<String> path,
        JsonNode value,
        Basis basis,
        @Nullable List<String> statedOf,
        @Nullable String source,
        @Nullable String note) {}
