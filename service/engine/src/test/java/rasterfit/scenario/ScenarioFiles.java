package rasterfit.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The scenario texts among the test resources. */
final class ScenarioFiles {
    private static final List<String> THEMES = List.of(
            "a-direct.txt",
            "b-converters.txt",
            "c-cables-and-adapters.txt",
            "d-sync-and-levels.txt",
            "e-encodings-and-rf.txt",
            "f-switches.txt",
            "g-two-converters.txt",
            "h-irregular-sources.txt",
            "i-display-behaviour.txt",
            "j-hazards.txt",
            "k-modes-and-libraries.txt",
            "l-price-owned-limits.txt");

    private ScenarioFiles() {}

    /** Every scenario of every theme, in order. */
    static List<Scenario> all() {
        List<Scenario> all = new ArrayList<>();
        for (String file : THEMES) {
            all.addAll(ScenarioReader.read(file, text(file)));
        }
        return all;
    }

    /** First words of the lines of a list; lines that begin with # are comments. */
    static List<String> listed(String file) {
        return text(file)
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(line -> line.trim().split(" +", 2)[0])
                .toList();
    }

    private static String text(String file) {
        try (InputStream in = ScenarioFiles.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalArgumentException("no test resource " + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
