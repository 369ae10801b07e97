package rasterfit.app.csv;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;

/**
 * One value as the text of a cell, and back.
 *
 * <p>An empty cell is an absent value, and {@code null} is null. A text that a spreadsheet could take for a formula, one that
 * begins with an apostrophe, the empty one and the word null get an apostrophe in front; reading takes it away.
 */
final class Cell {
    static final String EMPTY_OBJECT = "{}";
    static final String EMPTY_LIST = "[]";

    private static final char GUARD = '\'';
    private static final String NULL = "null";

    /** What makes spreadsheets see a formula (OWASP, "CSV Injection"), the full-width forms included. */
    private static final String FORMULA_STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    /** A number of RFC 8259 §6. */
    private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?([eE][+-]?\\d+)?");

    private static final int LONGEST_NUMBER = 100;

    private final ObjectMapper mapper;

    Cell(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    /** Why a cell cannot be read, for a person. */
    static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;

        Unreadable(String message) {
            super(message);
        }

        String told() {
            return String.valueOf(getMessage());
        }
    }

    /** Whether a value takes one cell; others are spread over cells of their own parts. */
    static boolean takesOne(JsonNode value) {
        return value.isValueNode()
                || value.isEmpty()
                || (value.isArray() && value.valueStream().allMatch(JsonNode::isValueNode));
    }

    /** The text for a value that takes one cell. */
    String of(JsonNode value) {
        if (value.isObject()) {
            return EMPTY_OBJECT;
        } else if (value instanceof ArrayNode list) {
            return ofList(list);
        }
        return value.isString() ? guarded(value.stringValue()) : value.isNull() ? NULL : plain(value);
    }

    private String ofList(ArrayNode list) {
        List<String> words = list.valueStream().map(Cell::plain).toList();
        boolean areWords = !words.isEmpty()
                && words.stream().allMatch(word -> !word.isEmpty() && !hasSpace(word))
                && !words.get(0).startsWith("[");
        return areWords ? guarded(String.join(" ", words)) : mapper.writeValueAsString(list);
    }

    private static boolean hasSpace(String word) {
        return word.codePoints().anyMatch(one -> Character.isWhitespace(one) || Character.isSpaceChar(one));
    }

    private static String plain(JsonNode scalar) {
        return scalar.isNumber() ? scalar.decimalValue().toPlainString() : scalar.asString();
    }

    private static String guarded(String text) {
        boolean isAtRisk = text.isEmpty()
                || text.equals(NULL)
                || text.charAt(0) == GUARD
                || FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
        return isAtRisk ? GUARD + text : text;
    }

    private static String unguarded(String cell) {
        return cell.charAt(0) == GUARD ? cell.substring(1) : cell;
    }

    /** The value that the text of a cell stands for where something of this shape belongs; never for an empty cell. */
    JsonNode read(String cell, Shape shape) throws Unreadable {
        if (cell.equals(NULL)) {
            return JsonNodeFactory.instance.nullNode();
        } else if (shape instanceof Shape.Choice choice) {
            return read(cell, choice.inOneCell());
        } else if (shape instanceof Shape.Scalar scalar) {
            return scalar == Shape.Scalar.TEXT
                    ? JsonNodeFactory.instance.stringNode(unguarded(cell))
                    : scalar(cell.strip(), scalar);
        } else if (shape instanceof Shape.Elements list && list.element() instanceof Shape.Scalar element) {
            return list(unguarded(cell).strip(), element);
        }
        boolean isList = shape instanceof Shape.Elements;
        String empty = isList ? EMPTY_LIST : EMPTY_OBJECT;
        if (!cell.strip().equals(empty)) {
            throw new Unreadable("Each value of it has a column of its own; only " + empty + " may stand here.");
        }
        return isList ? mapper.createArrayNode() : mapper.createObjectNode();
    }

    private JsonNode scalar(String cell, Shape.Scalar shape) throws Unreadable {
        switch (shape) {
            case TEXT -> {
                return JsonNodeFactory.instance.stringNode(cell);
            }
            case NUMBER -> {
                if (cell.length() > LONGEST_NUMBER || !NUMBER.matcher(cell).matches()) {
                    throw new Unreadable("Expected a number with a point, such as 240 or 0.5.");
                }
                return mapper.readTree(cell);
            }
            default -> {
                // Spreadsheets write these in capitals.
                return switch (cell.toLowerCase(Locale.ROOT)) {
                    case "true" -> JsonNodeFactory.instance.booleanNode(true);
                    case "false" -> JsonNodeFactory.instance.booleanNode(false);
                    default -> throw new Unreadable("Expected true or false.");
                };
            }
        }
    }

    private ArrayNode list(String cell, Shape.Scalar element) throws Unreadable {
        ArrayNode list = mapper.createArrayNode();
        if (cell.startsWith("[")) {
            for (JsonNode one : jsonList(cell)) {
                if (!fits(one, element)) {
                    throw new Unreadable("The list holds something of another type.");
                }
                list.add(one);
            }
            return list;
        }
        for (String word : cell.split(" +", -1)) {
            list.add(scalar(word, element));
        }
        return list;
    }

    private static boolean fits(JsonNode one, Shape.Scalar element) {
        return switch (element) {
            case TEXT -> one.isString();
            case NUMBER -> one.isNumber();
            case TRUTH -> one.isBoolean();
        };
    }

    private ArrayNode jsonList(String cell) throws Unreadable {
        @Nullable JsonNode read;
        try {
            read = mapper.readTree(cell);
        } catch (JacksonException malformed) {
            Unreadable unreadable = new Unreadable("Expected words with spaces between, or a list in JSON.");
            unreadable.initCause(malformed);
            throw unreadable;
        }
        if (read instanceof ArrayNode list) {
            return list;
        }
        throw new Unreadable("Expected words with spaces between, or a list in JSON.");
    }
}
