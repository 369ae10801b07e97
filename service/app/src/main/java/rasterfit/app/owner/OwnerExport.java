package rasterfit.app.owner;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import tools.jackson.databind.node.ObjectNode;

/**
 * Everything that is kept for one owner.
 *
 * @param exportedAt as of when
 * @param data a member for each kind of thing, such as {@code tokens}
 */
record OwnerExport(
        String owner,
        Instant exportedAt,

        @Schema(implementation = Object.class, types = "object")
        ObjectNode data) {}
