package rasterfit.app.catalogue;

import java.util.List;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;
import rasterfit.app.catalogue.StoredRevision.RevisionKey;

interface Revisions extends JpaRepository<StoredRevision, RevisionKey> {
    /** The states of one item, newest first. */
    @Query("select r from StoredRevision r where r.key.kind = :kind and r.key.id = :id and r.key.revision < :before"
            + " order by r.key.revision desc")
    List<StoredRevision> ofItem(Kind kind, String id, long before, Limit limit);

    /** The items that were deleted since a revision; some may be there again. */
    @Query("select new rasterfit.app.catalogue.ItemKey(r.key.kind, r.key.id) from StoredRevision r"
            + " where r.key.revision > :revision and r.document is null")
    List<ItemKey> deletedSince(long revision);
}
