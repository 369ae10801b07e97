package rasterfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * Debian's {@code edid-decode} as an independent opinion. Where it is not installed the test that asks is skipped, visibly;
 * with {@code RASTERFIT_REQUIRE_ORACLES=true} in the environment it fails.
 */
public final class EdidDecode {
    private static final String NAME = "edid-decode";
    private static final long MOST_SECONDS = 120;

    private EdidDecode() {}

    /** What one call prints for many options; they are spread over as many processes as their length needs. */
    public static List<String> lines(List<String> options) {
        String tool = require();
        int atOnce = 1000;
        List<String> lines = new ArrayList<>();
        for (int from = 0; from < options.size(); from += atOnce) {
            List<String> command = new ArrayList<>(List.of(tool));
            command.addAll(options.subList(from, Math.min(from + atOnce, options.size())));
            lines.addAll(run(command, ""));
        }
        return lines;
    }

    /** One call for each element, in order, started by one shell: for options of which a call heeds only the last. */
    public static List<String> linesOfCalls(List<String> options) {
        String tool = require();
        StringBuilder script = new StringBuilder("set -e\n");
        options.forEach(option ->
                script.append('"').append(tool).append("\" ").append(option).append('\n'));
        return run(List.of("sh"), script.toString());
    }

    /**
     * What it prints for each EDID: all timings in full, preferred timings, native resolutions. Two processes at a time. Nothing
     * for an EDID over which it breaks down.
     */
    public static List<List<String>> decoded(List<byte[]> edids) {
        return decoded(edids, "-s -L -p -n");
    }

    /** As {@link #decoded}, followed by what it finds wrong with each. */
    public static List<List<String>> checked(List<byte[]> edids) {
        return decoded(edids, "-c");
    }

    private static List<List<String>> decoded(List<byte[]> edids, String options) {
        String tool = require();
        Path folder = null;
        try {
            folder = Files.createTempDirectory("oracle");
            for (int i = 0; i < edids.size(); i++) {
                Files.write(folder.resolve(i + ".edid"), edids.get(i));
            }
            String each = "\"" + tool + "\" " + options + " $i.edid >$i.txt 2>&1; s=$?; "
                    // 254 only means that the EDID breaks a rule; above 128 a signal ended the process.
                    + "[ $s -eq 0 ] || [ $s -eq 254 ] || { [ $s -gt 128 ] && : >$i.txt; } || { echo $i: $s; exit 1; }";
            String half = "cd \"%s\"; i=%d; while [ $i -lt %d ]; do %s; i=$((i+2)); done";
            String script = "(" + String.format(half, folder, 0, edids.size(), each) + ") & "
                    + "(" + String.format(half, folder, 1, edids.size(), each) + "); second=$?; "
                    + "wait $! && exit $second\n";
            run(List.of("sh"), script);
            List<List<String>> decoded = new ArrayList<>();
            for (int i = 0; i < edids.size(); i++) {
                // It prints names as they stand, and they may be anything.
                decoded.add(Files.readAllLines(folder.resolve(i + ".txt"), StandardCharsets.ISO_8859_1));
            }
            return decoded;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            deleteFolder(folder, edids.size());
        }
    }

    private static String require() {
        Optional<Path> found = Arrays.stream(
                        System.getenv().getOrDefault("PATH", "").split(File.pathSeparator, -1))
                .map(folder -> Path.of(folder, NAME))
                .filter(Files::isExecutable)
                .findFirst();
        String missing = NAME + " is not installed: nothing to compare with";
        if (found.isEmpty() && "true".equals(System.getenv("RASTERFIT_REQUIRE_ORACLES"))) {
            Assertions.fail(missing);
        }
        Assumptions.assumeTrue(found.isPresent(), missing);
        return found.orElseThrow().toString();
    }

    private static List<String> run(List<String> command, String input) {
        Path in = null;
        Path out = null;
        try {
            in = Files.createTempFile("oracle", ".in");
            out = Files.createTempFile("oracle", ".out");
            Files.writeString(in, input);
            Process process = new ProcessBuilder(command)
                    .redirectInput(in.toFile())
                    .redirectOutput(out.toFile())
                    .redirectErrorStream(true)
                    .start();
            if (!process.waitFor(MOST_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                Assertions.fail(NAME + " did not end within " + MOST_SECONDS + " s");
            }
            List<String> lines = Files.readAllLines(out, StandardCharsets.UTF_8);
            assertThat(process.exitValue()).as("%s: %s", NAME, lines).isZero();
            return lines;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } finally {
            delete(in);
            delete(out);
        }
    }

    private static void deleteFolder(Path folder, int edids) {
        if (folder == null) {
            return;
        }
        for (int i = 0; i < edids; i++) {
            delete(folder.resolve(i + ".edid"));
            delete(folder.resolve(i + ".txt"));
        }
        delete(folder);
    }

    private static void delete(Path file) {
        try {
            if (file != null) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
