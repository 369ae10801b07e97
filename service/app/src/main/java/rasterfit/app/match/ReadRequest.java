package rasterfit.app.match;

import org.jspecify.annotations.Nullable;
import rasterfit.match.MatchRequest;
import rasterfit.remedy.Others;

/**
 * A request without faults.
 *
 * @param others what it could have named and did not
 * @param collectionRevision of the collection that took part; absent if none did
 */
record ReadRequest(MatchRequest request, @Nullable Long collectionRevision, Others others, Further further) {

    /**
     * What is looked into beyond the match itself.
     *
     * @param refusals whether remedies are looked for wherever something is refused
     * @param forRank the rank of the setup that is to be lifted; absent for none
     */
    record Further(boolean refusals, @Nullable Integer forRank, boolean sensitivity) {
        boolean isAsked(boolean hasRefusals) {
            return (refusals && hasRefusals) || forRank != null || sensitivity;
        }
    }
}
