package rasterfit.app.transfer;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.ProblemError;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.databind.ObjectMapper;

/**
 * Finds the lines of faulty values in a JSON document, by reading it once more: only then is it known which are wanted. What
 * is absent is told with the line of the value that it is absent from.
 */
final class JsonPlaces {
    private final Set<String> wanted = new HashSet<>();
    private final Map<String, TokenStreamLocation> found = new HashMap<>();

    private JsonPlaces(List<ProblemError> errors) {
        for (ProblemError error : errors) {
            for (String pointer = pointer(error); pointer != null; pointer = outer(pointer)) {
                wanted.add(pointer);
            }
        }
    }

    /** The same errors with lines, columns and fields. */
    static List<ProblemError> placed(List<ProblemError> errors, SentText text, ObjectMapper mapper) {
        JsonPlaces places = new JsonPlaces(errors);
        try (Reader reader = text.characters();
                JsonParser parser = mapper.createParser(reader)) {
            parser.nextToken();
            places.look(parser, "");
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the body of an import was put aside and cannot be read", unreadable);
        }
        return errors.stream().map(places::placed).toList();
    }

    /** Notes the value at which the parser stands, and goes into it if something in it is wanted. */
    private void look(JsonParser parser, String pointer) {
        if (!wanted.contains(pointer)) {
            parser.skipChildren();
            return;
        }
        found.put(pointer, parser.currentTokenLocation());
        if (parser.currentToken() == JsonToken.START_OBJECT) {
            while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
                String name = parser.currentName().replace("~", "~0").replace("/", "~1");
                parser.nextToken();
                look(parser, pointer + "/" + name);
            }
        } else if (parser.currentToken() == JsonToken.START_ARRAY) {
            for (int index = 0; parser.nextToken() != JsonToken.END_ARRAY; index++) {
                look(parser, pointer + "/" + index);
            }
        }
    }

    private ProblemError placed(ProblemError error) {
        TokenStreamLocation place = null;
        for (String pointer = pointer(error); place == null && pointer != null; pointer = outer(pointer)) {
            place = found.get(pointer);
        }
        return at(error, place);
    }

    /** The same error with its place. */
    static ProblemError at(ProblemError error, @Nullable TokenStreamLocation place) {
        return ProblemError.inText(
                error.pointer(),
                error.message(),
                error.limit(),
                place == null ? null : (long) place.getLineNr(),
                place == null ? null : place.getColumnNr(),
                field(pointer(error)));
    }

    /** The path within the item: without kind and number. */
    private static @Nullable String field(@Nullable String pointer) {
        String path = pointer == null ? "" : pointer;
        String field = path.replaceFirst("^/(sources|displays|converters|links)(/\\d+(/|$)|$)", "")
                .replaceFirst("^/", "");
        return field.isEmpty() ? null : field;
    }

    private static @Nullable String pointer(ProblemError error) {
        return error.pointer();
    }

    private static @Nullable String outer(String pointer) {
        return pointer.isEmpty() ? null : pointer.substring(0, pointer.lastIndexOf('/'));
    }
}
