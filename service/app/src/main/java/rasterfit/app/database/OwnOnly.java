package rasterfit.app.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;

/** Directories that only the user who runs the service may look into: programs are started from there. */
final class OwnOnly {
    private OwnOnly() {}

    /** Creates what is missing of it, and takes it from others where the file system knows of others. */
    static void create(Path directory) throws IOException {
        Files.createDirectories(directory);
        PosixFileAttributeView view = Files.getFileAttributeView(directory, PosixFileAttributeView.class);
        if (view != null) {
            view.setPermissions(PosixFilePermissions.fromString("rwx------"));
        }
    }
}
