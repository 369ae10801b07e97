package rasterfit.app.problem;

import java.net.URI;
import java.util.Arrays;
import java.util.Locale;

/**
 * The kinds of problem a client can be told of. Each has one status (RFC 9110, RFC 6585), a title that never varies and
 * a code made of its name; clients may rely on all three. The first kind with a status stands for that status where
 * nothing more is known.
 */
public enum ProblemType {
    BAD_REQUEST(400, "The request cannot be understood"),
    MALFORMED_JSON(400, "The body is not well-formed JSON"),
    MALFORMED_CSV(400, "The body is not well-formed CSV"),
    MISSING_BODY(400, "A body is needed"),
    DUPLICATE_MEMBER(400, "A member occurs twice in one JSON object"),
    JSON_TOO_COMPLEX(400, "The JSON exceeds a limit of form"),
    UNKNOWN_MEMBER(400, "A member is not known"),
    MISSING_MEMBER(400, "A required member is absent"),
    UNKNOWN_VALUE(400, "A value is not one of those known"),
    WRONG_TYPE(400, "A value has the wrong JSON type or form"),
    UNKNOWN_PARAMETER(400, "A query parameter is not known"),
    INVALID_PARAMETER(400, "A parameter is missing or malformed"),
    UNAUTHENTICATED(401, "The caller is not known"),
    FORBIDDEN(403, "The caller may not do this"),
    NOT_FOUND(404, "There is nothing at this address"),
    METHOD_NOT_ALLOWED(405, "The method is not offered here"),
    NOT_ACCEPTABLE(406, "None of the accepted media types is offered"),
    CONFLICT(409, "The request conflicts with what is stored"),
    PRECONDITION_FAILED(412, "What is stored is not what the client believes"),
    CONTENT_TOO_LARGE(413, "The body is too large"),
    UNSUPPORTED_MEDIA_TYPE(415, "The media type of the body is not accepted"),
    EXPECTATION_FAILED(417, "The expectation cannot be met"),
    MISDIRECTED_REQUEST(421, "The service does not answer for this host"),
    INVALID_VALUE(422, "A value is out of range or does not fit the others"),
    WORK_LIMIT_EXCEEDED(422, "The request asks for more work than the stated limit"),
    PRECONDITION_REQUIRED(428, "The request has to name the state that it changes"),
    INTERNAL_ERROR(500, "The service failed"),
    NOT_IMPLEMENTED(501, "The service does not implement this"),
    UNAVAILABLE(503, "The service cannot answer now"),
    HTTP_VERSION_NOT_SUPPORTED(505, "The HTTP version is not supported");

    private final int status;
    private final String title;

    ProblemType(int status, String title) {
        this.status = status;
        this.title = title;
    }

    /** The HTTP status code. */
    public int status() {
        return status;
    }

    /** One line for a person, the same for every occurrence. */
    public String title() {
        return title;
    }

    /** The name for programs, such as {@code unknown-member}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The stable identifier of RFC 9457; a name, not an address to fetch. */
    public URI uri() {
        return URI.create("urn:rasterfit:problem:" + code());
    }

    /** The kind that stands for a status; a status without one is told as 400 or 500, as RFC 9110 clause 15 allows. */
    public static ProblemType ofStatus(int status) {
        return Arrays.stream(values())
                .filter(type -> type.status == status)
                .findFirst()
                .orElse(status < 500 ? BAD_REQUEST : INTERNAL_ERROR);
    }
}
