package rasterfit.app.catalogue;

import jakarta.persistence.LockModeType;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface States extends Repository<CatalogueState, Boolean> {
    /** How many milliseconds the rest of the transaction waits for a lock before it fails. */
    @Query(nativeQuery = true, value = "select set_config('lock_timeout', :milliseconds, true)")
    String waitAtMost(String milliseconds);

    /** Waits until no other transaction writes to the catalogue, and keeps others waiting until this one ends. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select s from CatalogueState s")
    CatalogueState lock();

    @Query("select s.revision from CatalogueState s")
    long revision();

    /** Tells every instance that listens, once the transaction is committed. */
    @Query(
            nativeQuery = true,
            value = "select cast(pg_notify('" + CatalogueListener.CHANNEL + "', cast(:revision as text)) as text)")
    String notifyInstances(long revision);
}
