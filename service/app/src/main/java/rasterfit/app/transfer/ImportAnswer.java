package rasterfit.app.transfer;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import rasterfit.app.catalogue.ImportReport;
import rasterfit.app.problem.Problem;

/**
 * How far an import is.
 *
 * @param checked how many items were read and held against the engine's types
 * @param done how many items are as the document has them; others see them together at the end
 * @param total how many there are; absent until the document is read whole
 * @param endedAt absent while it runs
 * @param report what it did; only of one that is done
 * @param problem why it failed; only of one that did
 */
record ImportAnswer(
        String id,
        ImportState state,
        int checked,
        int done,
        @Nullable Integer total,
        Instant startedAt,
        @Nullable Instant endedAt,
        @Nullable ImportReport report,
        @Nullable Problem problem) {}
