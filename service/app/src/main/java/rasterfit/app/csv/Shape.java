package rasterfit.app.csv;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import rasterfit.app.gear.Alternatives;
import rasterfit.app.gear.WrittenName;

/**
 * What may stand at a place of a document. A cell of a table does not say whether {@code 240} is a number or a text; the
 * record that the document is read into does.
 */
sealed interface Shape {
    /** What stands behind one more step of a path; empty where there is no such step. */
    Optional<Shape> step(String name);

    /** What is written into one cell, with its own type. */
    enum Scalar implements Shape {
        TEXT,
        NUMBER,
        TRUTH;

        @Override
        public Optional<Shape> step(String name) {
            return Optional.empty();
        }
    }

    /** An object. */
    record Members(Map<String, Shape> members) implements Shape {
        @Override
        public Optional<Shape> step(String name) {
            return Optional.ofNullable(members.get(name));
        }
    }

    /** A list. */
    record Elements(Shape element) implements Shape {
        @Override
        public Optional<Shape> step(String name) {
            return name.matches("0|[1-9]\\d{0,4}") ? Optional.of(element) : Optional.empty();
        }
    }

    /** A value of several forms, of which one at most is an object. */
    record Choice(List<Shape> forms) implements Shape {
        @Override
        public Optional<Shape> step(String name) {
            return forms.stream()
                    .filter(form -> form instanceof Members)
                    .flatMap(form -> form.step(name).stream())
                    .findFirst();
        }

        /** The form that is written into one cell. */
        Shape inOneCell() {
            return forms.stream()
                    .filter(form -> !(form instanceof Members))
                    .findFirst()
                    .orElseThrow();
        }
    }

    /** The shape of a value of a type that stands in the record of a document. */
    static Shape of(Type type) {
        if (type instanceof ParameterizedType list
                && list.getRawType() instanceof Class<?> raw
                && Collection.class.isAssignableFrom(raw)) {
            return new Elements(of(list.getActualTypeArguments()[0]));
        }
        if (!(type instanceof Class<?> plain)) {
            throw new IllegalArgumentException("no table can hold a " + type);
        }
        if (plain == String.class || plain.isEnum() || plain == LocalDate.class) {
            return Scalar.TEXT;
        } else if (plain == BigDecimal.class) {
            return Scalar.NUMBER;
        } else if (plain == Boolean.class) {
            return Scalar.TRUTH;
        } else if (Alternatives.class.isAssignableFrom(plain)) {
            return new Choice(Stream.of(plain.getRecordComponents())
                    .map(component -> of(component.getGenericType()))
                    .toList());
        } else if (plain.isRecord()) {
            return new Members(members(plain));
        } else if (plain.isAnnotationPresent(JsonSubTypes.class)) {
            return new Members(membersOfAllKinds(plain));
        }
        throw new IllegalArgumentException("no table can hold a " + type);
    }

    private static Map<String, Shape> members(Class<?> type) {
        Map<String, Shape> members = new TreeMap<>();
        for (RecordComponent component : type.getRecordComponents()) {
            members.put(WrittenName.of(component), of(component.getGenericType()));
        }
        return members;
    }

    /** Kinds that share a member have to agree on it, or a column would not say what its cells are. */
    private static Map<String, Shape> membersOfAllKinds(Class<?> type) {
        Map<String, Shape> members = new TreeMap<>();
        members.put(type.getAnnotation(JsonTypeInfo.class).property(), Scalar.TEXT);
        for (Class<?> kind : type.getPermittedSubclasses()) {
            members(kind).forEach((name, shape) -> {
                Shape other = members.putIfAbsent(name, shape);
                if (other != null && !other.equals(shape)) {
                    throw new IllegalArgumentException(type + " has two members " + name + " of different shape");
                }
            });
        }
        return members;
    }

    /** The names that may follow, for people. */
    static List<String> names(Shape shape) {
        List<String> names = new ArrayList<>();
        if (shape instanceof Members object) {
            names.addAll(object.members().keySet());
        } else if (shape instanceof Elements) {
            names.add("0, 1, ...");
        } else if (shape instanceof Choice choice) {
            choice.forms().stream().filter(form -> form instanceof Members).forEach(form -> names.addAll(names(form)));
        }
        return names;
    }
}
