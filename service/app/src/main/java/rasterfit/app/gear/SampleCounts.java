package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.Problems;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.JavaType;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.annotation.JsonDeserialize;

/** Samples per line: any from {@code min} to {@code max}, or those of a list. Exactly one of the two is present. */
@JsonDeserialize(using = SampleCounts.Deserializer.class)
@Schema(oneOf = {CountRange.class, BigDecimal[].class})
public record SampleCounts(
        @Nullable CountRange range, @Nullable List<BigDecimal> values) implements Alternatives {

    static final class Deserializer extends ValueDeserializer<SampleCounts> {
        @Override
        public SampleCounts deserialize(JsonParser parser, DeserializationContext context) {
            if (parser.currentToken() == JsonToken.START_OBJECT) {
                return new SampleCounts(context.readValue(parser, CountRange.class), null);
            }
            if (parser.currentToken() == JsonToken.START_ARRAY) {
                return new SampleCounts(null, context.readValue(parser, listOfNumbers(context)));
            }
            throw Problems.wrongType("", "an object with min and max, or a list of whole numbers");
        }

        private static JavaType listOfNumbers(DeserializationContext context) {
            return context.getTypeFactory().constructType(new TypeReference<List<BigDecimal>>() {});
        }
    }
}
