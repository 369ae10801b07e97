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

/** A measured plain number, like {@link MeasuredQuantity}. Exactly one of the two members is present. */
@JsonDeserialize(using = MeasuredNumber.Deserializer.class)
@Schema(oneOf = {BigDecimal.class, MeasuredNumber.NumberReading.class})
record MeasuredNumber(@Nullable BigDecimal plain, @Nullable NumberReading reading) implements Alternatives {

    /**
     * Either {@code value} and {@code tolerancePpm}, or {@code least} and {@code greatest}.
     *
     * @param tolerancePpm to either side, in millionths of the value
     */
    record NumberReading(
            @Nullable BigDecimal value,
            @Nullable BigDecimal tolerancePpm,
            @Nullable BigDecimal least,
            @Nullable BigDecimal greatest) {}

    static final class Deserializer extends ValueDeserializer<MeasuredNumber> {
        @Override
        public MeasuredNumber deserialize(JsonParser parser, DeserializationContext context) {
            JsonToken token = parser.currentToken();
            if (token == JsonToken.VALUE_NUMBER_INT || token == JsonToken.VALUE_NUMBER_FLOAT) {
                return new MeasuredNumber(parser.getDecimalValue(), null);
            }
            if (token == JsonToken.START_OBJECT) {
                return new MeasuredNumber(null, context.readValue(parser, NumberReading.class));
            }
            throw Problems.wrongType(
                    "", "a number, or an object with value and tolerancePpm, or with least and greatest");
        }
    }
}
