package rasterfit.app.problem;

import java.time.Duration;
import java.util.List;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.JacksonIOException;

/** The problems that services raise, one named factory each; tests compare through the same factories. */
public final class Problems {

    private Problems() {}

    /** 404; {@code what} is a noun phrase with its id, such as {@code display "d-17"}. */
    public static ProblemException notFound(String what) {
        return new ProblemException(ProblemType.NOT_FOUND, "There is no " + what + ".");
    }

    /** 422 for one value; the pointer may be empty inside a deserialiser, where the place is known from the reading. */
    public static ProblemException invalid(String pointer, String message) {
        return invalid(List.of(ProblemError.at(pointer, message)));
    }

    /** 422 for one value beyond a limit, which is told apart so that a program can use it. */
    public static ProblemException outOfRange(String pointer, String message, String limit) {
        return invalid(List.of(ProblemError.at(pointer, message, limit)));
    }

    /** 422 for several values. */
    public static ProblemException invalid(List<ProblemError> errors) {
        return of(ProblemType.INVALID_VALUE, errors);
    }

    /** 400 for a value whose JSON type or form is not the expected one; {@code expected} is a noun phrase. */
    public static ProblemException wrongType(String pointer, String expected) {
        return of(ProblemType.WRONG_TYPE, List.of(ProblemError.at(pointer, "Expected " + expected + ".")));
    }

    /** 400 for a body that cannot be taken in at all. */
    static ProblemException cutShort() {
        return new ProblemException(
                ProblemType.BAD_REQUEST, "The body is cut short, came too slowly or is framed wrongly.");
    }

    /**
     * 400 or 422 for JSON that does not say what it has to say.
     *
     * @throws JacksonException if the reading failed for a reason that lies with the service
     */
    public static ProblemException unreadable(JacksonException json) {
        if (json instanceof JacksonIOException) {
            return cutShort();
        }
        ProblemException problem = JsonProblems.of(json);
        if (problem == null) {
            throw json;
        }
        return problem;
    }

    /** 422 for a request that would need more work than is allowed. */
    public static ProblemException workLimitExceeded(String detail, List<ProblemError> errors) {
        return new ProblemException(ProblemType.WORK_LIMIT_EXCEEDED, detail, errors);
    }

    /** 503 with {@code Retry-After} in whole seconds, rounded up. */
    public static ProblemException unavailable(String detail, Duration retryAfter) {
        long seconds = retryAfter.plusNanos(999_999_999).toSeconds();
        return new ProblemException(ProblemType.UNAVAILABLE, detail)
                .withHeader("Retry-After", Long.toString(Math.max(1, seconds)));
    }

    /** A problem told by its errors alone; the detail repeats the first and counts the rest. */
    static ProblemException of(ProblemType type, List<ProblemError> errors) {
        ProblemError first = errors.get(0);
        String place = first.parameter() != null ? first.parameter() : first.pointer();
        String detail = (place == null || place.isEmpty() ? "" : place + ": ")
                + first.message()
                + (errors.size() == 1 ? "" : " There are " + errors.size() + " errors in all.");
        return new ProblemException(type, detail, errors);
    }
}
