package rasterfit.app.catalogue;

import java.util.List;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.TransactionException;
import rasterfit.app.access.Callers;
import rasterfit.app.catalogue.CatalogueStore.WrittenItem;
import rasterfit.app.idempotency.Idempotency;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.resource.MergePatch;
import rasterfit.app.resource.Precondition;
import tools.jackson.databind.node.ObjectNode;

/** Writes through the store, and sees to it that this instance matches with what was written before it answers. */
@Service
class CatalogueService {
    private static final Logger LOG = LoggerFactory.getLogger(CatalogueService.class);

    private final CatalogueStore store;
    private final ImportReader imports;
    private final CatalogueSnapshots snapshots;
    private final Idempotency idempotency;
    private final Callers callers;

    CatalogueService(
            CatalogueStore store,
            ImportReader imports,
            CatalogueSnapshots snapshots,
            Idempotency idempotency,
            Callers callers) {
        this.store = store;
        this.imports = imports;
        this.snapshots = snapshots;
        this.idempotency = idempotency;
        this.callers = callers;
    }

    WrittenItem put(ItemKey key, ObjectNode document, Precondition precondition) {
        return refreshed(() -> store.put(key, document, precondition, writer()));
    }

    WrittenItem patch(ItemKey key, ObjectNode patch, Precondition precondition) {
        return refreshed(
                () -> store.change(key, document -> MergePatch.apply(document, patch), precondition, writer()));
    }

    void delete(ItemKey key, Precondition precondition) {
        refreshed(() -> {
            store.delete(key, precondition, writer());
            return key;
        });
    }

    WrittenItem restore(ItemKey key, long revision, Precondition precondition, IdempotentRequest request) {
        return refreshed(() -> idempotency.once(
                request, WrittenItem.class, () -> store.restore(key, revision, precondition, writer())));
    }

    /** All items of a gear document, or none; {@code validate} only looks. */
    ImportReport importAll(ObjectNode document, boolean validate) {
        List<CatalogueStore.Imported> items = imports.read(document);
        return validate
                ? store.compare(items)
                : refreshed(() -> store.importAll(
                        items, writer(), done -> LOG.info("{} of {} items imported", done, items.size())));
    }

    private String writer() {
        return callers.current().owner();
    }

    /** Outside the transaction, which would hold a connection while the refresh waits for another. */
    private <T> T refreshed(Supplier<T> write) {
        T written = write.get();
        try {
            snapshots.refresh();
        } catch (DataAccessException | TransactionException away) {
            LOG.warn("Written, but not yet in the snapshot: {}", away.getMessage());
        }
        return written;
    }
}
