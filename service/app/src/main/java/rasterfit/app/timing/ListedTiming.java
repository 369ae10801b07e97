package rasterfit.app.timing;

import io.swagger.v3.oas.annotations.media.Schema;

/** A timing of a list: numbered by a standard, or a class of broadcast kinship. */
@Schema(oneOf = {PublishedTiming.class, BroadcastTiming.class})
sealed interface ListedTiming permits PublishedTiming, BroadcastTiming {
    String id();
}
