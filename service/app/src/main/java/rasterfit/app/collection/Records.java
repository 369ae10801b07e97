package rasterfit.app.collection;

import java.util.List;
import java.util.Set;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface Records extends JpaRepository<StoredRecord, StoredRecord.RecordKey> {
    @Query("select r from StoredRecord r where r.key.owner = :owner and r.key.collection = :collection"
            + " and r.key.section = :section and r.key.id > :after order by r.key.id")
    List<StoredRecord> inSection(String owner, String collection, Section section, String after, Limit most);

    @Query("select count(r) from StoredRecord r where r.key.owner = :owner and r.key.collection = :collection"
            + " and r.key.section = :section")
    long count(String owner, String collection, Section section);

    /** Ports and cables that connections other than this one hold. */
    @Query("select new rasterfit.app.collection.HeldPort(r.key.id, p.item, p.port) from StoredRecord r join r.ports p"
            + " where r.key.owner = :owner and r.key.collection = :collection and r.key.id <> :connection")
    List<HeldPort> heldByOthers(String owner, String collection, String connection);

    /** In the order of sections, then by id. */
    @Query("select new rasterfit.app.collection.RecordText(r.key.section, r.key.id, r.revision, r.document)"
            + " from StoredRecord r where r.key.owner = :owner and r.key.collection = :collection"
            + " and r.key.section in :sections order by r.key.section, r.key.id")
    List<RecordText> all(String owner, String collection, Set<Section> sections);
}
