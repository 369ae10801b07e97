package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;

/** Everything that was found wrong with a request so far, in the order in which it was read; nothing twice. */
public final class Faults {
    private final Map<ProblemError, ProblemType> found = new LinkedHashMap<>();
    private int reports;

    void add(ProblemType type, ProblemError error) {
        found.putIfAbsent(error, type);
        reports++;
    }

    /** Counts repetitions too, so that a reader can tell whether anything was wrong since it began. */
    int reports() {
        return reports;
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    public List<ProblemError> errors() {
        return List.copyOf(found.keySet());
    }

    /**
     * Reports all faults as one problem. Its kind is that of the first fault of form (400), or else of the first fault
     * of content (422): what cannot be understood is told before what makes no sense.
     */
    public void throwIfAny() {
        if (found.isEmpty()) {
            return;
        }
        Map.Entry<ProblemError, ProblemType> weightiest = found.entrySet().stream()
                .min(Comparator.comparing(fault -> fault.getValue().status()))
                .orElseThrow();
        List<ProblemError> errors = new ArrayList<>(found.keySet());
        errors.remove(weightiest.getKey());
        errors.add(0, weightiest.getKey());
        ProblemError first = errors.get(0);
        String rest = errors.size() == 1 ? "" : " There are " + errors.size() + " errors in all.";
        // The whole body has an empty pointer.
        String place = first.pointer() == null || first.pointer().isEmpty() ? "" : first.pointer() + ": ";
        throw new ProblemException(weightiest.getValue(), place + first.message() + rest, errors);
    }
}
