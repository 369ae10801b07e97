package rasterfit.app.collection;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.access.Callers;
import rasterfit.app.answer.Page;
import rasterfit.app.collection.StoredCollection.CollectionKey;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.Place;
import rasterfit.app.idempotency.Idempotency;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.problem.Problems;
import rasterfit.app.resource.PageRequest;
import rasterfit.app.resource.Precondition;
import rasterfit.upkeep.Caution;
import rasterfit.upkeep.InputReading;
import rasterfit.upkeep.LagStatistics;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The caller's collections: what is stored, and what answers add to it. */
@Service
class CollectionService {
    private final CollectionStore store;
    private final RecordReader reader;
    private final Idempotency idempotency;
    private final Callers callers;
    private final ObjectMapper mapper;
    private final Clock clock;

    CollectionService(
            CollectionStore store,
            RecordReader reader,
            Idempotency idempotency,
            Callers callers,
            ObjectMapper mapper,
            Clock clock) {
        this.store = store;
        this.reader = reader;
        this.idempotency = idempotency;
        this.callers = callers;
        this.mapper = mapper;
        this.clock = clock;
    }

    /** As it is answered. */
    record Told(long revision, ObjectNode document, boolean isNew) {}

    /** What was created, with the id that it was given. */
    record Created(String id, long revision) {}

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
        return new Told(stored.changedIn(), reader.tree(stored.document()), false);
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

    private Told told(CollectionStore.WrittenRecord written) {
        return new Told(written.revision(), reader.tree(written.document()), written.isNew());
    }

    /** A collection and all its records as one document, as of one moment. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Told export(String id) {
        CollectionKey key = key(id);
        StoredCollection stored = store.collection(key);
        ObjectNode document = reader.tree(stored.document());
        for (Section section : Section.values()) {
            ArrayNode records = document.putArray(section.path());
            store.all(key).stream()
                    .filter(text -> text.section() == section)
                    .forEach(text -> records.add(reader.tree(text.document())));
        }
        return new Told(stored.revision(), document, false);
    }

    @Transactional(readOnly = true)
    public Page<ObjectNode> records(String id, Section section, PageRequest part, @Nullable LocalDate asOf) {
        CollectionKey key = key(id);
        Page<StoredRecord> page = part.page(
                store.list(key, section, part), record -> record.getId().id(), record -> record);
        Contents contents = contents(key, section);
        List<ObjectNode> items = page.items().stream()
                .map(record -> completed(section, record.getId().id(), reader.tree(record.document()), contents, asOf))
                .toList();
        return new Page<>(items, page.next());
    }

    /** All work that is still to be done, the earliest first. */
    @Transactional(readOnly = true)
    public Page<ObjectNode> due(String id, @Nullable LocalDate asOf) {
        CollectionKey key = key(id);
        store.collection(key);
        Contents contents = store.contents(key);
        return new Page<>(
                store.all(key).stream()
                        .filter(text -> text.section() == Section.DUE)
                        .map(text -> completed(Section.DUE, text.id(), reader.tree(text.document()), contents, asOf))
                        .filter(one -> one.has("nextOn"))
                        .sorted(Comparator.<ObjectNode, String>comparing(
                                        one -> one.path("nextOn").asString())
                                .thenComparing(one -> one.path("id").asString()))
                        .toList(),
                null);
    }

    @Transactional(readOnly = true)
    public Told record(String id, Section section, String recordId) {
        CollectionKey key = key(id);
        StoredRecord stored = store.record(key, section, recordId);
        return completed(key, section, recordId, stored.revision(), stored.document(), false);
    }

    @Transactional
    public Told put(String id, Section section, String recordId, ObjectNode document, Precondition precondition) {
        return told(id, section, recordId, store.put(key(id), section, recordId, document, precondition));
    }

    @Transactional
    public Told patch(
            String id, Section section, String recordId, UnaryOperator<ObjectNode> patch, Precondition precondition) {
        return told(id, section, recordId, store.change(key(id), section, recordId, patch, precondition));
    }

    void delete(String id, Section section, String recordId, Precondition precondition) {
        store.delete(key(id), section, recordId, precondition);
    }

    /** With an id of the client's choice in the document, or one made here. */
    Created create(ObjectNode document, IdempotentRequest request) {
        return idempotency.once(request, Created.class, () -> {
            String id = idOf(document);
            return new Created(id, store.create(key(id), document).revision());
        });
    }

    private static String idOf(ObjectNode document) {
        return document.has("id")
                ? document.path("id").asString("")
                : UUID.randomUUID().toString();
    }

    /** With an id of the client's choice in the document, or one made here. */
    Created create(String id, Section section, ObjectNode document, IdempotentRequest request) {
        return idempotency.once(request, Created.class, () -> {
            String recordId = idOf(document);
            return new Created(
                    recordId, store.create(key(id), section, recordId, document).revision());
        });
    }

    private Told told(String id, Section section, String recordId, CollectionStore.WrittenRecord written) {
        return completed(key(id), section, recordId, written.revision(), written.document(), written.isNew());
    }

    private Told completed(
            CollectionKey key, Section section, String recordId, long revision, String document, boolean isNew) {
        ObjectNode told = completed(section, recordId, reader.tree(document), contents(key, section), null);
        return new Told(revision, told, isNew);
    }

    /** Only where answers add something that depends on the rest. */
    private Contents contents(CollectionKey key, Section section) {
        return section == Section.LAG_READINGS || section == Section.DUE ? store.contents(key) : Contents.empty();
    }

    private ObjectNode completed(
            Section section, String id, ObjectNode document, Contents contents, @Nullable LocalDate asOf) {
        if (section == Section.LAG_READINGS) {
            LagReadingBody body = contents.readings().get(id);
            InputReading reading =
                    body == null ? null : new FindingsReader(contents).reading(Place.root(new Faults()), body);
            if (reading != null) {
                LagStatistics statistics = LagStatistics.of(reading.measurement());
                document.set("statistics", mapper.valueToTree(LagStatisticsAnswer.of(statistics)));
            }
        } else if (section == Section.DUE) {
            DueBody body = contents.due().get(id);
            if (body == null) {
                throw Problems.notFound(section.noun() + " \"" + id + "\"");
            }
            LocalDate today = asOf == null ? LocalDate.now(clock.withZone(ZoneOffset.UTC)) : asOf;
            new UpkeepReader(contents).next(body).ifPresent(next -> {
                document.put("nextOn", next.toString());
                document.put("overdue", next.isBefore(today));
            });
            List<String> cautions =
                    body.work().cautions().stream().map(Caution::text).toList();
            if (!cautions.isEmpty()) {
                ArrayNode told = document.putArray("cautions");
                cautions.forEach(told::add);
            }
        }
        return document;
    }
}
