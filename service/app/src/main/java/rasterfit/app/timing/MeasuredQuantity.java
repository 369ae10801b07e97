package rasterfit.app.timing;

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

/**
 * A measured exact quantity: a string, whose tolerance is then assumed, or an object with a tolerance or a range. Exactly
 * one of the two members is present.
 */
@JsonDeserialize(using = MeasuredQuantity.Deserializer.class)
@Schema(oneOf = {String.class, MeasuredQuantity.QuantityReading.class})
record MeasuredQuantity(@Nullable String plain, @Nullable QuantityReading reading) implements Alternatives {

    /**
     * Either {@code value} and {@code tolerancePpm}, or {@code least} and {@code greatest}.
     *
     * @param tolerancePpm to either side, in millionths of the value
     */
    record QuantityReading(
            @Nullable String value,
            @Nullable BigDecimal tolerancePpm,
            @Nullable String least,
            @Nullable String greatest) {}

    static final class Deserializer extends ValueDeserializer<MeasuredQuantity> {
        @Override
        public MeasuredQuantity deserialize(JsonParser parser, DeserializationContext context) {
            if (parser.currentToken() == JsonToken.VALUE_STRING) {
                return new MeasuredQuantity(parser.getString(), null);
            }
            if (parser.currentToken() == JsonToken.START_OBJECT) {
                return new MeasuredQuantity(null, context.readValue(parser, QuantityReading.class));
            }
            throw Problems.wrongType(
                    "",
                    "an exact quantity as a string, or an object with value and tolerancePpm, or with least and greatest");
        }
    }
}
