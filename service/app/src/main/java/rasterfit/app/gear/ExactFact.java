package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.Problems;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.annotation.JsonDeserialize;

/**
 * An exact quantity that is known, written as a string, or known only within a range, written {@code {least, typical?,
 * greatest}} with strings. Exactly one of the two members is present.
 */
@JsonDeserialize(using = ExactFact.Deserializer.class)
@Schema(oneOf = {String.class, ExactFact.ExactBounds.class})
public record ExactFact(@Nullable String value, @Nullable ExactBounds bounds) implements Alternatives {

    /** @param typical the middle of the range if absent */
    public record ExactBounds(String least, @Nullable String typical, String greatest) {}

    static final class Deserializer extends ValueDeserializer<ExactFact> {
        @Override
        public ExactFact deserialize(JsonParser parser, DeserializationContext context) {
            if (parser.currentToken() == JsonToken.VALUE_STRING) {
                return new ExactFact(parser.getString(), null);
            }
            if (parser.currentToken() == JsonToken.START_OBJECT) {
                return new ExactFact(null, context.readValue(parser, ExactBounds.class));
            }
            throw Problems.wrongType("", "an exact quantity as a string, or an object with least and greatest");
        }
    }
}
