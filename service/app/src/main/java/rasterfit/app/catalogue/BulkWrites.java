package rasterfit.app.catalogue;

import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.Problems;
import rasterfit.app.resource.Precondition;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The catalogue as a whole, or large parts of it: what imports and exports are made of. */
@Service
public class BulkWrites {
    /** How many items are held in memory at once while many are written. */
    private static final int BATCH = 500;

    private final Items items;
    private final Revisions revisions;
    private final States states;
    private final WriteLock lock;
    private final GearDocuments documents;
    private final CatalogueSnapshots snapshots;
    private final EntityManager entities;
    private final Clock clock;

    BulkWrites(
            Items items,
            Revisions revisions,
            States states,
            WriteLock lock,
            GearDocuments documents,
            CatalogueSnapshots snapshots,
            EntityManager entities,
            Clock clock) {
        this.items = items;
        this.revisions = revisions;
        this.states = states;
        this.lock = lock;
        this.documents = documents;
        this.snapshots = snapshots;
        this.entities = entities;
        this.clock = clock;
    }

    /**
     * What is stored, each kind by id.
     *
     * @param revision of the catalogue at that moment
     */
    public record Stored(long revision, List<ItemText> items) {}

    /** Everything, or everything of one kind, as of one moment. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Stored stored(@Nullable Kind kind) {
        return new Stored(states.revision(), kind == null ? items.changedSince(0) : items.ofKind(kind));
    }

    /** @throws ProblemException with every fault of the document, which has to name its id */
    public CheckedItem check(Kind kind, ObjectNode document) {
        JsonNode id = document.path("id");
        if (id.isMissingNode()) {
            throw new ProblemException(
                    ProblemType.MISSING_MEMBER,
                    "/id: This member is required.",
                    List.of(ProblemError.at("/id", "This member is required.")));
        }
        if (!id.isString()) {
            throw Problems.wrongType("/id", "a string");
        }
        return new CheckedItem(new ItemKey(kind, id.stringValue()), documents.read(kind, document, id.stringValue()));
    }

    /** What writing would change. */
    @Transactional(readOnly = true)
    public ImportReport compare(List<CheckedItem> wanted) {
        return new ImportReport(
                true, states.revision(), wanted.size(), difference(wanted).changed());
    }

    /**
     * Writes many items as one change with one revision. Items that are already as they should be are left as they are.
     *
     * @param ifMatch the state of the whole catalogue that is changed; absent where any will do
     * @param progress is told how many items are done; what it throws ends the transaction
     */
    @Transactional
    public ImportReport write(List<CheckedItem> wanted, String writer, @Nullable String ifMatch, IntConsumer progress) {
        CatalogueState state = lock.take(WriteLock.FOR_MANY);
        if (ifMatch != null) {
            new Precondition(ifMatch, null).check(state.revision());
        }
        Difference difference = difference(wanted);
        int done = wanted.size() - difference.changed();
        progress.accept(done);
        if (difference.changed() == 0) {
            return new ImportReport(false, state.revision(), wanted.size(), 0);
        }
        long revision = state.next();
        states.notifyInstances(revision);
        Instant now = clock.instant();
        for (Map.Entry<Kind, List<CheckedItem>> ofKind : difference.wanted().entrySet()) {
            for (List<CheckedItem> batch : batches(ofKind.getValue())) {
                write(ofKind.getKey(), batch, difference.there(), revision, now, writer);
                done += batch.size();
                progress.accept(done);
            }
        }
        return new ImportReport(false, revision, wanted.size(), difference.changed());
    }

    /** Writes only if nothing was ever written; of several instances that start together one does. */
    @Transactional
    public boolean writeIfEmpty(List<CheckedItem> wanted, String writer) {
        boolean isEmpty = lock.take(WriteLock.FOR_MANY).revision() == 0;
        if (isEmpty) {
            write(wanted, writer, null, done -> {});
        }
        return isEmpty;
    }

    /** Does what writes and commits items; soon after, matches on this instance know them. */
    public <T> T refreshing(List<CheckedItem> items, Supplier<T> write) {
        snapshots.expect(items);
        try {
            T written = write.get();
            snapshots.refreshIfPossible();
            return written;
        } finally {
            snapshots.expectNoMore(items);
        }
    }

    private void write(
            Kind kind, List<CheckedItem> batch, Set<ItemKey> there, long revision, Instant now, String writer) {
        Map<ItemKey, StoredItem> stored = new HashMap<>();
        List<String> ids = batch.stream()
                .map(CheckedItem::key)
                .filter(there::contains)
                .map(ItemKey::id)
                .toList();
        items.whole(kind, ids).forEach(item -> stored.put(item.getId(), item));
        for (CheckedItem one : batch) {
            StoredItem item = stored.getOrDefault(one.key(), new StoredItem(one.key()));
            items.save(item.become(one.document(), revision));
            revisions.save(new StoredRevision(
                    new StoredRevision.RevisionKey(kind, one.key().id(), revision),
                    one.document().json(),
                    Change.IMPORTED,
                    now,
                    writer));
        }
        entities.flush();
        entities.clear();
    }

    /**
     * @param wanted what is not yet as it should be
     * @param there those of them that are stored in another state
     */
    private record Difference(Map<Kind, List<CheckedItem>> wanted, Set<ItemKey> there) {
        int changed() {
            return wanted.values().stream().mapToInt(List::size).sum();
        }
    }

    private Difference difference(List<CheckedItem> wanted) {
        Map<Kind, List<CheckedItem>> byKind = new EnumMap<>(Kind.class);
        wanted.forEach(one -> byKind.computeIfAbsent(one.key().kind(), kind -> new ArrayList<>())
                .add(one));
        Map<Kind, List<CheckedItem>> different = new EnumMap<>(Kind.class);
        Set<ItemKey> there = new HashSet<>();
        byKind.forEach((kind, all) -> {
            for (List<CheckedItem> batch : batches(all)) {
                Map<ItemKey, String> stored = new HashMap<>();
                List<String> ids = batch.stream().map(one -> one.key().id()).toList();
                items.texts(kind, ids).forEach(item -> stored.put(item.key(), item.document()));
                for (CheckedItem one : batch) {
                    String document = stored.get(one.key());
                    if (!one.document().json().equals(document)) {
                        different
                                .computeIfAbsent(kind, none -> new ArrayList<>())
                                .add(one);
                        if (document != null) {
                            there.add(one.key());
                        }
                    }
                }
            }
        });
        return new Difference(different, there);
    }

    private static <T> List<List<T>> batches(List<T> all) {
        List<List<T>> batches = new ArrayList<>();
        for (int from = 0; from < all.size(); from += BATCH) {
            batches.add(all.subList(from, Math.min(all.size(), from + BATCH)));
        }
        return batches;
    }
}
