package rasterfit.edid.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rasterfit.EdidDecode;
import rasterfit.Tables;

/** Every EDID of the folder beside the repository, read by {@code EdidReader} and by {@code edid-decode}. */
class SuppliedEdidsOracleTest {
    @Test
    void everySuppliedEdidReadsAsInTheOracle() throws IOException {
        List<Path> files;
        try (Stream<Path> folder = Files.list(Tables.sharedFile("edid"))) {
            files = folder.filter(file -> file.toString().endsWith(".edid"))
                    .sorted()
                    .toList();
        }
        List<byte[]> edids = new ArrayList<>();
        for (Path file : files) {
            edids.add(Files.readAllBytes(file));
        }
        List<List<String>> printed = EdidDecode.decoded(edids);
        Comparison comparison = new Comparison();
        for (int i = 0; i < edids.size(); i++) {
            comparison.add(files.get(i).getFileName().toString(), edids.get(i), printed.get(i));
        }
        System.out.println(comparison);
        comparison.assertNothingUnexplained();
        assertThat(comparison.edids()).isEqualTo(65);
        assertThat(comparison.numbers()).isGreaterThan(26_000);
        comparison.assertKnown(reason -> reason.supplied);
    }
}
