package rasterfit.app.resource;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Page;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;

/**
 * Which part of a list is asked for (AIP-158).
 *
 * @param most how many elements at most
 * @param after the last element of the part before, as {@link #page} named it; absent for the first part
 */
public record PageRequest(int most, @Nullable String after) {
    /** More are not given at once. */
    public static final int GREATEST_SIZE = 200;

    /**
     * @param size how many are asked for; beyond the greatest it is that
     * @param cursor what the part before named as next
     * @throws ProblemException 400 for a size below 1 and for a cursor that was never given
     */
    public static PageRequest of(int size, @Nullable String cursor) {
        if (size < 1) {
            throw parameter("size", "At least 1.");
        }
        String after = cursor == null ? null : Cursor.read(cursor).orElseThrow(PageRequest::unknownCursor);
        return new PageRequest(Math.min(size, GREATEST_SIZE), after);
    }

    /** How many elements to look up: one more than is given tells whether there is a next part. */
    public int lookUp() {
        return most + 1;
    }

    /**
     * The part as it is answered.
     *
     * @param found up to {@link #lookUp} elements behind {@link #after}, in order
     * @param position of an element in the order of the list
     */
    public <T, A> Page<A> page(List<T> found, Function<T, String> position, Function<T, A> answer) {
        List<T> page = found.subList(0, Math.min(most, found.size()));
        String next = found.size() > most ? Cursor.of(position.apply(page.get(page.size() - 1))) : null;
        return new Page<>(page.stream().map(answer).toList(), next);
    }

    /** 400 for a cursor that this list never gave. */
    public static ProblemException unknownCursor() {
        return parameter("cursor", "It is none that was given here.");
    }

    private static ProblemException parameter(String name, String message) {
        return new ProblemException(
                ProblemType.INVALID_PARAMETER, name + ": " + message, List.of(ProblemError.inParameter(name, message)));
    }
}
