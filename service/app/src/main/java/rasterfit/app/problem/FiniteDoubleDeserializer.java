package rasterfit.app.problem;

import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonParser;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.deser.std.StdScalarDeserializer;

/**
 * Reads a double from a JSON number only and refuses one beyond its range. The reader's own would turn {@code 1e999}
 * into infinity and accept the string {@code "NaN"}.
 */
final class FiniteDoubleDeserializer extends StdScalarDeserializer<Double> {

    private final boolean primitive;

    FiniteDoubleDeserializer(boolean primitive) {
        super(primitive ? Double.TYPE : Double.class);
        this.primitive = primitive;
    }

    @Override
    public Double deserialize(JsonParser parser, DeserializationContext context) {
        if (!parser.currentToken().isNumeric()) {
            throw Problems.wrongType("", "a number");
        }
        double value = parser.getDoubleValue();
        if (Double.isInfinite(value)) {
            throw Problems.outOfRange(
                    "", "The number is beyond the greatest that can be held.", Double.toString(Double.MAX_VALUE));
        }
        return value;
    }

    @Override
    public @Nullable Object getNullValue(DeserializationContext context) {
        return primitive ? context.reportInputMismatch(this, "a number is needed") : null;
    }
}
