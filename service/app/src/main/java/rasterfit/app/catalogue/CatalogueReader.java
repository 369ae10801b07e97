package rasterfit.app.catalogue;

import java.util.List;
import org.springframework.data.domain.Sort;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.answer.Page;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.resource.PageRequest;
import tools.jackson.databind.node.ObjectNode;

/** Reads what is stored, as it was written. */
@Service
@Transactional(readOnly = true)
class CatalogueReader {
    private final Items items;
    private final CatalogueStore store;
    private final GearDocuments documents;

    CatalogueReader(Items items, CatalogueStore store, GearDocuments documents) {
        this.items = items;
        this.store = store;
        this.documents = documents;
    }

    record Item(long revision, ObjectNode document) {}

    Item item(ItemKey key) {
        StoredItem stored = store.item(key);
        return new Item(stored.revision(), tree(stored.document()));
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
