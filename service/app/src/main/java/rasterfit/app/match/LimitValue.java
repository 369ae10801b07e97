package rasterfit.app.match;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.Alternatives;
import rasterfit.app.problem.Problems;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.annotation.JsonDeserialize;

/** The value of a limit: a number, or a string (an exact quantity, an amount, a grade). Exactly one is present. */
@JsonDeserialize(using = LimitValue.Deserializer.class)
@Schema(oneOf = {BigDecimal.class, String.class})
record LimitValue(@Nullable BigDecimal number, @Nullable String text) implements Alternatives {
    static final class Deserializer extends ValueDeserializer<LimitValue> {
        @Override
        public LimitValue deserialize(JsonParser parser, DeserializationContext context) {
            JsonToken token = parser.currentToken();
            if (token == JsonToken.VALUE_STRING) {
                return new LimitValue(null, parser.getString());
            }
            if (token == JsonToken.VALUE_NUMBER_INT || token == JsonToken.VALUE_NUMBER_FLOAT) {
                return new LimitValue(parser.getDecimalValue(), null);
            }
            throw Problems.wrongType("", "a number or a string");
        }
    }
}
