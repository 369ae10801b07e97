package rasterfit.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A console, converter or display: {@code kind id fact ... clause ...}, each clause led in by its own word. */
record DeviceText(
        Kind kind, Word id, Facts facts, List<PortText> inputs, List<PortText> outputs, List<ClauseText> clauses) {

    private static final Map<String, Vocabulary> CONVERTER_CLAUSES = Map.of(
            "in", Vocabulary.CONVERTER_INPUT,
            "out", Vocabulary.CONVERTER_OUTPUT,
            "pass", Vocabulary.PASS,
            "repeat", Vocabulary.REPEAT,
            "scale", Vocabulary.SCALE);

    /** The words that begin a device. */
    enum Kind {
        CONSOLE,
        CONVERTER,
        TUBE,
        MONITOR,
        TELEVISION,
        PROJECTOR;

        private Vocabulary own() {
            return switch (this) {
                case CONSOLE -> Vocabulary.CONSOLE;
                case CONVERTER -> Vocabulary.CONVERTER;
                default -> Vocabulary.DISPLAY;
            };
        }

        /** The words that lead in a clause of this device. */
        private Map<String, Vocabulary> clauses() {
            return switch (this) {
                case CONSOLE -> Map.of("mode", Vocabulary.MODE, "out", Vocabulary.CONSOLE_OUTPUT);
                case CONVERTER -> CONVERTER_CLAUSES;
                default -> Map.of("in", Vocabulary.DISPLAY_INPUT);
            };
        }

        static Optional<Kind> find(String word) {
            for (Kind kind : values()) {
                if (word.equals(kind.name().toLowerCase(Locale.ROOT))) {
                    return Optional.of(kind);
                }
            }
            return Optional.empty();
        }

        boolean isDisplay() {
            return this != CONSOLE && this != CONVERTER;
        }
    }

    static DeviceText read(Kind kind, Words words) {
        Word id = words.take();
        Words before = untilClause(kind, words, false);
        Facts own = Facts.take(before, kind.own());
        before.expectEnd();
        List<PortText> inputs = new ArrayList<>();
        List<PortText> outputs = new ArrayList<>();
        List<ClauseText> clauses = new ArrayList<>();
        while (words.hasNext()) {
            Word clause = words.take();
            Vocabulary vocabulary = kind.clauses().get(clause.text());
            if (vocabulary == null) {
                throw clause.fault("expected one of "
                        + kind.clauses().keySet().stream().sorted().toList());
            }
            Words its = untilClause(kind, words, !clause.is("pass"));
            switch (clause.text()) {
                case "in" -> inputs.add(PortText.read(its, vocabulary));
                case "out" -> outputs.add(PortText.read(its, vocabulary));
                default -> clauses.add(clause(clause, its, vocabulary));
            }
            its.expectEnd();
        }
        return new DeviceText(kind, id, own, List.copyOf(inputs), List.copyOf(outputs), List.copyOf(clauses));
    }

    /** @param named whether the first word is a name or argument, even if it looks like the beginning of a clause */
    private static Words untilClause(Kind kind, Words words, boolean named) {
        Place place = words.place();
        List<Word> own = new ArrayList<>();
        if (named) {
            own.add(words.take());
        }
        while (words.hasNext() && !kind.clauses().containsKey(words.peek().text())) {
            own.add(words.take());
        }
        return new Words(own, place);
    }

    /** {@code pass} has no arguments, {@code repeat} some, the others one. */
    private static ClauseText clause(Word what, Words its, Vocabulary vocabulary) {
        List<Word> arguments = new ArrayList<>();
        if (what.is("repeat")) {
            while (its.hasNext() && its.peek().text().contains(">")) {
                arguments.add(its.take());
            }
        } else if (!what.is("pass")) {
            arguments.add(its.take());
        }
        return new ClauseText(what, List.copyOf(arguments), Facts.take(its, vocabulary));
    }

    /** The clauses that begin with this word. */
    List<ClauseText> clauses(String word) {
        return clauses.stream().filter(clause -> clause.what().is(word)).toList();
    }
}
