package rasterfit.app.catalogue;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Sort;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.answer.Page;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads what is stored, as it was written. */
@Service
@Transactional(readOnly = true)
class CatalogueReader {
    private static final int MOST = 200;

    private final Items items;
    private final States states;
    private final CatalogueStore store;
    private final GearDocuments documents;

    CatalogueReader(Items items, States states, CatalogueStore store, GearDocuments documents) {
        this.items = items;
        this.states = states;
        this.store = store;
        this.documents = documents;
    }

    record Item(long revision, ObjectNode document) {}

    Item item(ItemKey key) {
        StoredItem stored = store.item(key);
        return new Item(stored.revision(), tree(stored.document()));
    }

    /** Everything, as the one gear document, each kind by id. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    Item all() {
        ObjectNode document = documents.empty();
        document.put("format", CatalogueBody.FORMAT);
        for (Kind kind : Kind.values()) {
            document.putArray(kind.path());
        }
        for (ItemText item : items.changedSince(0)) {
            ((ArrayNode) document.get(item.kind().path())).add(tree(item.document()));
        }
        return new Item(states.revision(), document);
    }

    /** A size beyond the greatest is that; the part after this one begins behind its last id. */
    Page<ObjectNode> list(ItemSearch search, int size, @Nullable String cursor) {
        if ((search.mostPrice() == null) != (search.currency() == null)) {
            throw parameter("currency", "maxPrice and currency go together.");
        }
        int most = most(size);
        String after = cursor == null ? null : last(cursor);
        List<StoredItem> found = items.findBy(
                search.after(after),
                query -> query.sortBy(Sort.by("key.id")).limit(most + 1).all());
        List<StoredItem> page = found.subList(0, Math.min(most, found.size()));
        String next = found.size() > most
                ? Cursor.of(page.get(page.size() - 1).getId().id())
                : null;
        return new Page<>(page.stream().map(item -> tree(item.document())).toList(), next);
    }

    Page<RevisionAnswer> revisions(ItemKey key, int size, @Nullable String cursor) {
        int most = most(size);
        long before = Long.MAX_VALUE;
        if (cursor != null) {
            String last = last(cursor);
            if (!last.matches("\\d{1,18}")) {
                throw parameter("cursor", "It is none that was given here.");
            }
            before = Long.parseLong(last);
        }
        List<StoredRevision> found = store.history(key, before, most + 1);
        List<StoredRevision> page = found.subList(0, Math.min(most, found.size()));
        String next = found.size() > most
                ? Cursor.of(Long.toString(page.get(page.size() - 1).revision()))
                : null;
        return new Page<>(page.stream().map(RevisionAnswer::of).toList(), next);
    }

    Item revision(ItemKey key, long revision) {
        return new Item(revision, tree(store.documentIn(key, revision)));
    }

    ObjectNode tree(String document) {
        return documents.tree(document);
    }

    private static int most(int size) {
        if (size < 1) {
            throw parameter("size", "At least 1.");
        }
        return Math.min(size, MOST);
    }

    private static String last(String cursor) {
        return Cursor.read(cursor).orElseThrow(() -> parameter("cursor", "It is none that was given here."));
    }

    private static ProblemException parameter(String name, String message) {
        return new ProblemException(
                ProblemType.INVALID_PARAMETER, name + ": " + message, List.of(ProblemError.inParameter(name, message)));
    }
}
