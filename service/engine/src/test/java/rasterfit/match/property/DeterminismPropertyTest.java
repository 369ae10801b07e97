package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rasterfit.match.Intent;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;

/** The same request has the same answer: again, and in another process on another kind of machine. */
@Domain(GearArbitraries.class)
class DeterminismPropertyTest {
    private static final long SEED = 20;
    private static final long PATIENCE_SECONDS = 180;

    /** Settings on which a program can come to depend without meaning to. */
    private static final List<List<String>> MACHINES = List.of(
            List.of(
                    "-XX:hashCode=2", // every object has the same identity hash
                    "-Duser.language=tr",
                    "-Duser.country=TR",
                    "-Duser.timezone=Pacific/Auckland"),
            List.of(
                    "-XX:hashCode=3", // identity hashes count upwards
                    "-Duser.language=ar",
                    "-Duser.country=EG",
                    "-Duser.timezone=America/St_Johns",
                    "-Dfile.encoding=ISO-8859-1"));

    @Property(seed = "20", edgeCases = EdgeCasesMode.NONE)
    @Label("The same request twice has equal answers, to the last bit of the last step")
    @StatisticsReport(onFailureOnly = true)
    void againIsTheSame(@ForAll MatchRequest request, @ForAll("intents") Intent intent) {
        MatchRequest explained = Altered.with(
                Altered.with(Altered.settingsPerRoute(request, 2), "explain", MatchRequest.Explanation.FULL),
                "intent",
                intent);
        MatchResult first = Ranking.match(explained);
        MatchResult second = Ranking.match(explained);
        assertThat(second).isEqualTo(first);
        assertThat(Rendering.of(second)).isEqualTo(Rendering.of(first));
        Statistics.label("answers").collect(first.ranked().isEmpty() ? "empty" : "setups");
        Statistics.label("answers").coverage(seen -> seen.check("setups").percentage(share -> share > 40));
    }

    @Provide
    Arbitrary<Intent> intents() {
        return Arbitraries.of(Intent.class);
    }

    @Test
    @DisplayName(
            "Virtual machines with other hashes, languages, time zones and encodings give answers with the same digests")
    void otherMachinesGiveTheSameAnswers(@TempDir Path folder) throws IOException, InterruptedException {
        List<Process> processes = new ArrayList<>();
        List<Path> outputs = new ArrayList<>();
        try {
            for (List<String> machine : MACHINES) {
                Path output = folder.resolve("machine-" + processes.size());
                outputs.add(output);
                processes.add(start(machine, output));
            }
            List<String> own = AnswerDigests.of(SEED);
            assertThat(own).hasSize(AnswerDigests.REQUESTS + 1);
            assertThat(own.stream().filter(line -> !line.endsWith(" 0")).count())
                    .as("answers with setups")
                    .isGreaterThan(AnswerDigests.REQUESTS / 2);
            for (int i = 0; i < processes.size(); i++) {
                boolean ended = processes.get(i).waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
                assertThat(ended).as("%s ended", MACHINES.get(i)).isTrue();
                assertThat(Files.readAllLines(outputs.get(i), StandardCharsets.UTF_8))
                        .as("%s", MACHINES.get(i))
                        .isEqualTo(own);
            }
        } finally {
            processes.forEach(Process::destroyForcibly);
        }
    }

    private static Process start(List<String> machine, Path output) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-XX:+UnlockExperimentalVMOptions");
        command.addAll(machine);
        command.add("-cp");
        command.add(classPath());
        command.add(AnswerDigests.class.getName());
        command.add(Long.toString(SEED));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
    }

    /** Surefire may hide the real class path in the manifest of a jar and tell it by a property. */
    private static String classPath() {
        String told = System.getProperty("surefire.test.class.path");
        return told != null ? told : System.getProperty("java.class.path");
    }
}
