package rasterfit.app.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.net.URI;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The body of every error answer (RFC 9457).
 *
 * @param type stable identifier of the kind of problem
 * @param code the same for programs that prefer a word
 * @param title one line, the same for every problem of the kind
 * @param status the HTTP status code
 * @param detail what happened this time
 * @param instance the path of the request; absent when the request line could not be read
 * @param requestId present when the log holds more about this occurrence under that id
 * @param errors what is wrong in the request, one entry per place; absent when there is no single place
 * @param furtherErrors how many more there are; absent when all are listed
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
@JsonPropertyOrder({"type", "code", "title", "status", "detail", "instance", "requestId", "errors", "furtherErrors"})
public record Problem(
        URI type,
        String code,
        String title,
        int status,
        String detail,
        @Nullable String instance,
        @Nullable String requestId,
        List<ProblemError> errors,
        @Nullable Integer furtherErrors) {

    /** The media type of every error answer. */
    public static final String MEDIA_TYPE = "application/problem+json";

    public Problem {
        // Absent where a problem that was kept is read again.
        errors = errors == null ? List.of() : List.copyOf(errors);
    }

    /** As it is told; see the members for {@code instance} and {@code requestId}. */
    public static Problem of(ProblemException problem, @Nullable String instance, @Nullable String requestId) {
        ProblemType type = problem.type();
        return new Problem(
                type.uri(),
                type.code(),
                type.title(),
                type.status(),
                problem.detail(),
                instance,
                requestId,
                problem.errors(),
                problem.furtherErrors() == 0 ? null : problem.furtherErrors());
    }
}
