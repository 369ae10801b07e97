package rasterfit.app.catalogue;

import java.util.List;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.JpaSpecificationExecutor;
import org.springframework.data.jpa.repository.Query;

interface Items extends JpaRepository<StoredItem, ItemKey>, JpaSpecificationExecutor<StoredItem> {
    /** What changed since a revision and is still there. */
    @Query("select new rasterfit.app.catalogue.ItemText(i.key.kind, i.key.id, i.document) from StoredItem i"
            + " where i.revision > :revision order by i.key.kind, i.key.id")
    List<ItemText> changedSince(long revision);
}
