package rasterfit.app.csv;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A part of a document that grows value by value, in the order of its members; elements of a list may come in any order. */
final class Branch {
    private final boolean isList;

    /** A value, or a part that grows. */
    private final Map<String, Object> parts = new LinkedHashMap<>();

    private Branch(boolean isList) {
        this.isList = isList;
    }

    static Branch root() {
        return new Branch(false);
    }

    /** A fault of a row as a whole, at a path. */
    record Misfit(String path, String message) {}

    /** Puts a value where its column belongs; tells if something else stands there. */
    @Nullable
    Misfit put(Column column, JsonNode value) {
        Branch at = this;
        int last = column.steps().size() - 1;
        for (int i = 0; i < last; i++) {
            boolean nextIsList = column.isElement().get(i + 1);
            Object next = at.parts.computeIfAbsent(column.steps().get(i), step -> new Branch(nextIsList));
            if (!(next instanceof Branch branch)) {
                return new Misfit(
                        column.name(),
                        "There is a value at " + String.join("/", column.steps().subList(0, i + 1)) + " already.");
            }
            at = branch;
        }
        Object before = at.parts.putIfAbsent(column.steps().get(last), value);
        return before == null
                ? null
                : new Misfit(column.name(), "There are values at " + column.name() + "/... already.");
    }

    /** The first list with a gap; null if there is none. */
    @Nullable
    Misfit gap(String path) {
        for (Map.Entry<String, Object> part : parts.entrySet()) {
            String at = Column.path(path, part.getKey());
            if (isList && Integer.parseInt(part.getKey()) >= parts.size()) {
                return new Misfit(at, "An element of the list in front of this one is absent.");
            }
            Misfit deeper = part.getValue() instanceof Branch branch ? branch.gap(at) : null;
            if (deeper != null) {
                return deeper;
            }
        }
        return null;
    }

    /** Of an object without gaps. */
    ObjectNode object() {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        parts.forEach((name, part) -> object.set(name, node(part)));
        return object;
    }

    private ArrayNode list() {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        for (int i = 0; i < parts.size(); i++) {
            list.add(node(Objects.requireNonNull(parts.get(Integer.toString(i)))));
        }
        return list;
    }

    private static JsonNode node(Object part) {
        if (part instanceof Branch branch) {
            return branch.isList ? branch.list() : branch.object();
        }
        return (JsonNode) part;
    }
}
