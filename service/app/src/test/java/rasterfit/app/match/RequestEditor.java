package rasterfit.app.match;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Applies edits; values to borrow come from a number of documents. */
final class RequestEditor {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** A value in its container: a member of an object, or an element of the list that stands under the name. */
    private record Spot(JsonNode container, String name, int index) {
        JsonNode value() {
            return container.isObject() ? container.get(name) : container.get(index);
        }

        void put(JsonNode value) {
            if (container instanceof ObjectNode object) {
                object.set(name, value);
            } else {
                ((ArrayNode) container).set(index, value);
            }
        }

        void remove() {
            if (container instanceof ObjectNode object) {
                object.remove(name);
            } else {
                ((ArrayNode) container).remove(index);
            }
        }
    }

    private final Map<String, List<JsonNode>> valuesByName = new LinkedHashMap<>();

    RequestEditor(List<ObjectNode> requests, JsonNode gear) {
        List<Spot> spots = new ArrayList<>();
        requests.forEach(request -> collect(request, "", spots));
        collect(gear, "", spots);
        for (Spot spot : spots) {
            valuesByName.computeIfAbsent(spot.name(), name -> new ArrayList<>()).add(spot.value());
        }
    }

    void apply(Edit edit, ObjectNode request) {
        List<Spot> spots = new ArrayList<>();
        collect(request, "", spots);
        if (spots.isEmpty()) {
            return;
        }
        Spot spot = chosen(spots, edit.place());
        switch (edit.change()) {
            case REMOVE -> spot.remove();
            case TEXT -> spot.put(NODES.stringNode(edit.text()));
            case NUMBER -> spot.put(NODES.numberNode(BigDecimal.valueOf(edit.number(), edit.scale())));
            case EXACT -> spot.put(NODES.stringNode(exact(edit)));
            case BORROW -> borrow(spot, edit.choice());
            case ADD -> add(spot, edit.choice());
            case REPEAT -> repeat(spot);
        }
    }

    private static String exact(Edit edit) {
        return edit.choice() > 0
                ? edit.number() + "/" + edit.choice()
                : BigDecimal.valueOf(edit.number(), edit.scale()).toPlainString();
    }

    private void borrow(Spot spot, int choice) {
        List<JsonNode> values = valuesByName.get(spot.name());
        if (values != null) {
            spot.put(chosen(values, choice).deepCopy());
        }
    }

    private void add(Spot spot, int choice) {
        if (!(spot.value() instanceof ObjectNode object)) {
            return;
        }
        List<Map.Entry<String, JsonNode>> absent = new ArrayList<>();
        for (JsonNode other : valuesByName.getOrDefault(spot.name(), List.of())) {
            other.properties().stream()
                    .filter(member -> !object.has(member.getKey()))
                    .forEach(absent::add);
        }
        if (!absent.isEmpty()) {
            Map.Entry<String, JsonNode> member = chosen(absent, choice);
            object.set(member.getKey(), member.getValue().deepCopy());
        }
    }

    private static void repeat(Spot spot) {
        if (spot.container() instanceof ArrayNode list) {
            list.add(spot.value().deepCopy());
        }
    }

    private static void collect(JsonNode container, String name, List<Spot> spots) {
        if (container instanceof ObjectNode object) {
            for (Map.Entry<String, JsonNode> member : object.properties()) {
                spots.add(new Spot(container, member.getKey(), 0));
                collect(member.getValue(), member.getKey(), spots);
            }
        } else if (container instanceof ArrayNode list) {
            for (int i = 0; i < list.size(); i++) {
                spots.add(new Spot(container, name, i));
                collect(list.get(i), name, spots);
            }
        }
    }

    private static <T> T chosen(List<T> all, int number) {
        return all.get(Math.floorMod(number, all.size()));
    }
}
