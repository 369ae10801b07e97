package rasterfit.app.draft;

import java.math.BigDecimal;
import java.util.Collection;
import rasterfit.app.answer.Plain;
import rasterfit.gear.Estimate;
import rasterfit.quantity.Frequency;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Values as the gear document writes them. */
public final class DraftValue {
    static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private DraftValue() {}

    /** A string, number, truth, choice, frequency (an exact string), estimate, or a list of such; nodes as they are. */
    public static JsonNode of(Object value) {
        if (value instanceof JsonNode node) {
            return node;
        }
        if (value instanceof Integer number) {
            return NODES.numberNode(number);
        }
        if (value instanceof BigDecimal number) {
            return NODES.numberNode(number);
        }
        if (value instanceof Boolean truth) {
            return NODES.booleanNode(truth);
        }
        if (value instanceof Frequency frequency) {
            return NODES.stringNode(Plain.exact(frequency));
        }
        if (value instanceof Estimate estimate) {
            return estimate(estimate);
        }
        if (value instanceof Collection<?> elements) {
            ArrayNode list = NODES.arrayNode();
            elements.forEach(element -> list.add(of(element)));
            return list;
        }
        if (value instanceof Enum<?> choice) {
            return NODES.stringNode(choice.name());
        }
        return NODES.stringNode(value.toString());
    }

    /** An estimate of an exact quantity: strings. */
    static JsonNode exact(Estimate estimate) {
        return object(
                "least", estimate.least().toString(),
                "typical", estimate.typical().toString(),
                "greatest", estimate.greatest().toString());
    }

    /** An object of one or more members, given by name and value in turn. */
    public static ObjectNode object(Object... namesAndValues) {
        ObjectNode object = NODES.objectNode();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            object.set(namesAndValues[i].toString(), of(namesAndValues[i + 1]));
        }
        return object;
    }

    private static JsonNode estimate(Estimate estimate) {
        if (estimate.least().equals(estimate.greatest())) {
            return NODES.numberNode(Plain.of(estimate.typical()));
        }
        return object(
                "least", Plain.of(estimate.least()),
                "typical", Plain.of(estimate.typical()),
                "greatest", Plain.of(estimate.greatest()));
    }
}
