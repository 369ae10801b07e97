package rasterfit.app.catalogue;

import java.time.Instant;

/**
 * One change of an item.
 *
 * @param revision of the catalogue after it; the item's entity tag in quotes
 * @param changedBy whose token it was
 */
record RevisionAnswer(long revision, Change change, Instant changedAt, String changedBy) {
    static RevisionAnswer of(StoredRevision stored) {
        return new RevisionAnswer(stored.revision(), stored.change(), stored.changedAt(), stored.changedBy());
    }
}
