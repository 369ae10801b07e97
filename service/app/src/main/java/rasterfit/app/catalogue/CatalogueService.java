package rasterfit.app.catalogue;

import java.util.function.Supplier;
import org.springframework.stereotype.Service;
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
    private final CatalogueStore store;
    private final CatalogueSnapshots snapshots;
    private final Idempotency idempotency;
    private final Callers callers;

    CatalogueService(CatalogueStore store, CatalogueSnapshots snapshots, Idempotency idempotency, Callers callers) {
        this.store = store;
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

    private String writer() {
        return callers.current().owner();
    }

    /** Outside the transaction, which would hold a connection while the refresh waits for another. */
    private <T> T refreshed(Supplier<T> write) {
        T written = write.get();
        snapshots.refreshIfPossible();
        return written;
    }
}
