package rasterfit.app.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * The id under which a request is found in the log: the client's own if it is short and plain, else a new one. It is
 * answered in {@code X-Request-Id} either way.
 */
final class RequestId {

    static final String HEADER = "X-Request-Id";

    /** Plain characters only, so that an id cannot forge a line of the log or a header field. */
    private static final Pattern PLAIN = Pattern.compile("[A-Za-z0-9._:+/=@-]{1,128}");

    private static final String ATTRIBUTE = RequestId.class.getName();

    private RequestId() {}

    /** The id of the request, which is fixed by the first call; also sets the header of the answer. */
    static String of(HttpServletRequest request, HttpServletResponse response) {
        String id = request.getAttribute(ATTRIBUTE) instanceof String known ? known : chosen(request);
        request.setAttribute(ATTRIBUTE, id);
        response.setHeader(HEADER, id);
        return id;
    }

    private static String chosen(HttpServletRequest request) {
        String sent = request.getHeader(HEADER);
        return sent != null && PLAIN.matcher(sent).matches()
                ? sent
                : UUID.randomUUID().toString();
    }
}
