package rasterfit.app.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * The one place where a problem becomes an answer, for the framework and the container alike. Whatever media types the
 * client accepts, it gets {@link Problem#MEDIA_TYPE}: an error is better read in the wrong form than not at all. What runs within the
 * framework throws a {@link ProblemException} instead of calling this; filters, which run before it, call this.
 */
@Component
public final class ProblemWriter {

    private static final Logger LOG = LoggerFactory.getLogger(ProblemWriter.class);

    /** Its own mapper: errors must still be told when the one for requests cannot be built. */
    private final JsonMapper json = JsonMapper.builder()
            .disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .build();

    /** Answers with a problem, unless the answer is already on its way. */
    public void write(ProblemException problem, HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        write(problem, null, request, response);
    }

    /** Logs what nobody foresaw and answers 500 with no more than the id under which it was logged. */
    void writeUnexpected(Throwable thrown, HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        String id = RequestId.of(request, response);
        LOG.error("Request {} {} failed, request id {}", request.getMethod(), request.getRequestURI(), id, thrown);
        ProblemException problem = new ProblemException(
                ProblemType.INTERNAL_ERROR,
                "Something failed that should not. The log tells more under the request id.");
        write(problem, id, request, response);
    }

    private void write(
            ProblemException problem,
            @Nullable String requestId,
            HttpServletRequest request,
            HttpServletResponse response)
            throws IOException {
        if (response.isCommitted()) {
            LOG.warn(
                    "Answer already begun, problem not sent: {}", problem.type().code());
            return;
        }
        ProblemType type = problem.type();
        byte[] body = json.writeValueAsBytes(Problem.of(problem, pathOf(request), requestId));
        response.reset();
        RequestId.of(request, response);
        response.setStatus(type.status());
        problem.headers().forEach(response::setHeader);
        response.setHeader("Cache-Control", "no-store");
        response.setContentType(Problem.MEDIA_TYPE);
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
    }

    /** The path as sent; what may not stand in a URI reference (RFC 3986) is percent-encoded. */
    private static @Nullable String pathOf(HttpServletRequest request) {
        String path = request.getRequestURI();
        if (path == null || path.isEmpty()) {
            return null;
        }
        StringBuilder safe = new StringBuilder();
        for (byte octet : path.getBytes(StandardCharsets.UTF_8)) {
            char character = (char) (octet & 0xff);
            boolean allowed = character < 0x80
                    && (Character.isLetterOrDigit(character) || "-._~!$&'()*+,;=:@/%".indexOf(character) >= 0);
            safe.append(allowed ? String.valueOf(character) : String.format("%%%02X", (int) character));
        }
        return safe.toString();
    }
}
