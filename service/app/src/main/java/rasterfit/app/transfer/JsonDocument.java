package rasterfit.app.transfer;

import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.Problems;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.ObjectReader;
import tools.jackson.databind.node.ObjectNode;

/** The gear document in JSON, read item by item: never as a whole, which would take ten times its size. */
final class JsonDocument {
    private final ObjectMapper mapper;
    private final ObjectReader oneValue;
    private final ItemCollector collector;

    JsonDocument(ObjectMapper mapper, ItemCollector collector) {
        this.mapper = mapper;
        // More of the document follows each item.
        this.oneValue = mapper.reader().without(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
        this.collector = collector;
    }

    /** @throws ProblemException for text that is no JSON; faults of items go to the collector */
    void read(Reader in) {
        try (JsonParser parser = mapper.createParser(in)) {
            JsonToken first = parser.nextToken();
            if (first == null) {
                throw new ProblemException(ProblemType.MISSING_BODY, "The request needs a body and has none.");
            } else if (first != JsonToken.START_OBJECT) {
                throw Problems.wrongType("", "an object");
            }
            members(parser);
            if (parser.nextToken() != null) {
                throw new ProblemException(
                        ProblemType.MALFORMED_JSON, "The body holds something after the end of its JSON value.");
            }
        } catch (JacksonException unreadable) {
            throw placed(unreadable);
        }
    }

    private static ProblemException placed(JacksonException unreadable) {
        if (unreadable.getCause() instanceof CharacterCodingException) {
            return new ProblemException(ProblemType.MALFORMED_JSON, "The text is not in UTF-8.");
        }
        ProblemException problem = Problems.unreadable(unreadable);
        TokenStreamLocation place = unreadable.getLocation();
        if (place == null || place.getLineNr() < 1) {
            return problem;
        }
        List<ProblemError> errors =
                problem.errors().isEmpty() ? List.of(ProblemError.at("", problem.detail())) : problem.errors();
        return new ProblemException(
                problem.type(),
                problem.detail(),
                errors.stream().map(error -> JsonPlaces.at(error, place)).toList());
    }

    private void members(JsonParser parser) {
        boolean hasFormat = false;
        while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
            String name = parser.currentName();
            JsonToken value = parser.nextToken();
            Optional<Kind> kind = Kind.ofPath(name);
            if (name.equals("format")) {
                hasFormat = true;
                format(value == JsonToken.VALUE_STRING ? parser.getString() : "");
                parser.skipChildren();
            } else if (kind.isEmpty()) {
                fault(
                        ProblemType.UNKNOWN_MEMBER,
                        escaped(name),
                        "Unknown member \"" + name + "\"; known here: format, " + kinds() + ".");
                parser.skipChildren();
            } else if (value != JsonToken.START_ARRAY) {
                fault(ProblemType.WRONG_TYPE, "/" + name, "Expected an array.");
                parser.skipChildren();
            } else {
                items(parser, kind.get());
            }
        }
        if (!hasFormat) {
            fault(ProblemType.MISSING_MEMBER, "/format", "This member is required.");
        }
    }

    private void format(String written) {
        if (!written.equals(CatalogueBody.FORMAT)) {
            fault(ProblemType.UNKNOWN_VALUE, "/format", "The format is " + CatalogueBody.FORMAT + ".");
        }
    }

    private void items(JsonParser parser, Kind kind) {
        int index = 0;
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            String pointer = "/" + kind.path() + "/" + index;
            if (parser.currentToken() == JsonToken.START_OBJECT) {
                long line = parser.currentTokenLocation().getLineNr();
                ObjectNode item = (ObjectNode) oneValue.readTree(new OneItem(parser, pointer));
                collector.add(kind, item, pointer, line);
            } else {
                collector.count();
                fault(ProblemType.WRONG_TYPE, pointer, "Expected an object.");
                parser.skipChildren();
            }
            index++;
        }
    }

    private void fault(ProblemType type, String pointer, String message) {
        collector.faults().add(type, ProblemError.at(pointer, message));
    }

    private static String kinds() {
        return Arrays.stream(Kind.values()).map(Kind::path).collect(Collectors.joining(", "));
    }

    private static String escaped(String name) {
        return "/" + name.replace("~", "~0").replace("/", "~1");
    }
}
