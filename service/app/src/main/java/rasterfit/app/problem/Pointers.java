package rasterfit.app.problem;

import jakarta.validation.ElementKind;
import jakarta.validation.Path;
import java.util.List;
import tools.jackson.core.JacksonException;

/** JSON Pointers (RFC 6901) from the paths that the JSON reader and Bean Validation report. */
final class Pointers {

    private Pointers() {}

    static String of(List<JacksonException.Reference> path) {
        StringBuilder pointer = new StringBuilder();
        for (JacksonException.Reference step : path) {
            String name = step.getPropertyName();
            append(pointer, name != null ? name : Integer.toString(step.getIndex()));
        }
        return pointer.toString();
    }

    /** The members' Java names are taken for their JSON names; requests are records without renamed members. */
    static String of(Path path) {
        StringBuilder pointer = new StringBuilder();
        for (Path.Node node : path) {
            if (node.isInIterable() && node.getIndex() != null) {
                append(pointer, Integer.toString(node.getIndex()));
            } else if (node.isInIterable() && node.getKey() != null) {
                append(pointer, String.valueOf(node.getKey()));
            }
            if (node.getKind() == ElementKind.PROPERTY && node.getName() != null) {
                append(pointer, node.getName());
            }
        }
        return pointer.toString();
    }

    private static void append(StringBuilder pointer, String token) {
        // RFC 6901 clause 3: the tilde first, or the tilde of an escaped slash would be escaped again.
        pointer.append('/').append(token.replace("~", "~0").replace("/", "~1"));
    }
}
