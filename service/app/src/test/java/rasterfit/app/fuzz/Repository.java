package rasterfit.app.fuzz;

import java.nio.file.Path;

/** Where the repository is: the fuzz tests run in a directory of their own. */
final class Repository {
    /** Maven names the directory of the module; elsewhere tests are started in it. */
    static final Path ROOT = Path.of(System.getProperty("basedir", "")).resolve("../..");

    private Repository() {}
}
