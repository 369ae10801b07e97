package rasterfit.app.database;

import java.nio.file.Path;

/** A second instance was started on the data directory of a live one. */
final class DirectoryInUseException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    DirectoryInUseException(Path directory) {
        super("Another instance of the service uses the data directory " + directory + ".");
    }

    /** What would let it start. */
    String remedy() {
        return "Stop it, or choose another directory with " + DataDirectory.VARIABLE
                + ", or give both an external server with spring.datasource.url.";
    }
}
