package rasterfit.app.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** From measured rates and counts to a mode, over HTTP. */
class IdentifyTimingTest extends ServedTest {
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
    private static final Path EXAMPLES = Path.of("..", "..", "openapi", "examples");
    private static final Path ANSWER = EXAMPLES.resolve("identify-timing-answer.json");

    @Test
    void thePublishedExampleGivesThePublishedAnswer() throws Exception {
        JsonNode answer = identified(Files.readString(EXAMPLES.resolve("identify-timing.json")));
        if (Boolean.getBoolean("rasterfit.examples.write")) {
            Files.writeString(ANSWER, JSON.writeValueAsString(answer) + "\n");
        }
        assertThat(answer).isEqualTo(JSON.readTree(Files.readString(ANSWER)));
    }

    @Test
    void theContractShowsTheExample() throws Exception {
        JsonNode operation = JSON.readTree(get("/v3/api-docs").body()).at("/paths/~1v1~1timings~1identify/post");
        assertThat(operation.at("/requestBody/content/application~1json/example"))
                .isEqualTo(JSON.readTree(Files.readString(EXAMPLES.resolve("identify-timing.json"))));
        assertThat(operation.at("/responses/200/content/application~1json/example"))
                .isEqualTo(JSON.readTree(Files.readString(ANSWER)));
    }

    /** Arithmetic from SMPTE 170M's subcarrier: 3/2 · 315/88 MHz = 59062500/11 Hz; / 341 / 262 = 60.098478 Hz. */
    @Test
    void thePublishedExampleIsRight() throws Exception {
        JsonNode answer = identified(Files.readString(EXAMPLES.resolve("identify-timing.json")));
        JsonNode best = answer.at("/candidates/0");
        assertThat(best.path("rank").asInt()).isEqualTo(1);
        assertThat(best.path("kind").asString()).isEqualTo("CLASS");
        assertThat(best.path("timingClass").asString()).isEqualTo("l525-p262-sc3over2-d341");
        assertThat(best.at("/clock/of").asString()).isEqualTo("SUBCARRIER_525");
        assertThat(best.at("/clock/factor").asString()).isEqualTo("3/2");
        assertThat(best.at("/timing/lineRateHz").asString()).isEqualTo("59062500/3751");
        assertThat(best.at("/timing/fieldRateHz").asString()).isEqualTo("29531250/491381");
        // 341 / 5.369318 MHz.
        assertThat(best.at("/timing/linePeriodUs").asDouble()).isCloseTo(63.5090, within(5e-5));
        assertThat(best.at("/bases/linesPerField").asString()).isEqualTo("COMPUTED");
        assertThat(best.at("/bases/dotClockHz").asString()).isEqualTo("ASSUMED");
        assertThat(best.path("given").asInt()).isEqualTo(6);
        assertThat(best.path("explained").asInt()).isEqualTo(6);
        assertThat(best.path("unexplained")).isEmpty();
        // 15 745.8 / 15 745.801120 - 1 = -0.0711 ppm.
        assertThat(best.at("/deviations/0/member").asString()).isEqualTo("lineRateHz");
        assertThat(best.at("/deviations/0/deviationPpm").asDouble()).isCloseTo(-0.0711, within(5e-4));
        assertThat(best.at("/deviations/0/withinTolerance").asBoolean()).isTrue();
        assertThat(best.path("usualWidth").asBoolean()).isTrue();
        assertThat(best.path("toAdd")).isEmpty();
        assertThat(answer.path("candidates").size()).isLessThanOrEqualTo(3);
        assertThat(answer.at("/derived/0/member").asString()).isEqualTo("linesPerField");
        assertThat(answer.at("/derived/0/value").asDouble()).isCloseTo(262, within(0.05));
        List<String> open = new ArrayList<>();
        answer.path("open").forEach(part -> open.add(part.path("member").asString()));
        assertThat(open).containsExactlyInAnyOrder("dotClockHz", "dotsPerLine");
    }

    @Test
    void theModeOfACandidateIsOneOfAMatch() throws Exception {
        ObjectNode request = (ObjectNode) JSON.readTree(Files.readString(EXAMPLES.resolve("readme-request.json")));
        JsonNode answer = identified(Files.readString(EXAMPLES.resolve("identify-timing.json")));
        ObjectNode source = (ObjectNode) request.path("source");
        source.putArray("modes").add(answer.at("/candidates/0/mode"));
        HttpResponse<String> matched = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(JSON.writeValueAsString(request))));
        assertThat(matched.statusCode()).as(matched.body()).isEqualTo(200);
        assertThat(JSON.readTree(matched.body()).path("ranked")).isNotEmpty();
    }

    @Test
    void theModeOfAClassIsOneOnceThePictureIsAdded() throws Exception {
        ObjectNode request = (ObjectNode) JSON.readTree(Files.readString(EXAMPLES.resolve("readme-request.json")));
        JsonNode known = classOf("l625-p312-sc6over5-d341");
        assertThat(known.path("toAdd").size()).isEqualTo(1);
        assertThat(known.at("/toAdd/0").asString()).isEqualTo("active");
        ObjectNode mode = (ObjectNode) known.path("mode");
        mode.putObject("active")
                .put("dots", 256)
                .put("lines", 240)
                .put("firstDot", 65)
                .put("firstLine", 41);
        ((ObjectNode) request.path("source")).putArray("modes").add(mode);
        HttpResponse<String> matched = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(JSON.writeValueAsString(request))));
        assertThat(matched.statusCode()).as(matched.body()).isEqualTo(200);
    }

    @Test
    void theClassesOfBroadcastTimingAreListed() throws Exception {
        // Arithmetic: 6/5 · 4.43361875 MHz / 341 / 312 = 50.006979 Hz (ITU-R BT.1700's subcarrier).
        JsonNode known = classOf("l625-p312-sc6over5-d341");
        assertThat(known.at("/timing/dotClockHz").asString()).isEqualTo("10640685/2");
        assertThat(known.at("/timing/fieldRateHz").asString()).isEqualTo("322445/6448");
        assertThat(known.at("/timing/lineStandard").asString()).isEqualTo("L625_50");
        // 341 · 5/6.
        assertThat(known.path("subcarrierCyclesPerLine").asString()).isEqualTo("1705/6");
        assertThat(known.path("sources")).isNotEmpty();
        // ITU-R BT.601: 858 samples of 13.5 MHz; SMPTE 170M: 60/1.001 Hz.
        JsonNode interlaced = classOf("l525-i525-luma1-d858");
        assertThat(interlaced.at("/timing/fieldRateHz").asString()).isEqualTo("60000/1001");
        assertThat(interlaced.at("/timing/scan").asString()).isEqualTo("INTERLACED");
    }

    @Test
    void aPlainValueIsAsCertainAsItsLastDecimalAndThatIsTold() throws Exception {
        JsonNode answer = identified("{'fieldRateHz': '59.9', 'dotClockHz': '13500000', 'linePeriodUs': 63.6}");
        // Half a unit of the last decimal: 0.05 of 63.6 µs and of 59.9 Hz; of whole hertz 100 ppm.
        assertThat(answer.at("/measured/0/member").asString()).isEqualTo("linePeriodUs");
        assertThat(answer.at("/measured/0/tolerancePpm").asDouble()).isCloseTo(50_000 / 63.6, within(5e-3));
        assertThat(answer.at("/measured/1/tolerancePpm").asDouble()).isCloseTo(50_000 / 59.9, within(5e-3));
        assertThat(answer.at("/measured/2/tolerancePpm").asDouble()).isEqualTo(100);
        answer.path("measured")
                .forEach(value -> assertThat(value.path("basis").asString()).isEqualTo("ASSUMED"));
        // SMPTE 170M and ITU-R BT.601: 63.556 µs, 59.94 Hz, 858 samples.
        assertThat(answer.at("/candidates/0/timing/dotsPerLine").asString()).isEqualTo("858");
        assertThat(answer.at("/candidates/0/timing/linesPerField").asString()).isEqualTo("525/2");
    }

    @Test
    void whatWasNotCountedIsToAdd() throws Exception {
        JsonNode best = identified("{'dotClockHz': '14750000', 'dotsPerLine': '944', 'linesPerField': '625/2',"
                        + " 'active': {'lines': 288}}")
                .at("/candidates/0");
        assertThat(best.at("/mode/active/lines").asInt()).isEqualTo(288);
        List<String> toAdd = new ArrayList<>();
        best.path("toAdd").forEach(path -> toAdd.add(path.asString()));
        assertThat(toAdd).containsExactly("active/dots", "active/firstDot", "active/firstLine");
        assertThat(best.at("/mode/lineStandard").asString()).isEqualTo("L625_50");
        assertThat(best.at("/mode/scan").asString()).isEqualTo("INTERLACED");
    }

    @Test
    void nothingThatFitsIsToldByItsNumber() throws Exception {
        // VESA DMT 1.13, 0x04: 25.175 MHz, 800 × 525; no broadcast clock.
        JsonNode answer = identified("{'dotClockHz': '25175000', 'dotsPerLine': '800', 'linesPerField': '525'}");
        assertThat(answer.path("fitting").asInt()).isZero();
        assertThat(answer.path("message").asString()).startsWith("No timing").contains("nearest");
        assertThat(answer.at("/candidates/0/kind").asString()).isEqualTo("AS_MEASURED");
        assertThat(answer.at("/candidates/0").has("clock")).isFalse();
        assertThat(answer.at("/candidates/0").has("timingClass")).isFalse();
        assertThat(answer.at("/candidates/1/unexplained/0").asString()).isEqualTo("dotsPerLine");
        assertThat(answer.at("/candidates/1/explained").asInt()).isEqualTo(1);
    }

    @Test
    void aRateFarFromBroadcastGetsAdviceInsteadOfCandidates() throws Exception {
        JsonNode answer = identified("{'lineRateHz': '50000'}");
        assertThat(answer.path("candidates")).isEmpty();
        assertThat(answer.path("message").asString()).contains("dot clock");
    }

    @Test
    void whatStaysOpenIsCountedAndListedUpToTwenty() throws Exception {
        JsonNode vague = identified("{'dotClockHz': {'value': '5360000', 'tolerancePpm': 20000},"
                + " 'dotsPerLine': {'least': '340', 'greatest': '350'}, 'linesPerField': '262', 'top': 1}");
        assertThat(vague.path("candidates")).hasSize(1);
        JsonNode clock = part(vague, "dotClockHz");
        // ITU-R BT.1700 and SMPTE 170M: 6/5 · 4.43361875 MHz and 3/2 · 315/88 MHz.
        assertThat(clock.path("count").asInt()).isEqualTo(2);
        assertThat(clock.at("/values/0").asString()).isEqualTo("10640685/2");
        assertThat(clock.at("/values/1").asString()).isEqualTo("59062500/11");
        // 340 to 350 in halves are 21 counts, of which two clocks make twice as many rates.
        JsonNode lineRate = part(vague, "lineRateHz");
        assertThat(lineRate.path("count").asInt()).isGreaterThan(20);
        assertThat(lineRate.path("values")).hasSize(20);
        assertThat(lineRate.path("message").asString()).contains("lineRateHz");
    }

    private static JsonNode part(JsonNode answer, String member) {
        for (JsonNode part : answer.path("open")) {
            if (part.path("member").asString().equals(member)) {
                return part;
            }
        }
        throw new AssertionError(member + " is not open in " + answer);
    }

    @Test
    void contradictingValuesAreNamedAtTheirPlaces() throws Exception {
        // 15 750 / 262 = 60.114504 Hz.
        JsonNode problem = problem(
                identify("{'lineRateHz': '15750', 'linesPerField': '262', 'fieldRateHz': '60'}"), 422, "invalid-value");
        List<String> pointers = new ArrayList<>();
        for (JsonNode error : problem.path("errors")) {
            pointers.add(error.path("pointer").asString());
            assertThat(error.path("message").asString()).contains("60.114504 Hz", "60 Hz");
        }
        assertThat(pointers).containsExactly("/lineRateHz", "/linesPerField", "/fieldRateHz");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{}                                                     | 422 | invalid-value  | ``",
                "{'scan': 'PROGRESSIVE', 'active': {'dots': 256}}       | 422 | invalid-value  | ``",
                "{'lineRate': '15734'}                                  | 400 | unknown-member | /lineRate",
                "{'lineRateHz': 15734}                                  | 400 | wrong-type     | /lineRateHz",
                "{'lineRateHz': '15.7 kHz'}                             | 400 | wrong-type     | /lineRateHz",
                "{'lineRateHz': '-15734'}                               | 422 | invalid-value  | /lineRateHz",
                "{'lineRateHz': '15734', 'fieldRateHz': '0.5', 'dotClockHz': '1'}"
                        + " | 422 | invalid-value | /fieldRateHz /dotClockHz",
                "{'linePeriodUs': '64'}                                 | 400 | wrong-type     | /linePeriodUs",
                "{'linePeriodUs': 0}                                    | 422 | invalid-value  | /linePeriodUs",
                "{'linePeriodUs': {'value': '64', 'tolerancePpm': 1}}   | 400 | wrong-type"
                        + "     | /linePeriodUs/value",
                "{'lineRateHz': {}}                                     | 400 | missing-member"
                        + " | /lineRateHz/value /lineRateHz/tolerancePpm",
                "{'lineRateHz': {'value': '15734'}}                     | 400 | missing-member"
                        + " | /lineRateHz/tolerancePpm",
                "{'lineRateHz': {'least': '15734'}}                     | 400 | missing-member"
                        + " | /lineRateHz/greatest",
                "{'lineRateHz': {'value': '15734', 'greatest': '15735'}} | 422 | invalid-value  | /lineRateHz",
                "{'lineRateHz': {'least': '15735', 'greatest': '15734'}} | 422 | invalid-value"
                        + "  | /lineRateHz/greatest",
                "{'lineRateHz': {'least': '15000', 'greatest': '15751'}} | 422 | invalid-value"
                        + "  | /lineRateHz/greatest",
                "{'lineRateHz': {'value': '15734', 'tolerancePpm': 20001}} | 422 | invalid-value"
                        + "  | /lineRateHz/tolerancePpm",
                "{'lineRateHz': {'value': '15734', 'tolerancePpm': '5'}} | 400 | wrong-type"
                        + "     | /lineRateHz/tolerancePpm",
                "{'lineRateHz': {'value': '15734', 'ppm': 5}}           | 400 | unknown-member | /lineRateHz/ppm",
                "{'linesPerField': '262.25'}                            | 422 | invalid-value  | /linesPerField",
                "{'linesPerFrame': '525/2'}                             | 422 | invalid-value  | /linesPerFrame",
                "{'linesPerField': '262', 'scan': 'BOTH'}               | 400 | unknown-value  | /scan",
                "{'linesPerField': '262', 'scan': 'INTERLACED'}         | 422 | invalid-value"
                        + "  | /linesPerField /scan",
                "{'dotsPerLine': '341', 'active': {'dots': 340}}        | 422 | invalid-value"
                        + "  | /active/dots /dotsPerLine",
                "{'dotsPerLine': '341', 'active': {'dots': 0.5, 'lines': -1}} | 422 | invalid-value"
                        + "  | /active/dots /active/lines",
                "{'dotsPerLine': '341', 'active': {'width': 1}}         | 400 | unknown-member | /active/width",
                "{'linesPerField': '262', 'top': 0}                     | 422 | invalid-value  | /top",
                "{'linesPerField': '262', 'top': 101}                   | 422 | invalid-value  | /top",
            })
    void badInputIsAnsweredAtItsPlace(String body, int status, String code, String pointers) throws Exception {
        JsonNode problem = problem(identify(body), status, code);
        List<String> told = new ArrayList<>();
        problem.path("errors").forEach(error -> told.add(error.path("pointer").asString()));
        assertThat(told).as(problem.toString()).containsExactly(pointers.split(" ", -1));
    }

    private JsonNode classOf(String id) throws Exception {
        HttpResponse<String> answer = get("/v1/timings?standard=broadcast");
        assertThat(answer.statusCode()).isEqualTo(200);
        for (JsonNode item : JSON.readTree(answer.body()).path("items")) {
            if (item.path("id").asString().equals(id)) {
                return item;
            }
        }
        throw new AssertionError("no class " + id);
    }

    private JsonNode identified(String body) throws Exception {
        HttpResponse<String> answer = identify(body);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JSON.readTree(answer.body());
    }

    private HttpResponse<String> identify(String body) throws Exception {
        return send(request("/v1/timings/identify")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(body.replace('\'', '"'))));
    }
}
