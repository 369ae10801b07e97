package rasterfit.edid.oracle;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.PrintedTiming;

/**
 * A line of what {@code edid-decode} prints for an EDID, with the lines that are indented under it.
 *
 * @param text without its indent
 * @param timing where the line is the head of a timing that is printed in full
 */
record Printed(String text, @Nullable PrintedTiming timing, List<Printed> children) {

    /** The lines that are not indented. */
    static List<Printed> read(List<String> lines) {
        List<String> texts = lines.stream().map(String::strip).toList();
        Printed root = new Printed("", null, new ArrayList<>());
        Deque<Printed> open = new ArrayDeque<>(List.of(root));
        Deque<Integer> indents = new ArrayDeque<>(List.of(-1));
        for (int i = 0; i < lines.size(); ) {
            // Levels are two spaces apart; one kind of line has a space too many.
            int indent = (lines.get(i).length() - lines.get(i).stripLeading().length()) / 2;
            boolean isTiming = PrintedTiming.isHead(texts.get(i))
                    && i + 1 < texts.size()
                    && texts.get(i + 1).startsWith("Hfront");
            if (!texts.get(i).isEmpty()) {
                while (indents.element() >= indent) {
                    indents.pop();
                    open.pop();
                }
                PrintedTiming timing = isTiming ? PrintedTiming.at(texts, i) : null;
                Printed printed = new Printed(texts.get(i), timing, new ArrayList<>());
                open.element().children.add(printed);
                open.push(printed);
                indents.push(indent);
            }
            i += isTiming ? PrintedTiming.linesAt(texts, i) : 1;
        }
        return root.children;
    }

    boolean startsWith(String prefix) {
        return text.startsWith(prefix);
    }

    Stream<Printed> under(String prefix) {
        return children.stream().filter(child -> child.startsWith(prefix));
    }

    boolean has(String prefix) {
        return under(prefix).findFirst().isPresent();
    }

    /** What follows the prefix on the first such line, without spaces and the colon in front. */
    Optional<String> value(String prefix) {
        return under(prefix).findFirst().map(child -> child.after(prefix));
    }

    String after(String prefix) {
        return text.substring(prefix.length()).replaceFirst("^\\s*:?\\s*", "");
    }

    /** The timings on the lines directly under this one. */
    Stream<PrintedTiming> timings() {
        return children.stream().flatMap(child -> Stream.ofNullable(child.timing));
    }
}
