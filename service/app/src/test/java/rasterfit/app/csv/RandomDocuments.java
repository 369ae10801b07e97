package rasterfit.app.csv;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import rasterfit.app.gear.Alternatives;
import rasterfit.app.gear.WrittenName;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Documents that a record can hold, made by chance: any member may be absent, members come in any order, texts are nasty. They
 * are more than the service takes (it wants known connectors and sensible rates), never less.
 */
final class RandomDocuments {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** What tables, spreadsheets and lists in one cell stumble over. */
    private static final List<String> NASTY = List.of(
            "",
            " ",
            "'",
            "''",
            "'x",
            "null",
            "[]",
            "{}",
            "[1]",
            "[\"a\"]",
            "true",
            "0",
            "1.50",
            "59062500/11",
            "4:3",
            "a b",
            " a",
            "a ",
            "a  b",
            "a,b",
            "a;b",
            "\"",
            "\"\"",
            "a\"b",
            "a\nb",
            "a\r\nb",
            "\r",
            "\n",
            "\t",
            "=1+1",
            "+1",
            "-1",
            "@SUM(A1)",
            "\tx",
            "\rx",
            "\uFF1D1",
            "\uFEFF",
            "\uFEFFid",
            "\u00A0",
            "\u2028",
            "\u00E4\u20AC\uD83D\uDE00",
            "#order",
            "a/b~c",
            "\\",
            "\\N");

    private static final String CHARACTERS = "abz09 ,;\"'=+-@\n\r\t/[]{}";

    private static final List<String> NUMBERS =
            List.of("0", "1", "-1", "1500", "1500.0", "0.50", "0.0000001", "-0.5", "12345678901234567890.123");

    private final Random random;

    RandomDocuments(long seed) {
        this.random = new Random(seed);
    }

    ObjectNode of(Class<?> type) {
        ObjectNode document = object(members(type));
        if (!document.has("id")) {
            document.put("id", text());
        }
        return document;
    }

    private JsonNode value(Type type) {
        if (random.nextInt(60) == 0) {
            return NODES.nullNode();
        }
        if (type instanceof ParameterizedType list) {
            ArrayNode elements = NODES.arrayNode();
            for (int i = random.nextInt(4); i > 0; i--) {
                elements.add(element(list.getActualTypeArguments()[0]));
            }
            return elements;
        }
        return element(type);
    }

    /** Lists hold no null. */
    private JsonNode element(Type type) {
        Class<?> plain = (Class<?>) type;
        if (plain == BigDecimal.class) {
            String number = NUMBERS.get(random.nextInt(NUMBERS.size()));
            return number.contains(".")
                    ? NODES.numberNode(new BigDecimal(number))
                    : NODES.numberNode(Long.parseLong(number));
        } else if (plain == Boolean.class) {
            return NODES.booleanNode(random.nextBoolean());
        } else if (plain == String.class || plain.isEnum() || plain == LocalDate.class) {
            return NODES.stringNode(text());
        } else if (Alternatives.class.isAssignableFrom(plain)) {
            RecordComponent[] forms = plain.getRecordComponents();
            return form(forms[random.nextInt(forms.length)].getGenericType());
        } else if (plain.isRecord()) {
            return object(members(plain));
        }
        return ofSomeKind(plain);
    }

    /** Of values with several forms, an object is never empty: its members are required. */
    private JsonNode form(Type type) {
        JsonNode value = type instanceof ParameterizedType list ? value(list) : element(type);
        if (value instanceof ObjectNode object && object.isEmpty()) {
            RecordComponent first = ((Class<?>) type).getRecordComponents()[0];
            object.set(WrittenName.of(first), element(first.getGenericType()));
        }
        return value;
    }

    private ObjectNode ofSomeKind(Class<?> type) {
        JsonSubTypes.Type[] kinds = type.getAnnotation(JsonSubTypes.class).value();
        JsonSubTypes.Type kind = kinds[random.nextInt(kinds.length)];
        Map<String, Type> members = members(kind.value());
        ObjectNode object = object(members);
        object.put("kind", kind.name());
        return object;
    }

    private static Map<String, Type> members(Class<?> type) {
        Map<String, Type> members = new LinkedHashMap<>();
        for (RecordComponent component : type.getRecordComponents()) {
            members.put(WrittenName.of(component), component.getGenericType());
        }
        return members;
    }

    private ObjectNode object(Map<String, Type> members) {
        List<String> names = new ArrayList<>(members.keySet());
        if (random.nextInt(3) == 0) {
            Collections.shuffle(names, random);
        }
        ObjectNode object = NODES.objectNode();
        for (String name : names) {
            if (random.nextInt(3) > 0) {
                object.set(name, value(members.get(name)));
            }
        }
        return object;
    }

    private String text() {
        if (random.nextBoolean()) {
            return NASTY.get(random.nextInt(NASTY.size()));
        }
        StringBuilder text = new StringBuilder();
        for (int i = random.nextInt(8); i >= 0; i--) {
            text.append(CHARACTERS.charAt(random.nextInt(CHARACTERS.length())));
        }
        return text.toString();
    }
}
