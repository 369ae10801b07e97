package rasterfit.app.display;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** EDIDs of real displays over HTTP, against a manifest made by another decoder; skipped where the folder is absent. */
class SuppliedEdidsDecodeTest extends ServedTest {
    private static final Path FOLDER = Path.of("../../../shared/edid");

    @Test
    void everyOneIsAnsweredWithTheLimitsAndVicsOfTheManifest() throws Exception {
        assumeTrue(
                Files.isDirectory(FOLDER), "no folder " + FOLDER + " beside the repository: nothing to compare with");
        for (Map<String, String> row : rows()) {
            byte[] edid = Files.readAllBytes(FOLDER.resolve(row.get("id") + ".edid"));
            HttpResponse<String> answer = send(request("/v1/displays/decode")
                    .header("Content-Type", "application/octet-stream")
                    .POST(BodyPublishers.ofByteArray(edid)));
            assertThat(answer.statusCode()).as(row.get("id")).isEqualTo(200);
            JsonNode display = JsonMapper.shared().readTree(answer.body());
            assertThat(display.at("/product/edidVersion").asString())
                    .as(row.get("id"))
                    .isEqualTo(row.get("ver"));
            assertThat(vics(display)).as(row.get("id")).isEqualTo(listedVics(row));
            if (!row.get("range_v").equals("-")) {
                assertThat(display.at("/rangeLimits/fieldRateHz/min").asString() + "-"
                                + display.at("/rangeLimits/fieldRateHz/max").asString())
                        .as(row.get("id"))
                        .isEqualTo(row.get("range_v"));
            }
        }
    }

    private static List<Map<String, String>> rows() throws Exception {
        List<String> lines = Files.readAllLines(FOLDER.resolve("manifest.tsv"));
        String[] names = lines.get(0).split("\t", -1);
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split("\t", -1);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < names.length; i++) {
                row.put(names[i], cells[i]);
            }
            rows.add(row);
        }
        assertThat(rows).hasSizeGreaterThan(50);
        return rows;
    }

    /** Without the reserved short video descriptors (CTA-861-I §7.5.1), which stand for no timing. */
    private static List<Integer> listedVics(Map<String, String> row) {
        return Arrays.stream(row.get("vics").split("[ ,]+", -1))
                .filter(cell -> !cell.isBlank())
                .map(Integer::valueOf)
                .filter(vic -> !List.of(0, 128, 254, 255).contains(vic))
                .distinct()
                .sorted()
                .toList();
    }

    private static List<Integer> vics(JsonNode display) {
        List<Integer> vics = new ArrayList<>();
        for (JsonNode timing : display.path("timings")) {
            if (timing.has("vic") && !timing.path("chroma420Only").asBoolean()) {
                vics.add(timing.path("vic").asInt());
            }
        }
        return vics.stream().sorted().toList();
    }
}
