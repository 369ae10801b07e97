package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.Problems;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.annotation.JsonDeserialize;

/**
 * A number that is known, written plainly, or known only within a range, written {@code {least, typical?, greatest}}.
 * Exactly one of the two members is present.
 */
@JsonDeserialize(using = NumberFact.Deserializer.class)
@Schema(oneOf = {BigDecimal.class, NumberFact.NumberBounds.class})
public record NumberFact(
        @Nullable BigDecimal value, @Nullable NumberBounds bounds) implements Alternatives {

    /** @param typical the middle of the range if absent */
    public record NumberBounds(BigDecimal least, @Nullable BigDecimal typical, BigDecimal greatest) {}

    static final class Deserializer extends ValueDeserializer<NumberFact> {
        @Override
        public NumberFact deserialize(JsonParser parser, DeserializationContext context) {
            JsonToken token = parser.currentToken();
            if (token == JsonToken.VALUE_NUMBER_INT || token == JsonToken.VALUE_NUMBER_FLOAT) {
                return new NumberFact(parser.getDecimalValue(), null);
            }
            if (token == JsonToken.START_OBJECT) {
                return new NumberFact(null, context.readValue(parser, NumberBounds.class));
            }
            throw Problems.wrongType("", "a number, or an object with least and greatest");
        }
    }
}
