package rasterfit.app.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;

/** What is wrong with a document, in its order; the first ones are told, the rest is counted. */
final class ImportFaults {
    /** How many errors are listed (assumption: more than anybody mends in one go). */
    static final int MOST_LISTED = 100;

    private final List<ProblemError> listed = new ArrayList<>();
    private int found;

    /** Where the one is listed that decides what kind of problem it is; it takes the last place if it comes too late. */
    private int weightiest;

    private @Nullable ProblemType type;

    void add(ProblemType kind, ProblemError error) {
        add(kind, List.of(error));
    }

    /** @param pointer of the value that is faulty */
    void add(ProblemException problem, String pointer) {
        List<ProblemError> errors = problem.within(pointer).errors();
        add(problem.type(), errors.isEmpty() ? List.of(ProblemError.at(pointer, problem.detail())) : errors);
    }

    /** What cannot be understood (400) is told before what makes no sense (422). */
    private void add(ProblemType kind, List<ProblemError> errors) {
        if (type == null || kind.status() < type.status()) {
            type = kind;
            weightiest = Math.min(listed.size(), MOST_LISTED - 1);
            if (listed.size() == MOST_LISTED) {
                listed.remove(weightiest);
            }
        }
        found += errors.size();
        errors.stream().limit(MOST_LISTED - listed.size()).forEach(listed::add);
    }

    /**
     * Reports all as one problem.
     *
     * @param place finds the lines of those that are listed
     */
    void throwIfAny(Function<List<ProblemError>, List<ProblemError>> place) {
        if (type == null) {
            return;
        }
        List<ProblemError> placed = place.apply(listed);
        ProblemError first = placed.get(weightiest);
        String rest = found == 1 ? "" : " There are " + found + " errors in all.";
        throw new ProblemException(type, where(first) + first.message() + rest, placed)
                .withFurtherErrors(found - placed.size());
    }

    private static String where(ProblemError error) {
        String line = error.line() == null ? "" : "line " + error.line();
        String field = error.field() == null ? "" : error.field();
        String both = line.isEmpty() || field.isEmpty() ? line + field : line + ", " + field;
        return both.isEmpty() ? "" : both + ": ";
    }
}
