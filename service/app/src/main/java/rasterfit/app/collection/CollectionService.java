package rasterfit.app.collection;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.access.Callers;
import rasterfit.app.answer.Page;
import rasterfit.app.collection.CollectionStore.WrittenRecord;
import rasterfit.app.collection.StoredCollection.CollectionKey;
import rasterfit.app.idempotency.Idempotency;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.resource.PageRequest;
import rasterfit.app.resource.Precondition;
import tools.jackson.databind.node.ObjectNode;

/** The caller's collections: what is stored, and what answers add to it. */
@Service
class CollectionService {
    /** Of due work in its list. */
    private static final Pattern POSITION = Pattern.compile("\\d{4}-\\d{2}-\\d{2} [a-z0-9-]+");

    private final CollectionStore store;
    private final RecordReader reader;
    private final AddedMembers added;
    private final Idempotency idempotency;
    private final Callers callers;

    CollectionService(
            CollectionStore store, RecordReader reader, AddedMembers added, Idempotency idempotency, Callers callers) {
        this.store = store;
        this.reader = reader;
        this.added = added;
        this.idempotency = idempotency;
        this.callers = callers;
    }

    /** As it is answered, with its entity tag. */
    record Told(String tag, ObjectNode document, boolean isNew) {
        String id() {
            return document.path("id").asString();
        }
    }

    private CollectionKey key(String id) {
        return new CollectionKey(callers.current().owner(), id);
    }

    Page<ObjectNode> collections(PageRequest part) {
        return part.page(
                store.list(callers.current().owner(), part),
                stored -> stored.getId().id(),
                stored -> reader.tree(stored.document()));
    }

    Told collection(String id) {
        StoredCollection stored = store.collection(key(id));
        return told(new WrittenRecord(stored.changedIn(), stored.document(), false));
    }

    Told put(String id, ObjectNode document, Precondition precondition) {
        return told(store.put(key(id), document, precondition));
    }

    Told patch(String id, UnaryOperator<ObjectNode> patch, Precondition precondition) {
        return told(store.change(key(id), patch, precondition));
    }

    void delete(String id, Precondition precondition) {
        store.delete(key(id), precondition);
    }

    /** With an id of the client's choice in the document, or one made here. */
    Told create(ObjectNode document, IdempotentRequest request) {
        return told(idempotency.once(request, WrittenRecord.class, () -> store.create(key(idOf(document)), document)));
    }

    private Told told(WrittenRecord written) {
        return new Told(Precondition.tag(written.revision()), reader.tree(written.document()), written.isNew());
    }

    /** A collection and all its records as one document, as of one moment. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public ObjectNode export(String id) {
        CollectionKey key = key(id);
        return reader.whole(store.collection(key).document(), store.all(key, EnumSet.allOf(Section.class)));
    }

    @Transactional(readOnly = true)
    public Page<ObjectNode> records(String id, Section section, PageRequest part) {
        CollectionKey key = key(id);
        return part.page(
                store.list(key, section, part),
                record -> record.getId().id(),
                record -> completed(key, section, reader.tree(record.document())));
    }

    /** Work that is still to be done, the earliest first. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Page<ObjectNode> due(String id, PageRequest part, @Nullable LocalDate asOf) {
        if (part.after() != null && !POSITION.matcher(part.after()).matches()) {
            throw PageRequest.unknownCursor();
        }
        CollectionKey key = key(id);
        store.collection(key);
        DoneWork done = done(key);
        List<ObjectNode> behind = store.all(key, EnumSet.of(Section.DUE)).stream()
                .map(text -> reader.tree(text.document()))
                .map(document -> document.setAll(added.of(Section.DUE, document, () -> done, asOf)))
                .map(ObjectNode.class::cast)
                .filter(one -> one.has(AddedMembers.NEXT_ON))
                .filter(one -> part.after() == null || position(one).compareTo(part.after()) > 0)
                .sorted(Comparator.comparing(CollectionService::position))
                .limit(part.lookUp())
                .toList();
        return part.page(behind, CollectionService::position, one -> one);
    }

    /** Days as they are written come in their order. */
    private static String position(ObjectNode due) {
        return due.path(AddedMembers.NEXT_ON).asString() + " " + due.path("id").asString();
    }

    @Transactional(readOnly = true)
    public Told record(String id, Section section, String recordId) {
        StoredRecord stored = store.record(key(id), section, recordId);
        return told(key(id), section, new WrittenRecord(stored.revision(), stored.document(), false));
    }

    @Transactional
    public Told put(String id, Section section, String recordId, ObjectNode document, Precondition precondition) {
        return told(key(id), section, store.put(key(id), section, recordId, document, precondition));
    }

    @Transactional
    public Told patch(
            String id, Section section, String recordId, UnaryOperator<ObjectNode> patch, Precondition precondition) {
        return told(key(id), section, store.change(key(id), section, recordId, patch, precondition));
    }

    void delete(String id, Section section, String recordId, Precondition precondition) {
        store.delete(key(id), section, recordId, precondition);
    }

    /** With an id of the client's choice in the document, or one made here. */
    Told create(String id, Section section, ObjectNode document, IdempotentRequest request) {
        CollectionKey key = key(id);
        WrittenRecord written = idempotency.once(
                request, WrittenRecord.class, () -> store.create(key, section, idOf(document), document));
        return told(key, section, written);
    }

    private DoneWork done(CollectionKey key) {
        return new DoneWork(store.contents(key, EnumSet.of(Section.SERVICE_NOTES)));
    }

    private static String idOf(ObjectNode document) {
        return document.has("id")
                ? document.path("id").asString("")
                : UUID.randomUUID().toString();
    }

    private Told told(CollectionKey key, Section section, WrittenRecord written) {
        ObjectNode document = reader.tree(written.document());
        ObjectNode more = added.of(section, document, () -> done(key), null);
        document.setAll(more);
        return new Told(RecordTag.of(written.revision(), more), document, written.isNew());
    }

    private ObjectNode completed(CollectionKey key, Section section, ObjectNode document) {
        document.setAll(added.of(section, document, () -> done(key), null));
        return document;
    }
}
