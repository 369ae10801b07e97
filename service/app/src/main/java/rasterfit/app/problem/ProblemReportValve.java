package rasterfit.app.problem;

import java.io.IOException;
import java.util.Map;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ErrorReportValve;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Replaces the container's error page. It tells of what never reaches the framework: an unreadable request line, a path
 * that cannot be decoded, a method or header that the container itself refuses, a failure in a filter.
 */
final class ProblemReportValve extends ErrorReportValve {

    private static final Logger LOG = LoggerFactory.getLogger(ProblemReportValve.class);

    /** In words of our own: the container's messages name classes and quote what was sent. */
    private static final Map<Integer, String> DETAILS = Map.of(
            400, "The request line, the path or a header field is malformed, or the header fields are too large.",
            404, "There is no resource at this address.",
            405, "The service does not offer this method.");

    private final ProblemWriter writer;

    ProblemReportValve(ProblemWriter writer) {
        this.writer = writer;
    }

    @Override
    protected void report(Request request, Response response, @Nullable Throwable thrown) {
        int status = response.getStatus();
        // As in the page replaced here: nothing to tell below 400, nor once the body is begun.
        if (status < 400 || response.getContentWritten() > 0 || !response.setErrorReported()) {
            return;
        }
        try {
            if (thrown != null && status >= 500) {
                writer.writeUnexpected(thrown, request, response);
            } else {
                writer.write(problem(status, response.getHeader("Allow")), request, response);
            }
            response.finishResponse();
        } catch (IOException gone) {
            LOG.debug("The client left before it was told of the error", gone);
        }
    }

    private static ProblemException problem(int status, @Nullable String allow) {
        ProblemType type = ProblemType.ofStatus(status);
        ProblemException problem = new ProblemException(type, DETAILS.getOrDefault(type.status(), type.title() + "."));
        return allow == null ? problem : problem.withHeader("Allow", allow);
    }
}
