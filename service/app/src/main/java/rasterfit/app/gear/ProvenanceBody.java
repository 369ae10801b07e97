package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;

/**
 * What some numbers rest on.
 *
 * @param of a path of member names and element ids; empty for the whole body
 * @param basis all but COMPUTED, which only answers have
 */
public record ProvenanceBody(
        String of,

        @Schema(allowableValues = {"MEASURED", "PUBLISHED", "DECLARED", "ASSUMED"})
        Basis basis,

        @Nullable String source) {}
