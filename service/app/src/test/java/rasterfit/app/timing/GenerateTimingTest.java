package rasterfit.app.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Timings by formula over HTTP. */
class GenerateTimingTest extends ServedTest {
    private static final String CVT =
            "'formula': 'CVT', 'horizontalActive': 1920, 'verticalActive': 1200, 'fieldRateHz': '60'";

    @Test
    void aCoordinatedTimingOfReducedBlankingIsTheOneThatDmtPublishes() throws Exception {
        JsonNode answer = generated("{" + CVT + ", 'blanking': {'kind': 'REDUCED_V1'}}");
        // VESA DMT 1.13, 0x44: 1920 × 1200 at 60 Hz with reduced blanking.
        JsonNode published = JsonMapper.shared()
                .readTree(get("/v1/timings?standard=dmt").body())
                .path("items")
                .get(0x44 - 1);
        assertThat(published.path("id").asString()).isEqualTo("dmt:0x44");
        assertThat(answer.path("timing")).isEqualTo(published.path("timing"));
        assertThat(answer.at("/timing/pixelClockHz").asString()).isEqualTo("154000000");
        assertThat(answer.path("formula").asString()).isEqualTo("CVT");
        assertThat(answer.path("askedFieldRateHz").asString()).isEqualTo("60");
        assertThat(answer.path("engineVersion").asString()).matches("[0-9]+\\.[0-9]+\\.[0-9]+.*");
        assertThat(answer.has("margins")).isFalse();
    }

    @Test
    void whatIsAbsentIsOrdinaryProgressiveAndWithoutMargins() throws Exception {
        // VESA DMT 1.13, 0x45: 193.25 MHz, 2592 × 1245.
        JsonNode timing = generated("{" + CVT + "}").path("timing");
        assertThat(timing.path("pixelClockHz").asString()).isEqualTo("193250000");
        assertThat(timing.path("horizontalTotal").asInt()).isEqualTo(2592);
        assertThat(timing.path("verticalTotal").asInt()).isEqualTo(1245);
        assertThat(timing.path("scan").asString()).isEqualTo("PROGRESSIVE");
        assertThat(timing.path("horizontalPolarity").asString()).isEqualTo("NEGATIVE");
    }

    @Test
    void anInterlacedTimingCountsFields() throws Exception {
        // VESA CVT 1.2 in exact rationals, as edid-decode has it too: 82 MHz, 2432 × 1125, 59.941520 fields per second.
        JsonNode timing = generated("{'formula': 'CVT', 'horizontalActive': 1920, 'verticalActive': 1080,"
                        + " 'fieldRateHz': '60', 'scan': 'INTERLACED', 'blanking': {'kind': 'ORDINARY'}}")
                .path("timing");
        assertThat(timing.path("pixelClockHz").asString()).isEqualTo("82000000");
        assertThat(timing.path("horizontalTotal").asInt()).isEqualTo(2432);
        assertThat(timing.path("verticalTotal").asInt()).isEqualTo(1125);
        // 82 MHz / 2432 / 562.5 = 10250/171 Hz.
        assertThat(timing.path("fieldRateHz").asString()).isEqualTo("10250/171");
    }

    @Test
    void reducedBlankingOfVersion2CanRunAtTheVideoRate() throws Exception {
        // VESA DMT 1.13, 0x58: 4096 × 2160, 556.188 MHz, and 0x57 at exactly 60 Hz, 556.744 MHz.
        String size = "{'formula': 'CVT', 'horizontalActive': 4096, 'verticalActive': 2160, 'fieldRateHz': '60',";
        assertThat(generated(size + "'blanking': {'kind': 'REDUCED_V2', 'videoOptimised': true}}")
                        .at("/timing/pixelClockHz")
                        .asString())
                .isEqualTo("556188000");
        assertThat(generated(size + "'blanking': {'kind': 'REDUCED_V2'}}")
                        .at("/timing/pixelClockHz")
                        .asString())
                .isEqualTo("556744000");
    }

    @Test
    void reducedBlankingOfVersion3TakesItsParameters() throws Exception {
        // DisplayID 2.1a table 4-23: 3840 × 2160 at 60 Hz, 3920 pixels per line, 522.798 MHz.
        String size = "{'formula': 'CVT', 'horizontalActive': 3840, 'verticalActive': 2160, 'fieldRateHz': '60',";
        JsonNode usual = generated(size + "'blanking': {'kind': 'REDUCED_V3'}}").path("timing");
        assertThat(usual.path("pixelClockHz").asString()).isEqualTo("522798000");
        assertThat(usual.path("horizontalTotal").asInt()).isEqualTo(3920);
        assertThat(usual.path("verticalBackPorch").asInt()).isEqualTo(6);
        JsonNode wide = generated(size
                        + "'blanking': {'kind': 'REDUCED_V3', 'horizontalPixels': 160, 'leastVerticalUs': 705,"
                        + " 'earlySync': true}}")
                .path("timing");
        assertThat(wide.path("horizontalTotal").asInt()).isEqualTo(4000);
        // 705 µs of (1/60.021 s − 705 µs)/2160: 95.4, so 96 lines; half of them behind sync.
        assertThat(wide.path("verticalTotal").asInt()).isEqualTo(2160 + 96);
        assertThat(wide.path("verticalBackPorch").asInt()).isEqualTo(48);
    }

    @Test
    void aGeneralisedTimingKeepsTheRateExactly() throws Exception {
        // VESA GTF 1.1: 640 × 480 at 60 Hz is 23.856 MHz, 800 × 497.
        JsonNode timing = generated(gtf("640", "480", "60")).path("timing");
        assertThat(timing.path("pixelClockHz").asString()).isEqualTo("23856000");
        assertThat(timing.path("horizontalTotal").asInt()).isEqualTo(800);
        assertThat(timing.path("verticalTotal").asInt()).isEqualTo(497);
        assertThat(timing.path("fieldRateHz").asString()).isEqualTo("60");
        assertThat(generated(gtf("640", "480", "60000/1001"))
                        .at("/timing/fieldRateHz")
                        .asString())
                .isEqualTo("60000/1001");
    }

    @Test
    void marginsAreToldAndCountedToThePorches() throws Exception {
        JsonNode answer = generated(gtf("1024", "768", "60").replace("}", ", 'margins': true}"));
        // 1.8 % of 1024 pixels rounded to cells of 8, of 768 lines rounded (GTF 1.1).
        assertThat(answer.at("/margins/horizontalPixels").asInt()).isEqualTo(16);
        assertThat(answer.at("/margins/verticalLines").asInt()).isEqualTo(14);
        assertThat(answer.at("/timing/verticalFrontPorch").asInt()).isEqualTo(1 + 14);
        JsonNode coordinated = generated("{" + CVT + ", 'margins': true}");
        assertThat(coordinated.at("/margins/horizontalPixels").asInt()).isEqualTo(32);
        assertThat(coordinated.at("/margins/verticalLines").asInt()).isEqualTo(21);
    }

    @Test
    void aSecondaryCurveHasItsOwnBlanking() throws Exception {
        // edid-decode --gtf w=2000,h=1501,fps=75,secondary,C=35.5,M=500,K=100,J=10.5: 289.582 MHz, 32/200/232, +/−.
        JsonNode timing = generated(gtf("2000", "1501", "75")
                        .replace(
                                "}",
                                ", 'secondaryCurve': {'cPercent': 35.5, 'mPercentPerKhz': 500, 'k': 100,"
                                        + " 'jPercent': 10.5}}"))
                .path("timing");
        assertThat(timing.path("horizontalFrontPorch").asInt()).isEqualTo(32);
        assertThat(timing.path("horizontalSync").asInt()).isEqualTo(200);
        assertThat(timing.path("horizontalBackPorch").asInt()).isEqualTo(232);
        assertThat(timing.path("horizontalPolarity").asString()).isEqualTo("POSITIVE");
        assertThat(timing.path("verticalPolarity").asString()).isEqualTo("NEGATIVE");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{}                                                        | 400 | missing-member  | ``",
                "{'formula': 'OVT'}                                        | 400 | unknown-value   | ``",
                "{'formula': 'GTF'}                                        | 400 | missing-member"
                        + "  | /horizontalActive /verticalActive /fieldRateHz",
                "{'formula': 'GTF', 'colour': 1}                           | 400 | unknown-member  | /colour",
                "{%, 'fieldRateHz': 60}                                    | 400 | wrong-type      | /fieldRateHz",
                "{%, 'fieldRateHz': '60 Hz'}                               | 400 | wrong-type      | /fieldRateHz",
                "{%, 'fieldRateHz': '0'}                                   | 422 | invalid-value   | /fieldRateHz",
                "{%, 'fieldRateHz': '1025'}                                | 422 | invalid-value   | /fieldRateHz",
                "{%, 'horizontalActive': '640'}                            | 400 | wrong-type      | /horizontalActive",
                "{%, 'horizontalActive': 640.5}                            | 400 | wrong-type      | /horizontalActive",
                "{%, 'horizontalActive': 7}                                | 422 | invalid-value   | /horizontalActive",
                "{%, 'verticalActive': 65537}                              | 422 | invalid-value   | /verticalActive",
                "{%, 'verticalActive': 1, 'scan': 'INTERLACED'}            | 422 | invalid-value   | /verticalActive",
                "{%, 'scan': 'BOTH'}                                       | 400 | unknown-value   | /scan",
                "{%, 'margins': 'true'}                                    | 400 | wrong-type      | /margins",
                "{%, 'blanking': {'kind': 'REDUCED_V4'}}                   | 400 | unknown-value   | /blanking",
                "{%, 'blanking': {}}                                       | 400 | missing-member  | /blanking",
                "{%, 'blanking': {'kind': 'REDUCED_V1', 'earlySync': true}} | 400 | unknown-member | /blanking/earlySync",
                "{%, 'blanking': {'kind': 'REDUCED_V2'}, 'scan': 'INTERLACED', 'margins': true}"
                        + " | 422 | invalid-value | /scan /margins",
                "{%, 'blanking': {'kind': 'REDUCED_V3', 'horizontalPixels': 208}}"
                        + " | 422 | invalid-value | /blanking/horizontalPixels",
                "{%, 'blanking': {'kind': 'REDUCED_V3', 'horizontalPixels': 84}}"
                        + " | 422 | invalid-value | /blanking/horizontalPixels",
                "{%, 'blanking': {'kind': 'REDUCED_V3', 'leastVerticalUs': 299}}"
                        + " | 422 | invalid-value | /blanking/leastVerticalUs",
                "{%, 'secondaryCurve': {}}                                 | 400 | unknown-member  | /secondaryCurve",
                "{&, 'secondaryCurve': {'cPercent': 40, 'mPercentPerKhz': 600, 'k': 128}}"
                        + " | 400 | missing-member | /secondaryCurve/jPercent",
                "{&, 'secondaryCurve': {'cPercent': 128, 'mPercentPerKhz': 65536, 'k': 256, 'jPercent': -1}}"
                        + " | 422 | invalid-value | /secondaryCurve/cPercent /secondaryCurve/mPercentPerKhz"
                        + " /secondaryCurve/k /secondaryCurve/jPercent",
            })
    void badInputIsAnsweredAtItsPlace(String body, int status, String code, String pointers) throws Exception {
        String whole = body.replace("%", CVT).replace("&", CVT.replace("CVT", "GTF"));
        JsonNode problem = problem(generate(last(whole)), status, code);
        List<String> told = new ArrayList<>();
        problem.path("errors").forEach(error -> told.add(error.path("pointer").asString()));
        assertThat(told).as(problem.toString()).containsExactly(pointers.split(" ", -1));
    }

    @Test
    void theMemberThatNamesTheFormulaIsNamed() throws Exception {
        JsonNode problem = problem(generate("{'horizontalActive': 640}"), 400, "missing-member");
        assertThat(message(problem)).contains("\"formula\"", "CVT, GTF");
    }

    @Test
    void aLimitIsToldApart() throws Exception {
        JsonNode problem = problem(generate(last("{" + CVT + ", 'fieldRateHz': '2000'}")), 422, "invalid-value");
        assertThat(problem.at("/errors/0/limit").asString()).isEqualTo("1..1024");
    }

    @Test
    void aFormulaWithoutRoomSaysWhy() throws Exception {
        // At 15 kHz the default curve blanks less of a line than sync and back porch need.
        JsonNode problem = problem(
                generate("{'formula': 'GTF', 'horizontalActive': 640, 'verticalActive': 480, 'fieldRateHz': '60',"
                        + " 'scan': 'INTERLACED'}"),
                422,
                "invalid-value");
        assertThat(pointer(problem)).isEmpty();
        assertThat(message(problem)).contains("no room for horizontal sync");
        assertThat(problem.path("detail").asString()).startsWith("The blanking curve");
    }

    private static String gtf(String width, String height, String rate) {
        return "{'formula': 'GTF', 'horizontalActive': " + width + ", 'verticalActive': " + height
                + ", 'fieldRateHz': '" + rate + "'}";
    }

    /** A body in which a member that occurs twice keeps its last value only. */
    private static String last(String body) {
        String json = body;
        for (String member : List.of("horizontalActive", "verticalActive", "fieldRateHz")) {
            int first = json.indexOf("'" + member + "'");
            if (first >= 0 && json.indexOf("'" + member + "'", first + 1) >= 0) {
                int end = json.indexOf(", ", first);
                json = json.substring(0, first) + json.substring(end + 2);
            }
        }
        return json;
    }

    private JsonNode generated(String body) throws Exception {
        HttpResponse<String> answer = generate(body);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JsonMapper.shared().readTree(answer.body());
    }

    private HttpResponse<String> generate(String body) throws Exception {
        return send(request("/v1/timings/generate")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(body.replace('\'', '"'))));
    }
}
