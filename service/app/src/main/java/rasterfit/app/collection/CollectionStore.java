package rasterfit.app.collection;

import java.time.Duration;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.springframework.dao.PessimisticLockingFailureException;
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

    /** Records that one sentence names. */
    private static final int MOST_TOLD = 10;

    /** For others who write to the same collection, as in the catalogue. */
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(5);

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
        String json = reader.collection(key.id(), document);
        collections.lockOwner(key.owner());
        if (collections.existsById(key)) {
            throw conflict("There is already a collection \"" + key.id() + "\".");
        }
        return write(key, json);
    }

    WrittenRecord put(CollectionKey key, ObjectNode document, Precondition precondition) {
        String json = reader.collection(key.id(), document);
        Optional<StoredCollection> stored = locked(key);
        if (stored.isEmpty()) {
            collections.lockOwner(key.owner());
            stored = locked(key);
        }
        precondition.check(stored.map(StoredCollection::changedIn).orElse(null));
        if (stored.isEmpty()) {
            return write(key, json);
        }
        stored.get().become(json, collections.nextRevision());
        return new WrittenRecord(stored.get().changedIn(), json, false);
    }

    /** Under the lock of the owner. */
    private WrittenRecord write(CollectionKey key, String json) {
        if (collections.ofOwner(key.owner(), "", Limit.of(MOST_COLLECTIONS)).size() == MOST_COLLECTIONS) {
            throw tooMany("collections", MOST_COLLECTIONS);
        }
        StoredCollection stored = collections.save(new StoredCollection(key, json, collections.nextRevision()));
        return new WrittenRecord(stored.changedIn(), json, true);
    }

    WrittenRecord change(CollectionKey key, UnaryOperator<ObjectNode> patch, Precondition precondition) {
        StoredCollection stored = lock(key);
        precondition.check(stored.changedIn());
        String json = reader.collection(key.id(), patch.apply(reader.tree(stored.document())));
        stored.become(json, collections.nextRevision());
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

    /** An item or due work that something names is not deleted. */
    void delete(CollectionKey key, Section section, String id, Precondition precondition) {
        StoredCollection collection = lock(key);
        StoredRecord stored = record(key, section, id);
        precondition.check(stored.revision());
        List<Contents.RecordName> users =
                contents(key, section.naming()).users(section, id).toList();
        if (!users.isEmpty()) {
            throw conflict(capital(new Contents.RecordName(section, id)) + " is named by " + words(users) + ".");
        }
        records.delete(stored);
        collection.move(collections.nextRevision());
    }

    private WrittenRecord write(
            StoredCollection collection,
            Section section,
            String id,
            Optional<StoredRecord> stored,
            ObjectNode document) {
        CollectionKey key = collection.getId();
        Set<Section> needed = EnumSet.copyOf(section.named());
        needed.add(Section.ITEMS);
        if (stored.isPresent()) {
            needed.addAll(section.naming());
        }
        Contents contents = contents(key, needed);
        RecordReader.ReadRecord read = reader.read(section, id, document, contents, catalogues.current());
        if (!read.ports().isEmpty()) {
            free(key, id, read.ports());
        }
        keepsUsers(contents, key, new Contents.RecordName(section, id), read.json());
        if (stored.isEmpty() && records.count(key.owner(), key.id(), section) >= MOST_RECORDS) {
            throw tooMany("records of this kind", MOST_RECORDS);
        }
        long revision = collections.nextRevision();
        collection.move(revision);
        records.save(stored.orElseGet(() -> new StoredRecord(recordKey(key, section, id)))
                .become(read.json(), read.ports(), revision));
        return new WrittenRecord(revision, read.json(), stored.isEmpty());
    }

    /** Each port and each cable is in one connection; the other one is named. */
    private void free(CollectionKey key, String connection, Set<PortUse> wanted) {
        for (HeldPort held : records.heldByOthers(key.owner(), key.id(), connection)) {
            if (wanted.contains(held.use())) {
                throw conflict("Connection \"" + connection + "\" wants " + held.use() + ", which connection \""
                        + held.connection() + "\" holds.");
            }
        }
    }

    /**
     * What is changed still has to be what others say of it: connections, readings and tests of an item, the note that
     * finished due work. As long as an item is the same gear, nothing is asked of it that the catalogue may have lost.
     */
    private void keepsUsers(Contents contents, CollectionKey key, Contents.RecordName changed, String json) {
        List<Contents.RecordName> users =
                contents.users(changed.section(), changed.id()).toList();
        if (users.isEmpty()) {
            return;
        }
        Catalogue catalogue = catalogues.current();
        OwnItem before = contents.items().get(changed.id());
        if (changed.section() == Section.ITEMS
                && before != null
                && reader.item(json, catalogue).isSameGearAs(before)) {
            return;
        }
        List<RecordText> texts = all(key, EnumSet.allOf(Section.class)).stream()
                .map(text -> new Contents.RecordName(text.section(), text.id()).equals(changed)
                        ? new RecordText(text.section(), text.id(), text.revision(), json)
                        : text)
                .toList();
        Contents after = reader.contents(texts, catalogue);
        for (RecordText text : texts) {
            Contents.RecordName user = new Contents.RecordName(text.section(), text.id());
            if (users.contains(user)) {
                fits(key, changed, user, reader.tree(text.document()), after, catalogue);
            }
        }
    }

    private void fits(
            CollectionKey key,
            Contents.RecordName changed,
            Contents.RecordName user,
            ObjectNode document,
            Contents after,
            Catalogue catalogue) {
        String clash = "Changed so, " + changed + " would not fit " + user + ": ";
        Set<PortUse> ports;
        try {
            ports = reader.read(user.section(), user.id(), document, after, catalogue)
                    .ports();
        } catch (ProblemException broken) {
            throw conflict(clash + broken.detail());
        }
        if (user.section() == Section.CONNECTIONS
                && !record(key, user.section(), user.id()).ports().equals(ports)) {
            throw conflict(clash + "it would be plugged in elsewhere.");
        }
    }

    private static String words(List<Contents.RecordName> users) {
        String first = users.stream()
                .limit(MOST_TOLD)
                .map(Contents.RecordName::toString)
                .collect(Collectors.joining(", "));
        return users.size() > MOST_TOLD ? first + " and " + (users.size() - MOST_TOLD) + " more" : first;
    }

    private static String capital(Contents.RecordName named) {
        String words = named.toString();
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
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
    List<RecordText> all(CollectionKey key, Set<Section> sections) {
        return records.all(key.owner(), key.id(), sections);
    }

    @Transactional(readOnly = true)
    Contents contents(CollectionKey key, Set<Section> sections) {
        return contents(key, sections, catalogues.current());
    }

    /** What stands in some sections, in the order in which it was last written; the others are empty. */
    @Transactional(readOnly = true)
    Contents contents(CollectionKey key, Set<Section> sections, Catalogue catalogue) {
        List<RecordText> inOrder = all(key, sections).stream()
                .sorted(Comparator.comparing(RecordText::section).thenComparing(RecordText::revision))
                .toList();
        return reader.contents(inOrder, catalogue);
    }

    /** 503 where others write to the collection for longer than the wait. */
    private Optional<StoredCollection> locked(CollectionKey key) {
        collections.waitAtMost(Long.toString(LONGEST_WAIT.toMillis()));
        try {
            return collections.lock(key);
        } catch (PessimisticLockingFailureException stillWriting) {
            ProblemException problem = Problems.unavailable(
                    "Another change of the collection was still being written after " + LONGEST_WAIT.toSeconds()
                            + " s.",
                    LONGEST_WAIT);
            problem.initCause(stillWriting);
            throw problem;
        }
    }

    private StoredCollection lock(CollectionKey key) {
        return locked(key).orElseThrow(() -> absent(key));
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
