package rasterfit.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Link;

/**
 * Reads the notation. A scenario begins at the margin with its number and a sentence; what belongs to it is indented by two,
 * one statement a line, which goes on in the next if that is indented by four:
 *
 * <pre>
 * A01 A console gives RGB to a tube that takes it.
 *   console quillon out rgb SCART RGB+SYNC_ON_COMPOSITE
 *   lead lead SCART > SCART RGB+SYNC_ON_COMPOSITE
 *   tube burdock in av SCART RGB+SYNC_ON_COMPOSITE
 *   best: quillon:rgb > lead > burdock:av
 *   # EN 50049-1, from memory
 * </pre>
 *
 * <p>One console, one display, any number of converters and links, what is asked ({@link AskText}), one expectation
 * ({@link Expectation}), and the source of the expectation behind {@code #}. Comments at the margin belong to the file. What
 * a part leaves unsaid has the defaults of its {@code GearOf...} class; the facts that may be said are in {@link Vocabulary}.
 */
final class ScenarioReader {
    private static final Pattern TITLE = Pattern.compile("[A-Z][0-9]{2} \\S.*\\.");
    private static final String INDENT = "  ";
    private static final String CONTINUED = "    ";

    private final String file;
    private final List<Scenario> scenarios = new ArrayList<>();
    private @Nullable Draft draft;

    private ScenarioReader(String file) {
        this.file = file;
    }

    /** @throws IllegalArgumentException that begins with file and line */
    static List<Scenario> read(String file, String text) {
        ScenarioReader reader = new ScenarioReader(file);
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            reader.line(lines.get(i), new Place(file, i + 1));
        }
        reader.finish();
        return List.copyOf(reader.scenarios);
    }

    private void line(String line, Place place) {
        if (line.isBlank() || line.startsWith("#")) {
            return;
        }
        if (!line.startsWith(INDENT)) {
            finish();
            if (!TITLE.matcher(line).matches()) {
                throw place.fault("a scenario begins with a number such as A01 and a sentence");
            }
            draft = new Draft(line.substring(0, 3), line.substring(4), place);
        } else if (draft == null) {
            throw place.fault("nothing has begun yet in " + file);
        } else if (line.startsWith(CONTINUED)) {
            draft.words(line, place);
        } else {
            draft.statement(line.substring(INDENT.length()), place);
        }
    }

    private void finish() {
        if (draft != null) {
            draft.endStatement();
            scenarios.add(draft.scenario());
            draft = null;
        }
    }

    /** A scenario while it is read. */
    private static final class Draft {
        private final String number;
        private final String title;
        private final Place place;
        private final List<LinkText> links = new ArrayList<>();
        private final List<DeviceText> devices = new ArrayList<>();
        private final AskText ask = new AskText();
        private final List<Expectation> expectations = new ArrayList<>();
        private final List<Word> statement = new ArrayList<>();
        private @Nullable String source;

        Draft(String number, String title, Place place) {
            this.number = number;
            this.title = title;
            this.place = place;
        }

        void statement(String line, Place at) {
            endStatement();
            if (line.startsWith("# ")) {
                source = source == null ? line.substring(2) : source + "; " + line.substring(2);
            } else if (Expectation.isOne(line)) {
                expectations.add(Expectation.read(line, at));
            } else {
                words(line, at);
            }
        }

        /** Adds to the statement that is being read. */
        void words(String line, Place at) {
            for (String word : line.trim().split(" +", -1)) {
                statement.add(new Word(word, at));
            }
        }

        void endStatement() {
            if (!statement.isEmpty()) {
                Words words =
                        new Words(statement, statement.get(statement.size() - 1).place());
                statement.clear();
                gear(words.take(), words);
                words.expectEnd();
            }
        }

        private void gear(Word first, Words words) {
            Optional<DeviceText.Kind> device = DeviceText.Kind.find(first.text());
            Link.Kind link = LinkText.KINDS.get(first.text());
            if (device.isPresent()) {
                devices.add(DeviceText.read(device.get(), words));
            } else if (link != null) {
                links.add(LinkText.read(link, words));
            } else if (!ask.read(first, words)) {
                throw first.fault("no statement begins like this");
            }
        }

        Scenario scenario() {
            String from = source;
            if (from == null) {
                throw place.fault(number + " names no source");
            }
            if (expectations.size() != 1) {
                throw place.fault(number + " has " + expectations.size() + " expectations instead of one");
            }
            return new Scenario(
                    number,
                    title,
                    place,
                    only(
                            "console",
                            devices.stream()
                                    .filter(one -> one.kind() == DeviceText.Kind.CONSOLE)
                                    .toList()),
                    only(
                            "display",
                            devices.stream()
                                    .filter(one -> one.kind().isDisplay())
                                    .toList()),
                    devices.stream()
                            .filter(one -> one.kind() == DeviceText.Kind.CONVERTER)
                            .toList(),
                    List.copyOf(links),
                    ask,
                    expectations.get(0),
                    from);
        }

        private DeviceText only(String what, List<DeviceText> found) {
            if (found.size() != 1) {
                throw place.fault(number + " has " + found.size() + " of: " + what);
            }
            return found.get(0);
        }
    }
}
