package rasterfit.app.catalogue;

import java.util.Collection;
import java.util.List;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.JpaSpecificationExecutor;
import org.springframework.data.jpa.repository.Query;

interface Items extends JpaRepository<StoredItem, ItemKey>, JpaSpecificationExecutor<StoredItem> {
    /** What changed since a revision and is still there. */
    @Query("select new rasterfit.app.catalogue.ItemText(i.key.kind, i.key.id, i.document) from StoredItem i"
            + " where i.revision > :revision order by i.key.kind, i.key.id")
    List<ItemText> changedSince(long revision);

    @Query("select new rasterfit.app.catalogue.ItemText(i.key.kind, i.key.id, i.document) from StoredItem i"
            + " where i.key.kind = :kind order by i.key.id")
    List<ItemText> ofKind(Kind kind);

    @Query("select new rasterfit.app.catalogue.ItemText(i.key.kind, i.key.id, i.document) from StoredItem i"
            + " where i.key.kind = :kind and i.key.id in :ids")
    List<ItemText> texts(Kind kind, Collection<String> ids);

    /** With what they are searched by, so that changing many does not ask for each. */
    @Query("select i from StoredItem i left join fetch i.capabilities where i.key.kind = :kind and i.key.id in :ids")
    List<StoredItem> whole(Kind kind, Collection<String> ids);
}
