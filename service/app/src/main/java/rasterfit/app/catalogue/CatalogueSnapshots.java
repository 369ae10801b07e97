package rasterfit.app.catalogue;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.support.TransactionTemplate;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.Problems;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Link;
import rasterfit.gear.Source;

/**
 * The catalogue in memory, as the engine wants it. A new snapshot replaces the old one when the stored catalogue has changed;
 * only what changed is read. A match computes with the snapshot that it began with.
 */
@Component
class CatalogueSnapshots implements Catalogues {
    private static final Logger LOG = LoggerFactory.getLogger(CatalogueSnapshots.class);

    private final Items items;
    private final Revisions revisions;
    private final States states;
    private final GearDocuments documents;
    private final TransactionTemplate consistentRead;

    /** Everything that is in the current snapshot; only touched by the one thread that refreshes. */
    private final Map<ItemKey, Gear> gear = new HashMap<>();

    private final Map<ItemKey, GearDocuments.Document> expected = new ConcurrentHashMap<>();

    private volatile Catalogue current = Catalogue.EMPTY;

    CatalogueSnapshots(
            Items items,
            Revisions revisions,
            States states,
            GearDocuments documents,
            PlatformTransactionManager transactions) {
        this.items = items;
        this.revisions = revisions;
        this.states = states;
        this.documents = documents;
        this.consistentRead = new TransactionTemplate(transactions);
        // The number of the newest change and the items have to be of one moment.
        consistentRead.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        consistentRead.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
        consistentRead.setReadOnly(true);
    }

    @Override
    public Catalogue atLeast(long revision) {
        if (current.revision() < revision) {
            refresh();
        }
        Catalogue snapshot = current;
        if (snapshot.revision() < revision) {
            String newest = Long.toString(snapshot.revision());
            throw Problems.invalid(List.of(new ProblemError(
                    null, "minCatalogueRevision", "The newest change of the catalogue is " + newest + ".", newest)));
        }
        return snapshot;
    }

    /** After a write, which stands even if the database is away just then; the listener catches up. */
    void refreshIfPossible() {
        try {
            refresh();
        } catch (DataAccessException | TransactionException away) {
            LOG.warn("Written, but not yet in the snapshot: {}", away.getMessage());
        }
    }

    /** Keeps what was built from documents that are about to be written, so that the next refresh need not build it anew. */
    void expect(List<CheckedItem> items) {
        items.forEach(item -> expected.put(item.key(), item.document()));
    }

    void expectNoMore(List<CheckedItem> items) {
        items.forEach(item -> expected.remove(item.key(), item.document()));
    }

    private Gear read(ItemText item) {
        GearDocuments.Document known = expected.get(item.key());
        return known != null && known.json().equals(item.document()) ? known.gear() : documents.stored(item);
    }

    /** Reads what changed since the current snapshot, if anything did. */
    synchronized void refresh() {
        consistentRead.executeWithoutResult(status -> {
            long known = current.revision();
            long stored = states.revision();
            if (stored != known) {
                revisions.deletedSince(known).forEach(gear::remove);
                items.changedSince(known).forEach(item -> gear.put(item.key(), read(item)));
                current = snapshot(stored, gear.values());
                LOG.debug("the catalogue is at revision {} with {} items", stored, gear.size());
            }
        });
    }

    /** Each kind by id, so that the order does not depend on what was written when. */
    private static Catalogue snapshot(long revision, Collection<Gear> gear) {
        Map<String, Source> sources = new TreeMap<>();
        Map<String, Display> displays = new TreeMap<>();
        Map<String, Converter> converters = new TreeMap<>();
        Map<String, Link> links = new TreeMap<>();
        for (Gear item : gear) {
            if (item instanceof Gear.OfSource of) {
                sources.put(item.id(), of.source());
            } else if (item instanceof Gear.OfDisplay of) {
                displays.put(item.id(), of.display());
            } else if (item instanceof Gear.OfConverter of) {
                converters.put(item.id(), of.converter());
            } else if (item instanceof Gear.OfLink of) {
                links.put(item.id(), of.link());
            }
        }
        return Catalogue.of(
                revision,
                List.copyOf(sources.values()),
                List.copyOf(displays.values()),
                List.copyOf(converters.values()),
                List.copyOf(links.values()));
    }
}
