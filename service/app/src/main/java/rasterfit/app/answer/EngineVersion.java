package rasterfit.app.answer;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.info.BuildProperties;
import org.springframework.stereotype.Component;

/** The version that every computed answer names. */
@Component
public final class EngineVersion {
    private final String value;

    public EngineVersion(ObjectProvider<BuildProperties> build) {
        // Only the build knows its version; a process started from bare classes has none.
        BuildProperties known = build.getIfAvailable();
        String version = known == null ? null : known.getVersion();
        this.value = version == null ? "unversioned" : version;
    }

    public String value() {
        return value;
    }
}
