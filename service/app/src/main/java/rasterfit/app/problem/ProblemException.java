package rasterfit.app.problem;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A request that is answered with a problem. Thrown by services and by deserialisers; when it comes from inside the
 * reading of a body, the pointers of its errors are completed with the place that was being read.
 */
public final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final ProblemType type;
    private final transient List<ProblemError> errors;
    private final transient Map<String, String> headers;
    private final int furtherErrors;

    /** A problem whose detail says all there is to say. */
    public ProblemException(ProblemType type, String detail) {
        this(type, detail, List.of());
    }

    /** A problem with the places that caused it. */
    public ProblemException(ProblemType type, String detail, List<ProblemError> errors) {
        this(type, detail, errors, Map.of(), 0);
    }

    private ProblemException(
            ProblemType type,
            String detail,
            List<ProblemError> errors,
            Map<String, String> headers,
            int furtherErrors) {
        super(detail);
        this.type = type;
        this.errors = List.copyOf(errors);
        this.headers = Collections.unmodifiableMap(new LinkedHashMap<>(headers));
        this.furtherErrors = furtherErrors;
    }

    /** The same problem, answered with one more header field. */
    public ProblemException withHeader(String name, String value) {
        Map<String, String> more = new LinkedHashMap<>(headers);
        more.put(name, value);
        return new ProblemException(type, detail(), errors, more, furtherErrors);
    }

    /** The same problem with a number of errors that are not listed. */
    public ProblemException withFurtherErrors(int number) {
        return new ProblemException(type, detail(), errors, headers, number);
    }

    /** The same problem seen from outside the value at {@code outer}, a JSON Pointer. */
    public ProblemException within(String outer) {
        return new ProblemException(
                type,
                detail(),
                errors.stream().map(error -> error.within(outer)).toList(),
                headers,
                furtherErrors);
    }

    public ProblemType type() {
        return type;
    }

    /** What happened this time, for a person. */
    public String detail() {
        return String.valueOf(getMessage());
    }

    public List<ProblemError> errors() {
        return errors;
    }

    /** How many errors there are beyond those listed. */
    public int furtherErrors() {
        return furtherErrors;
    }

    /** Header fields that belong to the answer, such as {@code Retry-After}. */
    public Map<String, String> headers() {
        return headers;
    }
}
