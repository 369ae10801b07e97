package rasterfit.app.database;

import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Where the embedded server keeps its data: one directory, wherever the service is started from. */
final class DataDirectory {
    static final String VARIABLE = "RASTERFIT_DATA_DIR";

    private DataDirectory() {}

    /**
     * {@code RASTERFIT_DATA_DIR}, else {@code rasterfit} in the user's data directory (XDG Base Directory Specification:
     * {@code XDG_DATA_HOME}, by default {@code .local/share} in the home directory; a relative one is ignored).
     */
    static Path of(Map<String, String> environment, String userHome) {
        String chosen = environment.get(VARIABLE);
        if (chosen != null && !chosen.isBlank()) {
            return Path.of(chosen).toAbsolutePath().normalize();
        }
        return dataHome(environment.get("XDG_DATA_HOME"), userHome).resolve("rasterfit");
    }

    private static Path dataHome(@Nullable String declared, String userHome) {
        boolean isUsable = declared != null && Path.of(declared).isAbsolute();
        return isUsable ? Path.of(declared) : Path.of(userHome, ".local", "share");
    }
}
