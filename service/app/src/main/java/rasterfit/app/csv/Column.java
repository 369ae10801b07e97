package rasterfit.app.csv;

import java.util.ArrayList;
import java.util.List;

/**
 * A column of a table.
 *
 * @param name the path of its values: a JSON Pointer (RFC 6901) without the slash in front
 * @param steps the path taken apart
 * @param isElement for each step whether it is the number of an element in a list
 * @param shape of its values
 */
record Column(String name, List<String> steps, List<Boolean> isElement, Shape shape) {

    /** Why a name is none of a column: at which step, and what would be known there. */
    static final class UnknownColumn extends Exception {
        private static final long serialVersionUID = 1L;

        UnknownColumn(String message) {
            super(message);
        }

        String told() {
            return String.valueOf(getMessage());
        }
    }

    static Column of(String name, Shape document) throws UnknownColumn {
        List<String> steps = new ArrayList<>();
        List<Boolean> isElement = new ArrayList<>();
        Shape shape = document;
        for (String written : name.split("/", -1)) {
            String step = written.replace("~1", "/").replace("~0", "~");
            Shape before = shape;
            shape = before.step(step).orElseThrow(() -> unknown(step, before));
            steps.add(step);
            isElement.add(before instanceof Shape.Elements);
        }
        return new Column(name, List.copyOf(steps), List.copyOf(isElement), shape);
    }

    private static UnknownColumn unknown(String step, Shape before) {
        List<String> known = Shape.names(before);
        String rest = known.isEmpty() ? "nothing follows here." : "known here: " + String.join(", ", known) + ".";
        return new UnknownColumn("Unknown column: \"" + step + "\"; " + rest);
    }

    /** One more step of a path. */
    static String path(String parent, String step) {
        String escaped = step.replace("~", "~0").replace("/", "~1");
        return parent.isEmpty() ? escaped : parent + "/" + escaped;
    }
}
