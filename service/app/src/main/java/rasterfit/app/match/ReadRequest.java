package rasterfit.app.match;

import org.jspecify.annotations.Nullable;
import rasterfit.match.MatchRequest;

/**
 * A request without faults.
 *
 * @param collectionRevision of the collection that took part; absent if none did
 */
record ReadRequest(MatchRequest request, @Nullable Long collectionRevision) {}
