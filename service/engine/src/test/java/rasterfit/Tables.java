package rasterfit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;

/** Tab-separated tables with a header line, from the test resources or from the shared reference folder. */
public final class Tables {
    private Tables() {}

    /** A table carried over into the project's own test resources; its first line names the source. */
    public static List<Map<String, String>> carriedOver(String resource) {
        try (InputStream in = Tables.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalArgumentException("no test resource " + resource);
            }
            return rows(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A table of the folder beside the repository; skips the test, visibly, where that is absent. */
    public static List<Map<String, String>> shared(String relative) {
        return rows(read(sharedFile(relative)));
    }

    /** A file or folder of the folder beside the repository; skips the test, visibly, where that is absent. */
    public static Path sharedFile(String relative) {
        Path root = Path.of("").toAbsolutePath();
        while (root != null && !Files.isDirectory(root.resolve(".mvn"))) {
            root = root.getParent();
        }
        Path file = root == null ? null : root.resolveSibling("shared").resolve(relative);
        Assumptions.assumeTrue(file != null && Files.exists(file), "../shared/" + relative + " is not there");
        return file;
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Map<String, String>> rows(String text) {
        List<String> lines = text.lines().filter(line -> !line.startsWith("#")).toList();
        String[] names = lines.get(0).split("\t", -1);
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split("\t", -1);
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < names.length; i++) {
                row.put(names[i], i < cells.length ? cells[i] : "");
            }
            rows.add(row);
        }
        return rows;
    }
}
