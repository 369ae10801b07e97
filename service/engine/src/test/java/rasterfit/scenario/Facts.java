package rasterfit.scenario;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/** The {@code name=value} words of a device, port, mode or way of processing; a flag is a name alone. */
final class Facts {
    private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9-]*(=\\S+)?");
    private static final String FLAG = "yes";

    private final Place place;
    private final Vocabulary vocabulary;
    private final Map<String, String> values = new LinkedHashMap<>();

    private Facts(Place place, Vocabulary vocabulary) {
        this.place = place;
        this.vocabulary = vocabulary;
    }

    /** Takes all facts that stand next. */
    static Facts take(Words words, Vocabulary vocabulary) {
        Facts facts = new Facts(words.place(), vocabulary);
        while (words.hasNext() && NAME.matcher(words.peek().text()).matches()) {
            Word word = words.take();
            String[] parts = word.text().split("=", 2);
            if (!vocabulary.knows(parts[0])) {
                throw word.fault("not a fact of this part; known are " + vocabulary.names());
            }
            if (facts.values.put(parts[0], parts.length == 1 ? FLAG : parts[1]) != null) {
                throw word.fault("given twice");
            }
        }
        return facts;
    }

    boolean has(String name) {
        return values.containsKey(name);
    }

    /** The names that the engine has no place for yet. */
    List<String> waiting() {
        return values.keySet().stream().filter(vocabulary::waits).toList();
    }

    @Nullable
    String text(String name) {
        return values.get(name);
    }

    String text(String name, String otherwise) {
        return values.getOrDefault(name, otherwise);
    }

    Rational number(String name, String otherwise) {
        return parsed(name, text(name, otherwise), Rational::parse);
    }

    int whole(String name, int otherwise) {
        return parsed(name, text(name, Integer.toString(otherwise)), Integer::valueOf);
    }

    List<String> list(String name, String otherwise) {
        return list(text(name, otherwise));
    }

    static List<String> list(String text) {
        return Arrays.asList(text.split(",", -1));
    }

    /** {@code 15000-16500}. */
    List<String> ends(String name, String otherwise) {
        List<String> ends = Arrays.asList(text(name, otherwise).split("-", -1));
        if (ends.size() != 2) {
            throw place.fault(name + " is written as least-greatest");
        }
        return ends;
    }

    /** @throws IllegalArgumentException naming the place where the text cannot be read */
    <T> T parsed(String name, String value, Function<String, T> reader) {
        try {
            return reader.apply(value);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    place.fault(name + "=" + value + ": " + e.getMessage()).getMessage(), e);
        }
    }
}
