package rasterfit.app.collection;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.catalogue.Catalogues;
import rasterfit.app.collection.StoredCollection.CollectionKey;
import rasterfit.app.collection.StoredRecord.RecordKey;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.Problems;
import rasterfit.app.resource.PageRequest;
import rasterfit.app.resource.Precondition;
import rasterfit.gear.Catalogue;
import tools.jackson.databind.node.ObjectNode;

/**
 * Writes and reads collections. Each call is one transaction; the writers of one collection wait for each other, so that a
 * check against what stands in it holds until the change is there.
 */
@Service
@Transactional
class CollectionStore {
    /** Records in one section of a collection (assumption). */
    static final int MOST_RECORDS = 5000;

    /** Collections of one owner (assumption). */
    static final int MOST_COLLECTIONS = 100;

    private static final Set<Section> OF_GEAR = EnumSet.of(Section.ITEMS, Section.LAG_READINGS, Section.TEST_RESULTS);

    private final Collections collections;
    private final Records records;
    private final RecordReader reader;
    private final Catalogues catalogues;

    CollectionStore(Collections collections, Records records, RecordReader reader, Catalogues catalogues) {
        this.collections = collections;
        this.records = records;
        this.reader = reader;
        this.catalogues = catalogues;
    }

    /** @param isNew whether there was none before */
    record WrittenRecord(long revision, String document, boolean isNew) {}

    /** 409 where this owner has one with this id. */
    WrittenRecord create(CollectionKey key, ObjectNode document) {
        if (collections.existsById(key)) {
            throw conflict("There is already a collection \"" + key.id() + "\".");
        }
        return put(key, document, new Precondition(null, null));
    }

    WrittenRecord put(CollectionKey key, ObjectNode document, Precondition precondition) {
        String json = reader.collection(key.id(), document);
        Optional<StoredCollection> stored = collections.lock(key);
        precondition.check(stored.map(StoredCollection::changedIn).orElse(null));
        if (stored.isPresent()) {
            stored.get().become(json);
            return new WrittenRecord(stored.get().changedIn(), json, false);
        }
        if (collections.ofOwner(key.owner(), "", Limit.of(MOST_COLLECTIONS)).size() == MOST_COLLECTIONS) {
            throw tooMany("collections", MOST_COLLECTIONS);
        }
        collections.saveAndFlush(new StoredCollection(key, json));
        return new WrittenRecord(1, json, true);
    }

    WrittenRecord change(CollectionKey key, UnaryOperator<ObjectNode> patch, Precondition precondition) {
        StoredCollection stored = lock(key);
        precondition.check(stored.changedIn());
        String json = reader.collection(key.id(), patch.apply(reader.tree(stored.document())));
        stored.become(json);
        return new WrittenRecord(stored.changedIn(), json, false);
    }

    void delete(CollectionKey key, Precondition precondition) {
        StoredCollection stored = lock(key);
        precondition.check(stored.changedIn());
        collections.delete(stored);
    }

    /** Creates one record; 409 where there is one with this id. */
    WrittenRecord create(CollectionKey key, Section section, String id, ObjectNode document) {
        StoredCollection collection = lock(key);
        if (records.existsById(recordKey(key, section, id))) {
            throw conflict("There is already a " + section.noun() + " \"" + id + "\".");
        }
        return write(collection, section, id, Optional.empty(), document);
    }

    /** Creates or replaces one record. */
    WrittenRecord put(CollectionKey key, Section section, String id, ObjectNode document, Precondition precondition) {
        StoredCollection collection = lock(key);
        Optional<StoredRecord> stored = records.findById(recordKey(key, section, id));
        precondition.check(stored.map(StoredRecord::revision).orElse(null));
        return write(collection, section, id, stored, document);
    }

    WrittenRecord change(
            CollectionKey key, Section section, String id, UnaryOperator<ObjectNode> patch, Precondition precondition) {
        StoredCollection collection = lock(key);
        StoredRecord stored = record(key, section, id);
        precondition.check(stored.revision());
        return write(collection, section, id, Optional.of(stored), patch.apply(reader.tree(stored.document())));
    }

    /** An item that something names is not deleted. */
    void delete(CollectionKey key, Section section, String id, Precondition precondition) {
        StoredCollection collection = lock(key);
        StoredRecord stored = record(key, section, id);
        precondition.check(stored.revision());
        if (section == Section.ITEMS) {
            List<String> users = contents(key).users(id);
            if (!users.isEmpty()) {
                throw conflict("Item \"" + id + "\" is named by " + String.join(", ", users) + ".");
            }
        }
        records.delete(stored);
        collection.next();
    }

    private WrittenRecord write(
            StoredCollection collection,
            Section section,
            String id,
            Optional<StoredRecord> stored,
            ObjectNode document) {
        CollectionKey key = collection.getId();
        Contents contents = contents(key);
        RecordReader.ReadRecord read = reader.read(section, id, document, contents, catalogues.current());
        free(contents, id, read.ports());
        if (section == Section.ITEMS) {
            keepsUsers(contents, key, id, read);
        }
        if (stored.isEmpty() && records.count(key.owner(), key.id(), section) >= MOST_RECORDS) {
            throw tooMany("records of this kind", MOST_RECORDS);
        }
        long revision = collection.next();
        records.save(stored.orElseGet(() -> new StoredRecord(recordKey(key, section, id)))
                .become(read.json(), read.ports(), revision));
        return new WrittenRecord(revision, read.json(), stored.isEmpty());
    }

    /** Each port and each cable is in one connection; the other one is named. */
    private static void free(Contents contents, String connection, Set<PortUse> wanted) {
        Optional<Map.Entry<String, PortUse>> holder = contents.holder(connection, wanted);
        if (holder.isPresent()) {
            throw conflict(
                    "Connection \"" + connection + "\" wants " + holder.get().getValue() + ", which connection \""
                            + holder.get().getKey() + "\" holds.");
        }
    }

    /** A changed item still has to be what its connections, readings and tests say of it. */
    private void keepsUsers(Contents contents, CollectionKey key, String id, RecordReader.ReadRecord read) {
        if (contents.users(id).isEmpty()) {
            return;
        }
        List<RecordText> changed = records.all(key.owner(), key.id()).stream()
                .map(text -> text.section() == Section.ITEMS && text.id().equals(id)
                        ? new RecordText(text.section(), id, text.revision(), read.json())
                        : text)
                .toList();
        Contents after = reader.contents(changed, catalogues.current());
        for (RecordText text : changed) {
            if (text.section() != Section.ITEMS) {
                try {
                    reader.read(text.section(), text.id(), reader.tree(text.document()), after, catalogues.current());
                } catch (ProblemException broken) {
                    throw conflict("Changed so, item \"" + id + "\" would not fit "
                            + text.section().noun() + " \"" + text.id() + "\": " + broken.detail());
                }
            }
        }
    }

    @Transactional(readOnly = true)
    StoredCollection collection(CollectionKey key) {
        return collections.findById(key).orElseThrow(() -> absent(key));
    }

    @Transactional(readOnly = true)
    Optional<StoredCollection> find(CollectionKey key) {
        return collections.findById(key);
    }

    @Transactional(readOnly = true)
    List<StoredCollection> list(String owner, PageRequest part) {
        String after = part.after() == null ? "" : part.after();
        return collections.ofOwner(owner, after, Limit.of(part.lookUp()));
    }

    @Transactional(readOnly = true)
    StoredRecord record(CollectionKey key, Section section, String id) {
        collection(key);
        return records.findById(recordKey(key, section, id))
                .orElseThrow(() -> Problems.notFound(section.noun() + " \"" + id + "\""));
    }

    @Transactional(readOnly = true)
    List<StoredRecord> list(CollectionKey key, Section section, PageRequest part) {
        collection(key);
        String after = part.after() == null ? "" : part.after();
        return records.inSection(key.owner(), key.id(), section, after, Limit.of(part.lookUp()));
    }

    @Transactional(readOnly = true)
    List<RecordText> all(CollectionKey key) {
        return records.all(key.owner(), key.id());
    }

    @Transactional(readOnly = true)
    Contents contents(CollectionKey key) {
        return reader.contents(records.all(key.owner(), key.id()), catalogues.current());
    }

    /** What a computation takes: items and what was found out about them. */
    @Transactional(readOnly = true)
    Contents gear(CollectionKey key, Catalogue catalogue) {
        return reader.contents(records.of(key.owner(), key.id(), OF_GEAR), catalogue);
    }

    private StoredCollection lock(CollectionKey key) {
        return collections.lock(key).orElseThrow(() -> absent(key));
    }

    private static RecordKey recordKey(CollectionKey key, Section section, String id) {
        return new RecordKey(key.owner(), key.id(), section, id);
    }

    private static ProblemException absent(CollectionKey key) {
        return Problems.notFound("collection \"" + key.id() + "\"");
    }

    private static ProblemException conflict(String detail) {
        return new ProblemException(ProblemType.CONFLICT, detail);
    }

    private static ProblemException tooMany(String what, int most) {
        return Problems.outOfRange("", "There are " + most + " " + what + " already, the most allowed.", "0.." + most);
    }
}
