package rasterfit.app.catalogue;

import java.util.Objects;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rasterfit.app.gear.ConverterBody;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.LinkBody;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.ProvenancePaths;
import rasterfit.app.gear.RequiredMembers;
import rasterfit.app.gear.SourceBody;
import rasterfit.app.problem.Problems;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Gear as it is written and stored. A document is valid if the engine's own types can be built from it; it is kept as it was
 * sent, without white space, so that what is read back is what was written.
 */
@Component
public class GearDocuments {
    private final ObjectMapper mapper;

    GearDocuments(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    record Document(Gear gear, String json) {}

    /**
     * Reads a document that a client wrote.
     *
     * @param id that of the address, which the document may repeat or leave out
     * @throws rasterfit.app.problem.ProblemException with every fault of the document
     */
    Document read(Kind kind, ObjectNode document, String id) {
        Faults faults = new Faults();
        Place root = Place.root(faults);
        root.member("id").slug(id);
        if (document.has("id") && !document.path("id").equals(document.stringNode(id))) {
            root.member("id").invalid("The id is that of the address, " + id + ", or absent.");
        }
        faults.throwIfAny();
        ObjectNode complete = document.has("id") ? document : withId(document, id);
        Gear gear = gear(kind, root, complete, ProvenancePaths::check);
        faults.throwIfAny();
        return new Document(Objects.requireNonNull(gear), mapper.writeValueAsString(complete));
    }

    /**
     * Looks whether a document could be written.
     *
     * @throws rasterfit.app.problem.ProblemException with every fault of the document
     */
    public void check(Kind kind, ObjectNode document) {
        read(kind, document, document.path("id").asString("draft"));
    }

    /** A stored document, which was valid by the rules of its day; paths of its provenance may lead nowhere. */
    Gear stored(ItemText item) {
        Faults faults = new Faults();
        Gear gear = gear(item.kind(), Place.root(faults), mapper.readTree(item.document()), (at, body) -> {});
        faults.throwIfAny();
        return Objects.requireNonNull(gear);
    }

    ObjectNode empty() {
        return mapper.createObjectNode();
    }

    ObjectNode tree(String json) {
        return (ObjectNode) mapper.readTree(json);
    }

    private static ObjectNode withId(ObjectNode document, String id) {
        ObjectNode complete = document.objectNode();
        complete.put("id", id);
        complete.setAll(document);
        return complete;
    }

    /** @param further what else a whole body is checked for */
    private @Nullable Gear gear(Kind kind, Place at, JsonNode document, BiConsumer<Place, Record> further) {
        return switch (kind) {
            case SOURCE -> {
                var source = GearReader.source(at, body(at, document, SourceBody.class, further), null);
                yield source == null ? null : new Gear.OfSource(source);
            }
            case DISPLAY -> {
                DisplayBody body = body(at, document, DisplayBody.class, further);
                var display = GearReader.display(at, body, null);
                yield display == null ? null : new Gear.OfDisplay(display, GearReader.price(at, body.price()));
            }
            case CONVERTER -> {
                var converter = GearReader.converter(at, body(at, document, ConverterBody.class, further), null);
                yield converter == null ? null : new Gear.OfConverter(converter);
            }
            case LINK -> {
                var link = GearReader.link(at, body(at, document, LinkBody.class, further), null);
                yield link == null ? null : new Gear.OfLink(link);
            }
        };
    }

    private <T extends Record> T body(Place at, JsonNode document, Class<T> type, BiConsumer<Place, Record> further) {
        T body;
        try {
            body = mapper.treeToValue(document, type);
        } catch (JacksonException unreadable) {
            throw Problems.unreadable(unreadable);
        }
        RequiredMembers.check(body);
        further.accept(at, body);
        return body;
    }
}
