package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;

/**
 * What some numbers rest on.
 *
 * @param of a path of member names and element ids, joined by slashes; elements without an id are named by their index, from
 *     0; empty for the whole body; it has to lead to something
 * @param basis all but COMPUTED, which only answers have
 * @param note anything that helps to judge it, up to 2000 characters
 */
public record ProvenanceBody(
        String of,

        @Schema(allowableValues = {"MEASURED", "PUBLISHED", "DECLARED", "ASSUMED"})
        Basis basis,

        @Nullable String source,

        @Schema(maxLength = 2000) @Nullable String note) {}
