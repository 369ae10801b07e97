package rasterfit.app.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The tables of CTA-861-I and VESA DMT over HTTP. */
class TimingsTest extends ServedTest {
    private static final Path TABLE = Path.of("../../../shared/reference/vics.tsv");

    @Test
    void allOf154TimingsAreListedByTheirNumber() throws Exception {
        Map<Integer, JsonNode> items = items();
        assertThat(items).hasSize(154);
        assertThat(items.keySet()).contains(1, 127, 193, 219).doesNotContain(0, 128, 192, 220);
    }

    @Test
    void aTimingIsThatOfTheStandard() throws Exception {
        JsonNode item = items().get(5);
        // CTA-861-I table 1, VIC 5: 1920 × 1080 interlaced, 33.75 kHz, 60 Hz, 74.25 MHz; table 2: 16:9.
        assertThat(item.path("id").asString()).isEqualTo("vic:5");
        assertThat(item.at("/timing/scan").asString()).isEqualTo("INTERLACED");
        assertThat(item.at("/timing/verticalTotal").asInt()).isEqualTo(1125);
        assertThat(item.at("/timing/lineRateHz").asString()).isEqualTo("33750");
        assertThat(item.at("/timing/fieldRateHz").asString()).isEqualTo("60");
        assertThat(item.path("pictureAspect").asString()).isEqualTo("16/9");
        // CTA-861-I §4: the other rate is 60/1.001 Hz, so the other clock 74.25/1.001 MHz.
        assertThat(item.path("otherPixelClockHz").asString()).isEqualTo("6750000000/91");
    }

    @Test
    void halfHeightTimingsCarryTheirVariants() throws Exception {
        // CTA-861-I table 1: 262 or 263 lines; 312, 313 or 314 lines.
        assertThat(items().get(8).path("variants")).hasSize(1);
        assertThat(items().get(8).at("/variants/0/verticalTotal").asInt()).isEqualTo(263);
        assertThat(items().get(23).path("variants")).hasSize(2);
        assertThat(items().get(23).at("/variants/1/verticalTotal").asInt()).isEqualTo(314);
    }

    @Test
    void everyRowOfTheReferenceTableIsThere() throws Exception {
        assumeTrue(Files.exists(TABLE), "no table " + TABLE + " beside the repository: nothing to compare with");
        List<String> lines = Files.readAllLines(TABLE);
        List<String> names = List.of(lines.get(0).split("\t", -1));
        Map<Integer, JsonNode> items = items();
        assertThat(lines).hasSize(155);
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split("\t", -1);
            JsonNode timing =
                    items.get(Integer.valueOf(cells[names.indexOf("vic")])).path("timing");
            assertThat(timing.path("horizontalActive").asString()).as(line).isEqualTo(cells[names.indexOf("w")]);
            assertThat(timing.path("verticalActive").asString()).as(line).isEqualTo(cells[names.indexOf("h")]);
            assertThat(timing.path("horizontalTotal").asString()).as(line).isEqualTo(cells[names.indexOf("htotal")]);
            assertThat(timing.path("horizontalSync").asString()).as(line).isEqualTo(cells[names.indexOf("hsync")]);
            assertThat(timing.path("verticalTotal").asString())
                    .as(line)
                    .isEqualTo(cells[names.indexOf("vtotal_frame")]);
            assertThat(timing.path("verticalFrontPorch").asString()).as(line).isEqualTo(cells[names.indexOf("vfp")]);
            assertThat(timing.path("pixelClockHz").asString()).as(line).isEqualTo(cells[names.indexOf("pixclk_hz")]);
        }
    }

    @Test
    void monitorTimingsAreListedToo() throws Exception {
        HttpResponse<String> response = get("/v1/timings?standard=dmt");
        assertThat(response.statusCode()).isEqualTo(200);
        JsonNode items = JsonMapper.shared().readTree(response.body()).path("items");
        // VESA DMT 1.13: 0x01 to 0x58; 0x52 is 1920 × 1080 at 60 Hz, 148.5 MHz, the raster of VIC 16.
        assertThat(items).hasSize(88);
        JsonNode item = items.get(0x52 - 1);
        assertThat(item.path("id").asString()).isEqualTo("dmt:0x52");
        assertThat(item.path("dmt").asInt()).isEqualTo(0x52);
        assertThat(item.has("vic")).isFalse();
        assertThat(item.at("/timing/pixelClockHz").asString()).isEqualTo("148500000");
        assertThat(item.at("/timing/horizontalTotal").asInt()).isEqualTo(2200);
    }

    @Test
    void aMonitorTimingHasItsCodesBorderAndSquarePixels() throws Exception {
        JsonNode items = JsonMapper.shared()
                .readTree(get("/v1/timings?standard=dmt").body())
                .path("items");
        // VESA DMT 1.13: 0x04 has borders of 8 pixels and 8 lines, standard code 31 40; 0x1B has CVT code 8F 18 21
        // alone.
        assertThat(items.get(0x04 - 1).at("/border/horizontalPixels").asInt()).isEqualTo(8);
        assertThat(items.get(0x04 - 1).at("/border/verticalLines").asInt()).isEqualTo(8);
        assertThat(items.get(0x04 - 1).path("standardCode").asString()).isEqualTo("0x3140");
        assertThat(items.get(0x1B - 1).path("cvtCode").asString()).isEqualTo("0x8f1821");
        assertThat(items.get(0x1B - 1).path("reducedBlanking").asBoolean()).isTrue();
        assertThat(items.get(0x1B - 1).has("standardCode")).isFalse();
        assertThat(items.get(0x1B - 1).has("border")).isFalse();
        assertThat(items.get(0x0E - 1).path("pictureAspect").asString()).isEqualTo("16/9");
        items.forEach(
                item -> assertThat(item.at("/pixelAspectRatios/0").asString()).isEqualTo("1"));
    }

    @Test
    void anotherStandardIsNotKnown() throws Exception {
        JsonNode problem = problem(get("/v1/timings?standard=vesa"), 400, "invalid-parameter");
        assertThat(problem.at("/errors/0/parameter").asString()).isEqualTo("standard");
        assertThat(message(problem)).contains("cta861");
    }

    @Test
    void theStandardHasToBeNamed() throws Exception {
        problem(get("/v1/timings"), 400, "invalid-parameter");
    }

    private Map<Integer, JsonNode> items() throws Exception {
        HttpResponse<String> answer = get("/v1/timings?standard=cta861");
        assertThat(answer.statusCode()).isEqualTo(200);
        Map<Integer, JsonNode> items = new HashMap<>();
        JsonMapper.shared()
                .readTree(answer.body())
                .path("items")
                .forEach(item -> items.put(item.path("vic").asInt(), item));
        return items;
    }
}
