package rasterfit.app.collection;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface Collections extends JpaRepository<StoredCollection, StoredCollection.CollectionKey> {
    /** From here to the end of the transaction a lock is waited for no longer than this, in milliseconds. */
    @Query(nativeQuery = true, value = "select set_config('lock_timeout', :milliseconds, true)")
    String waitAtMost(String milliseconds);

    /** Waits until no other transaction writes to the collection, and keeps others waiting until this one ends. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select c from StoredCollection c where c.key = :key")
    Optional<StoredCollection> lock(StoredCollection.CollectionKey key);

    /** Keeps others waiting who would create a collection of this owner, which no row can do as there is none yet. */
    @Query(
            value = "select count(*) from pg_advisory_xact_lock(hashtextextended('collections of ' || :owner, 0))",
            nativeQuery = true)
    long lockOwner(String owner);

    /** The number of a change; none is given twice. */
    @Query(value = "select nextval('collection_revision')", nativeQuery = true)
    long nextRevision();

    @Query("select c from StoredCollection c where c.key.owner = :owner and c.key.id > :after order by c.key.id")
    List<StoredCollection> ofOwner(String owner, String after, Limit most);

    @Modifying
    @Query("delete from StoredCollection c where c.key.owner = :owner")
    void deleteOfOwner(String owner);
}
