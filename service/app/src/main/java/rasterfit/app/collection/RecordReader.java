package rasterfit.app.collection;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.springframework.stereotype.Component;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.RequiredMembers;
import rasterfit.app.problem.Problems;
import rasterfit.gear.Catalogue;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads collections and their records, as clients write them and as they are stored. */
@Component
class RecordReader {
    private final ObjectMapper mapper;

    RecordReader(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    /** @param ports that a connection holds; empty for all else */
    record ReadRecord(String json, Set<PortUse> ports) {}

    /**
     * Reads a record that a client wrote.
     *
     * @throws rasterfit.app.problem.ProblemException with every fault of it
     */
    ReadRecord read(Section section, String id, ObjectNode document, Contents contents, Catalogue catalogue) {
        ObjectNode kept = document.deepCopy();
        section.addedMembers().forEach(kept::remove);
        Faults faults = new Faults();
        Place root = Place.root(faults);
        ObjectNode complete = identified(root, kept, id);
        faults.throwIfAny();
        Record body = body(complete, section.bodyType());
        Set<PortUse> ports = Set.of();
        if (body instanceof OwnItemBody item) {
            new ItemReader(catalogue).read(root, id, item, contents.items().get(id));
        } else if (body instanceof ConnectionBody connection) {
            ports = new ConnectionReader(contents).read(root, connection);
        } else if (body instanceof LagReadingBody reading) {
            new FindingsReader(contents).check(root, reading);
        } else if (body instanceof TestResultBody test) {
            new FindingsReader(contents).check(root, test);
        } else if (body instanceof ServiceNoteBody note) {
            new UpkeepReader(contents).note(root, note);
        } else if (body instanceof DueBody due) {
            new UpkeepReader(contents).due(root, due);
        }
        faults.throwIfAny();
        return new ReadRecord(mapper.writeValueAsString(complete), ports);
    }

    /** Reads the body of a collection itself. */
    String collection(String id, ObjectNode document) {
        Faults faults = new Faults();
        Place root = Place.root(faults);
        ObjectNode complete = identified(root, document, id);
        faults.throwIfAny();
        CollectionBody body = body(complete, CollectionBody.class);
        root.member("name").text(body.name());
        root.member("note").optionalText(body.note());
        faults.throwIfAny();
        return mapper.writeValueAsString(complete);
    }

    /** Everything that is stored of a collection. */
    Contents contents(List<RecordText> records, Catalogue catalogue) {
        Contents contents = Contents.empty();
        Place nowhere = Place.root(new Faults());
        for (RecordText text : records) {
            Record body = body(mapper.readTree(text.document()), text.section().bodyType());
            if (body instanceof OwnItemBody item) {
                OwnItem own = new ItemReader(catalogue).item(nowhere, text.id(), item);
                if (own != null) {
                    contents.items().put(text.id(), own);
                }
            } else if (body instanceof ConnectionBody connection) {
                contents.connections().put(text.id(), connection);
            } else if (body instanceof LagReadingBody reading) {
                contents.readings().put(text.id(), reading);
            } else if (body instanceof TestResultBody test) {
                contents.tests().put(text.id(), test);
            } else if (body instanceof ServiceNoteBody note) {
                contents.notes().put(text.id(), note);
            } else if (body instanceof DueBody due) {
                contents.due().put(text.id(), due);
            }
        }
        return contents;
    }

    /** An item that was sound when it was written. */
    OwnItem item(String json, Catalogue catalogue) {
        ObjectNode document = tree(json);
        String id = document.path("id").asString();
        return Objects.requireNonNull(
                new ItemReader(catalogue).item(Place.root(new Faults()), id, stored(document, OwnItemBody.class)));
    }

    /** A record as it was written when it was sound. */
    <T extends Record> T stored(ObjectNode document, Class<T> type) {
        return body(document, type);
    }

    /** A collection with an array for each of its sections. */
    ObjectNode whole(String collection, List<RecordText> records) {
        ObjectNode document = tree(collection);
        Map<Section, ArrayNode> arrays = new EnumMap<>(Section.class);
        for (Section section : Section.values()) {
            arrays.put(section, document.putArray(section.path()));
        }
        records.forEach(
                text -> Objects.requireNonNull(arrays.get(text.section())).add(tree(text.document())));
        return document;
    }

    ObjectNode tree(String json) {
        return (ObjectNode) mapper.readTree(json);
    }

    /** With the id in front, whether the client repeated it or not. */
    private static ObjectNode identified(Place root, ObjectNode document, String id) {
        root.member("id").slug(id);
        if (document.has("id") && !document.path("id").equals(document.stringNode(id))) {
            root.member("id").invalid("The id is that of the address, " + id + ", or absent.");
        }
        ObjectNode complete = document.objectNode();
        complete.put("id", id);
        document.properties().stream()
                .filter(member -> !member.getKey().equals("id"))
                .forEach(member -> complete.set(member.getKey(), member.getValue()));
        return complete;
    }

    private <T extends Record> T body(JsonNode document, Class<T> type) {
        T body;
        try {
            body = mapper.treeToValue(document, type);
        } catch (JacksonException unreadable) {
            throw Problems.unreadable(unreadable);
        }
        RequiredMembers.check(body);
        return body;
    }
}
