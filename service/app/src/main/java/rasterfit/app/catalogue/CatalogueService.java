package rasterfit.app.catalogue;

import java.util.function.Supplier;
import org.springframework.stereotype.Service;
import rasterfit.app.catalogue.CatalogueStore.WrittenItem;
import rasterfit.app.idempotency.Idempotency;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.resource.MergePatch;
import rasterfit.app.resource.Precondition;
import tools.jackson.databind.node.ObjectNode;

/** Writes through the store, and sees to it that this instance matches with what was written before it answers. */
@Service
class CatalogueService {
    /** Until there are tokens. */
    private static final String WRITER = "local";

    private final CatalogueStore store;
    private final CatalogueSnapshots snapshots;
    private final Idempotency idempotency;

    CatalogueService(CatalogueStore store, CatalogueSnapshots snapshots, Idempotency idempotency) {
        this.store = store;
        this.snapshots = snapshots;
        this.idempotency = idempotency;
    }

    WrittenItem put(ItemKey key, ObjectNode document, Precondition precondition) {
        return refreshed(() -> store.put(key, document, precondition, WRITER));
    }

    WrittenItem patch(ItemKey key, ObjectNode patch, Precondition precondition) {
        return refreshed(() -> store.change(key, document -> MergePatch.apply(document, patch), precondition, WRITER));
    }

    void delete(ItemKey key, Precondition precondition) {
        refreshed(() -> {
            store.delete(key, precondition, WRITER);
            return key;
        });
    }

    WrittenItem restore(ItemKey key, long revision, Precondition precondition, IdempotentRequest request) {
        return refreshed(() ->
                idempotency.once(request, WrittenItem.class, () -> store.restore(key, revision, precondition, WRITER)));
    }

    /** Outside the transaction, which would hold a connection while the refresh waits for another. */
    private <T> T refreshed(Supplier<T> write) {
        T written = write.get();
        snapshots.refreshIfPossible();
        return written;
    }
}
