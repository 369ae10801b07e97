package rasterfit.app.database;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Tells that the data directory is in use, in place of a stack trace. Found through {@code META-INF/spring.factories}. */
final class DirectoryRefusal extends AbstractFailureAnalyzer<DirectoryInUseException> {
    @Override
    protected FailureAnalysis analyze(Throwable failure, DirectoryInUseException cause) {
        return new FailureAnalysis(String.valueOf(cause.getMessage()), cause.remedy(), cause);
    }
}
