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
 * @param line of the text that was sent, from 1; only told of documents that are imported
 * @param column character of that line, from 1; only told of JSON
 * @param field the path of the value within its item, or the name of its column
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ProblemError(
        @Nullable String pointer,
        @Nullable String parameter,
        String message,
        @Nullable String limit,
        @Nullable Long line,
        @Nullable Integer column,
        @Nullable String field) {

    public ProblemError(@Nullable String pointer, @Nullable String parameter, String message, @Nullable String limit) {
        this(pointer, parameter, message, limit, null, null, null);
    }

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

    /** An error at a place in a text that was sent to be imported. */
    public static ProblemError inText(
            @Nullable String pointer,
            String message,
            @Nullable String limit,
            @Nullable Long line,
            @Nullable Integer column,
            @Nullable String field) {
        return new ProblemError(pointer, null, message, limit, line, column, field);
    }

    /** The same error seen from outside the value at {@code outer}. */
    ProblemError within(String outer) {
        return parameter != null
                ? this
                : new ProblemError(outer + (pointer == null ? "" : pointer), null, message, limit, line, column, field);
    }
}
