package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * The README's request against the running service gives the README's answer, and that answer is right: its numbers are
 * worked out here by hand.
 */
class ReadmeExampleTest extends ServedTest {
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
    private static final Path ROOT = Path.of("..", "..");
    private static final Path README = ROOT.resolve("README.md");
    private static final Path EXAMPLES = ROOT.resolve("openapi").resolve("examples");
    private static final Path EXPLAINED = EXAMPLES.resolve("readme-answer-explained.json");

    @Test
    void theReadmesRequestGivesTheReadmesAnswer() throws Exception {
        String request = Files.readString(EXAMPLES.resolve("readme-request.json"));
        JsonNode answer = match(request);
        JsonNode explained = match(explained(request));
        if (Boolean.getBoolean("rasterfit.examples.write")) {
            replaceBlock("request", request.strip());
            replaceBlock("answer", JSON.writeValueAsString(answer));
            Files.writeString(EXPLAINED, JSON.writeValueAsString(explained) + "\n");
        }
        assertThat(JSON.readTree(block("request"))).isEqualTo(JSON.readTree(request));
        assertThat(answer).isEqualTo(JSON.readTree(block("answer")));
        assertThat(explained).isEqualTo(JSON.readTree(Files.readString(EXPLAINED)));
    }

    /**
     * Worked by hand from the request. Source of the rates: arithmetic from 3/2 of the 525-line subcarrier, 315/88 MHz
     * (ITU-R BT.1700); of VIC 2: CTA-861-I table 1; of ±0.5 % and the half lines: the definitions in the criteria and
     * rules.
     */
    @Test
    void theReadmesNumbersAreRight() throws Exception {
        JsonNode setup =
                match(Files.readString(EXAMPLES.resolve("readme-request.json"))).at("/ranked/0");
        JsonNode mode = setup.at("/modeSettings/0");
        JsonNode measures = mode.get("measures");

        // 2 · 858 · 59062500/11/341 = 27 019 794.72 Hz; 2 · 262 lines; 858 samples a line.
        assertThat(mode.at("/settings/samplesPerLine").intValue()).isEqualTo(858);
        assertThat(mode.at("/outputTiming/pixelClockHz").stringValue()).isEqualTo("9213750000/341");
        assertThat(mode.at("/outputTiming/horizontalTotal").asString()).isEqualTo("858");
        assertThat(mode.at("/outputTiming/verticalTotal").asString()).isEqualTo("524");
        // (135/11 MHz) / 2 / (59.0625/11 MHz) = 67.5/59.0625 = 8/7.
        assertThat(measures.get("pixelAspectRatio").stringValue()).isEqualTo("8/7");
        // 858/341 = 78/31.
        assertThat(measures.get("samplesPerDot").stringValue()).isEqualTo("78/31");
        // Near VIC 2: 524 lines of 525, clock 27.0197947/27 - 1 = +0.0733 %.
        assertThat(measures.get("acceptance").stringValue()).isEqualTo("NEAR_LISTED");
        assertThat(measures.get("listedAs").stringValue()).isEqualTo("vic:2");
        assertThat(measures.at("/deviations/verticalTotal").asString()).isEqualTo("-1");
        assertThat(measures.at("/deviations/pixelClockPercent").doubleValue()).isCloseTo(0.0733138, within(1e-7));
        // Rows: 2 per line, 1080 panel rows for 480 · (1 - 2·0.035) = 446.4 raster rows: 2 · 1080/446.4 = 150/31.
        assertThat(measures.get("verticalScale").stringValue()).isEqualTo("150/31");
        // Columns: 78/31 per dot, 4:3 of 1080 rows = 1440 panel columns for 720 · 0.93 = 669.6: 78/31 · 1440/669.6.
        assertThat(measures.get("horizontalScale").stringValue()).isEqualTo("5200/961");
        // 5200/961 / (150/31) / (8/7) - 1 = 36400/37200 - 1 = -2/93.
        assertThat(measures.get("aspectErrorPercent").doubleValue()).isCloseTo(-200.0 / 93, within(1e-5));
        // Each edge hides 0.035 · 480 = 16.8 rows = 8.4 lines.
        assertThat(measures.get("croppedLines").doubleValue()).isCloseTo(16.8, within(1e-9));
        // One line of 1/15745.801 s = 63.5090 µs and 2 µs of electronics.
        assertThat(measures.at("/addedLatencyMs/greatest").doubleValue()).isCloseTo(0.065509, within(5e-7));
        // A television of unstated preset 60 ms, standard definition 25 ms more (our own assumptions).
        assertThat(measures.at("/totalLatencyMs/typical").doubleValue()).isCloseTo(85.0655, within(5e-5));
        assertThat(setup.at("/price/amount").stringValue()).isEqualTo("72.00");

        double sum = 0;
        for (JsonNode criterion : setup.get("criteria")) {
            sum += criterion.get("weight").doubleValue()
                    * criterion.get("utility").doubleValue();
        }
        assertThat(setup.get("score").doubleValue()).isCloseTo(sum, within(5e-6));
    }

    private JsonNode match(String body) throws IOException, InterruptedException {
        HttpResponse<String> response = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(body)));
        assertThat(response.statusCode()).as(response.body()).isEqualTo(200);
        ObjectNode answer = (ObjectNode) JSON.readTree(response.body());
        // As on a catalogue that nobody has changed, though other tests share it.
        assertThat(answer.path("catalogueRevision").asLong()).isPositive();
        return answer.put("catalogueRevision", 1);
    }

    private static String explained(String request) {
        ObjectNode tree = (ObjectNode) JSON.readTree(request);
        tree.put("explain", "FULL");
        return JSON.writeValueAsString(tree);
    }

    private static Matcher find(String name, String page) {
        Matcher matcher = Pattern.compile("```json " + name + "\n(.*?)\n```", Pattern.DOTALL)
                .matcher(page);
        assertThat(matcher.find()).as("block " + name + " in the README").isTrue();
        return matcher;
    }

    private static String block(String name) throws IOException {
        return find(name, Files.readString(README)).group(1);
    }

    private static void replaceBlock(String name, String content) throws IOException {
        String page = Files.readString(README);
        Matcher matcher = find(name, page);
        Files.writeString(README, page.substring(0, matcher.start(1)) + content + page.substring(matcher.end(1)));
    }
}
