package rasterfit.app.catalogue;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.problem.Problems;
import rasterfit.app.resource.Precondition;
import tools.jackson.databind.node.ObjectNode;

/**
 * Writes to the catalogue. Each call is one transaction: the item, its new revision and the number of the newest change
 * become visible together or not at all. Writers wait for each other, so revisions appear in their order.
 */
@Service
@Transactional
class CatalogueStore {
    private final Items items;
    private final Revisions revisions;
    private final States states;
    private final GearDocuments documents;
    private final WriteLock lock;
    private final Clock clock;

    CatalogueStore(
            Items items, Revisions revisions, States states, GearDocuments documents, WriteLock lock, Clock clock) {
        this.items = items;
        this.revisions = revisions;
        this.states = states;
        this.documents = documents;
        this.lock = lock;
        this.clock = clock;
    }

    /** @param isNew whether there was none before */
    record WrittenItem(long revision, String document, boolean isNew) {}

    /** Creates or replaces one item. */
    WrittenItem put(ItemKey key, ObjectNode document, Precondition precondition, String writer) {
        GearDocuments.Document read = documents.read(key.kind(), document, key.id());
        CatalogueState state = lock.take(WriteLock.FOR_ONE_ITEM);
        Optional<StoredItem> stored = items.findById(key);
        precondition.check(stored.map(StoredItem::revision).orElse(null));
        return write(state, key, stored, read, stored.isEmpty() ? Change.CREATED : Change.REPLACED, writer);
    }

    /** Replaces an item by what a function makes of its document. */
    WrittenItem change(ItemKey key, UnaryOperator<ObjectNode> patch, Precondition precondition, String writer) {
        CatalogueState state = lock.take(WriteLock.FOR_ONE_ITEM);
        StoredItem stored = item(key);
        precondition.check(stored.revision());
        ObjectNode patched = patch.apply(documents.tree(stored.document()));
        GearDocuments.Document read = documents.read(key.kind(), patched, key.id());
        return write(state, key, Optional.of(stored), read, Change.PATCHED, writer);
    }

    void delete(ItemKey key, Precondition precondition, String writer) {
        CatalogueState state = lock.take(WriteLock.FOR_ONE_ITEM);
        StoredItem stored = item(key);
        precondition.check(stored.revision());
        long revision = state.next();
        items.delete(stored);
        record(key, revision, null, Change.DELETED, clock.instant(), writer);
        states.notifyInstances(revision);
    }

    /** Makes an earlier state the current one again; also of an item that was deleted. */
    WrittenItem restore(ItemKey key, long revision, Precondition precondition, String writer) {
        String document = documentIn(key, revision);
        CatalogueState state = lock.take(WriteLock.FOR_ONE_ITEM);
        Optional<StoredItem> stored = items.findById(key);
        precondition.check(stored.map(StoredItem::revision).orElse(null));
        GearDocuments.Document read = documents.read(key.kind(), documents.tree(document), key.id());
        return write(state, key, stored, read, Change.RESTORED, writer);
    }

    @Transactional(readOnly = true)
    StoredItem item(ItemKey key) {
        return items.findById(key).orElseThrow(() -> absent(key));
    }

    /** 404 where there is no such revision, and where the item was deleted in it. */
    @Transactional(readOnly = true)
    String documentIn(ItemKey key, long revision) {
        String what = key.kind().noun() + " \"" + key.id() + "\"";
        StoredRevision stored = revisions
                .findById(new StoredRevision.RevisionKey(key.kind(), key.id(), revision))
                .orElseThrow(() -> Problems.notFound("revision " + revision + " of " + what));
        if (stored.document() == null) {
            throw Problems.notFound(what + " in revision " + revision + ", in which it was deleted");
        }
        return stored.document();
    }

    /** Newest first; 404 for an item that never was. */
    @Transactional(readOnly = true)
    List<StoredRevision> history(ItemKey key, long before, int most) {
        List<StoredRevision> history = revisions.ofItem(key.kind(), key.id(), before, Limit.of(most));
        if (history.isEmpty() && before == Long.MAX_VALUE) {
            throw absent(key);
        }
        return history;
    }

    private WrittenItem write(
            CatalogueState state,
            ItemKey key,
            Optional<StoredItem> stored,
            GearDocuments.Document document,
            Change change,
            String writer) {
        long revision = state.next();
        items.save(stored.orElseGet(() -> new StoredItem(key)).become(document, revision));
        record(key, revision, document.json(), change, clock.instant(), writer);
        states.notifyInstances(revision);
        return new WrittenItem(revision, document.json(), stored.isEmpty());
    }

    private void record(
            ItemKey key, long revision, @Nullable String document, Change change, Instant at, String writer) {
        revisions.save(new StoredRevision(
                new StoredRevision.RevisionKey(key.kind(), key.id(), revision), document, change, at, writer));
    }

    private static RuntimeException absent(ItemKey key) {
        return Problems.notFound(key.kind().noun() + " \"" + key.id() + "\"");
    }
}
