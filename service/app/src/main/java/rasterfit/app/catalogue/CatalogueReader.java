package rasterfit.app.catalogue;

import java.util.List;
import org.springframework.data.domain.Sort;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.answer.Page;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.resource.PageRequest;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads what is stored, as it was written. */
@Service
@Transactional(readOnly = true)
class CatalogueReader {
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

    /** By id. */
    Page<ObjectNode> list(ItemSearch search, PageRequest part) {
        if ((search.mostPrice() == null) != (search.currency() == null)) {
            String message = "maxPrice and currency go together.";
            throw new ProblemException(
                    ProblemType.INVALID_PARAMETER,
                    "currency: " + message,
                    List.of(ProblemError.inParameter("currency", message)));
        }
        List<StoredItem> found = items.findBy(
                search.after(part.after()),
                query -> query.sortBy(Sort.by("key.id")).limit(part.lookUp()).all());
        return part.page(found, item -> item.getId().id(), item -> tree(item.document()));
    }

    /** Newest first. */
    Page<RevisionAnswer> revisions(ItemKey key, PageRequest part) {
        String after = part.after();
        if (after != null && !after.matches("\\d{1,18}")) {
            throw PageRequest.unknownCursor();
        }
        long before = after == null ? Long.MAX_VALUE : Long.parseLong(after);
        return part.page(
                store.history(key, before, part.lookUp()),
                revision -> Long.toString(revision.revision()),
                RevisionAnswer::of);
    }

    Item revision(ItemKey key, long revision) {
        return new Item(revision, tree(store.documentIn(key, revision)));
    }

    ObjectNode tree(String document) {
        return documents.tree(document);
    }
}
