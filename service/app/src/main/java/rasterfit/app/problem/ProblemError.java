package rasterfit.app.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;

/**
 * One thing that is wrong with a request. At most one of {@code pointer} and {@code parameter} is present.
 *
 * @param pointer where in the body, as a JSON Pointer (RFC 6901); the empty string is the whole body
 * @param parameter the name of the query or path parameter or header field
 * @param message what is wrong and what would be right, for a person
 * @param limit the limit that was broken, as text such as {@code 1048576} or {@code 1..64}
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ProblemError(
        @Nullable String pointer,
        @Nullable String parameter,
        String message,
        @Nullable String limit) {

    public ProblemError {
        if (pointer != null && parameter != null) {
            throw new IllegalArgumentException("an error is either in the body or in a parameter");
        }
    }

    /** An error at a place in the body. */
    public static ProblemError at(String pointer, String message) {
        return new ProblemError(pointer, null, message, null);
    }

    /** An error at a place in the body that breaks a limit. */
    public static ProblemError at(String pointer, String message, @Nullable String limit) {
        return new ProblemError(pointer, null, message, limit);
    }

    /** An error in a query or path parameter or a header field. */
    public static ProblemError inParameter(String parameter, String message) {
        return new ProblemError(null, parameter, message, null);
    }

    /** The same error seen from outside the value at {@code outer}. */
    ProblemError within(String outer) {
        return parameter != null
                ? this
                : new ProblemError(outer + (pointer == null ? "" : pointer), null, message, limit);
    }
}
