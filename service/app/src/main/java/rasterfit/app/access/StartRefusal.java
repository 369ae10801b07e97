package rasterfit.app.access;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Tells why the service does not start, in place of a stack trace. Found through {@code META-INF/spring.factories}. */
final class StartRefusal extends AbstractFailureAnalyzer<StartRefusedException> {
    @Override
    protected FailureAnalysis analyze(Throwable failure, StartRefusedException cause) {
        return new FailureAnalysis(cause.getMessage(), cause.remedy(), cause);
    }
}
