package rasterfit.app.draft;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The least answers to every template make gear that the catalogue takes and a match uses. */
class TemplateCallTest extends ServedTest {
    private static final JsonMapper JSON = JsonMapper.shared();

    /** 3/2 of the 525-line subcarrier (315/88 MHz), 341 dots by 262 lines, RGB. */
    private static final String CONSOLE = """
            {"name": "Quillon 16", "outputs": [{"connector": "SCART", "format": "RGB", "sync": "SYNC_ON_COMPOSITE"}],
             "modes": [{"name": "240 lines", "lineStandard": "L525_60", "dotClockHz": "59062500/11", "dotsPerLine": "341",
                        "linesPerField": "262", "scan": "PROGRESSIVE",
                        "active": {"dots": 256, "lines": 240, "firstDot": 65, "firstLine": 18}}]}""";

    private static final String SCART_SET = """
            {"class": "TUBE", "panel": {"kind": "TUBE"},
             "inputs": [{"connector": "SCART", "accepts": [{"format": "RGB", "syncs": ["SYNC_ON_COMPOSITE"]}]}]}""";
    private static final String COMPONENT_SET = """
            {"class": "TUBE", "panel": {"kind": "TUBE"},
             "inputs": [{"connector": "RCA_3", "accepts": [{"format": "YPBPR", "syncs": ["SYNC_ON_LUMA"]}]}]}""";
    private static final String FLAT_SET = """
            {"class": "TELEVISION", "panel": {"kind": "GRID", "pixels": {"columns": 1920, "rows": 1080}},
             "inputs": [{"connector": "HDMI", "timings": ["vic:2", "vic:4", "vic:16"]}]}""";

    /** Invented gear, each with the least that its template asks for, and a stage of the chains in which it has to turn up. */
    private enum Least {
        DIGITAL_ADAPTER(
                "{\"name\": \"Beck\", \"inputConnector\": \"SCART\", \"inputFormat\": \"RGB\"}", FLAT_SET, "CONVERTER"),
        LINE_REPEATER(
                "{\"name\": \"Scar\", \"inputConnector\": \"SCART\", \"inputFormats\": [\"RGB\"], \"multiples\": [2, 3]}",
                FLAT_SET,
                "CONVERTER"),
        RASTER_SCALER(
                "{\"name\": \"Fell\", \"inputConnector\": \"SCART\", \"inputFormats\": [\"RGB\"]}",
                FLAT_SET,
                "CONVERTER"),
        TRANSCODER("""
                {"name": "Gimmer", "fromConnector": "SCART", "fromFormat": "RGB", "toConnector": "RCA_3",
                 "toFormat": "YPBPR"}""", COMPONENT_SET, "ADAPTER"),
        SWITCH(
                "{\"name\": \"Five ways\", \"connector\": \"SCART\", \"formats\": [\"RGB\"], \"ports\": 5}",
                SCART_SET,
                "SWITCH"),
        TUBE_SET("{\"name\": \"Ancroft 21\", \"connector\": \"SCART\", \"formats\": [\"RGB\"]}", "", "DISPLAY_INPUT"),
        TELEVISION("{\"name\": \"Lowick 32\"}", "", "DISPLAY_INPUT"),
        MONITOR(
                "{\"name\": \"Fenham 24\", \"columns\": 1920, \"rows\": 1200, \"connector\": \"HDMI\"}",
                "",
                "DISPLAY_INPUT");

        private final String answers;
        private final String display;
        private final String stage;

        Least(String answers, String display, String stage) {
            this.answers = answers;
            this.display = display;
            this.stage = stage;
        }

        String template() {
            return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        }
    }

    @Test
    void everyTemplateIsListedWithWhatItRequires() throws Exception {
        JsonNode templates = JSON.readTree(get("/v1/templates").body()).path("items");
        assertThat(templates.valueStream().map(one -> one.path("id").asString()))
                .containsExactly(Stream.of(Least.values()).map(Least::template).toArray(String[]::new));
        for (JsonNode template : templates) {
            Least least = Stream.of(Least.values())
                    .filter(one -> one.template().equals(template.path("id").asString()))
                    .findFirst()
                    .orElseThrow();
            JsonNode asks = template.path("asks");
            Set<String> required = asks.valueStream()
                    .filter(ask -> ask.path("required").booleanValue())
                    .map(ask -> ask.path("name").asString())
                    .collect(Collectors.toSet());
            assertThat(required)
                    .as(least.template())
                    .isEqualTo(Set.copyOf(JSON.readTree(least.answers).propertyNames()));
            for (JsonNode ask : asks) {
                assertThat(ask.path("question").asString()).isNotBlank();
                if (ask.has("default")) {
                    assertThat(ask.at("/default/reason").asString()).isNotBlank();
                    assertThat(ask.at("/default/source").asString()).isNotBlank();
                    assertThat(ask.path("required").booleanValue()).isFalse();
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theLeastAnswersMakeGearThatTheCatalogueKeepsUnchanged(Least least) throws Exception {
        JsonNode draft = draft(least.template(), least.answers, "[]");
        ObjectNode item = (ObjectNode) draft.path("item");
        item.put("id", "least-" + least.template());
        String address = "/v1/catalogue/" + draft.path("kind").asString() + "/least-" + least.template();
        HttpResponse<String> written = send(request(address)
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(JSON.writeValueAsString(item))));
        assertThat(written.statusCode()).as(written.body()).isEqualTo(201);
        assertThat(JSON.readTree(get(address).body())).isEqualTo(item);
        factsAgree(draft, JSON.readTree(get(address + "/facts").body()).path("items"));
    }

    @ParameterizedTest
    @EnumSource
    void theLeastAnswersMakeGearThatTakesPartInAMatch(Least least) throws Exception {
        JsonNode draft = draft(least.template(), least.answers, "[]");
        JsonNode item = draft.path("item");
        ObjectNode match = JSON.createObjectNode();
        match.set("source", JSON.readTree(CONSOLE));
        ObjectNode equipment = match.putObject("equipment").put("fromCatalogue", false);
        if (least.display.isEmpty()) {
            match.set("display", item);
            JsonNode repeater = draft(Least.LINE_REPEATER.template(), Least.LINE_REPEATER.answers, "[]");
            equipment.putArray("converters").add(repeater.path("item"));
        } else {
            match.set("display", JSON.readTree(least.display));
            equipment.putArray(draft.path("kind").asString()).add(item);
        }
        HttpResponse<String> answer = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(JSON.writeValueAsString(match))));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        JsonNode ranked = JSON.readTree(answer.body()).path("ranked");
        assertThat(ranked.isEmpty()).as(answer.body()).isFalse();
        assertThat(ranked.valueStream()
                        .flatMap(setup -> setup.path("route").valueStream())
                        .filter(part -> part.path("stage").asString().equals(least.stage))
                        .map(part -> part.path("id").asString()))
                .contains(item.path("id").asString());
    }

    /** What is written and not answered is an assumption, and what the facts call an assumption is told as one. */
    private static void factsAgree(JsonNode draft, JsonNode facts) {
        List<String> written = draft.path("assumed")
                .valueStream()
                .filter(one -> one.path("written").booleanValue())
                .map(one -> one.path("of").asString())
                .toList();
        List<String> absent = draft.path("assumed")
                .valueStream()
                .filter(one -> !one.path("written").booleanValue())
                .map(one -> one.path("of").asString())
                .toList();
        List<String> declared = new ArrayList<>();
        for (JsonNode fact : facts) {
            String of = fact.path("of").asString();
            boolean isTold = written.stream().anyMatch(path -> of.equals(path) || of.startsWith(path + "/"));
            assertThat(fact.path("basis").asString()).as(of).isEqualTo(isTold ? "ASSUMED" : "DECLARED");
            if (isTold) {
                assertThat(fact.path("source").asString()).as(of).startsWith("class default; ");
                assertThat(fact.path("note").asString()).as(of).isNotBlank();
            } else {
                declared.add(of);
            }
            assertThat(absent).as("told as absent").doesNotContain(of);
        }
        assertThat(written).doesNotHaveDuplicates().isNotEmpty();
        assertThat(absent).doesNotHaveDuplicates().isNotEmpty();
        // Whatever else is written was answered, or follows from the choice of the template.
        Set<String> chosen = Set.of("kind", "class", "panel/kind", "processing/repeat/kind", "processing/scale/kind");
        String answered = JSON.writeValueAsString(draft.path("item"));
        assertThat(declared).allSatisfy(of -> {
            boolean isAnswer = of.matches(
                    "name|(.*/)?(connector|format|columns|rows|link)|inputs/analog/accepts/0/format|ports|processing/repeat/lines/.*");
            assertThat(isAnswer || chosen.contains(of))
                    .as(of + " in " + answered)
                    .isTrue();
        });
    }

    @Test
    void answersAreDeclaredAndMeasuredOnesAreMeasured() throws Exception {
        JsonNode draft = draft(
                "television",
                "{\"name\": \"Lowick 40\", \"columns\": 3840, \"rows\": 2160, \"preset\": \"LOW_DELAY\", \"lagMs\": 12.5}",
                "[\"lagMs\"]");
        Map<String, String> bases = draft.at("/item/provenance")
                .valueStream()
                .collect(Collectors.toMap(
                        entry -> entry.path("of").asString(),
                        entry -> entry.path("basis").asString()));
        assertThat(bases)
                .containsEntry("", "DECLARED")
                .containsEntry("inputs/digital-1/lag/0/ms", "MEASURED")
                .containsEntry("inputs/digital-1/timings", "ASSUMED")
                .doesNotContainKeys("panel/pixels/columns", "inputs/digital-1/preset");
        // The measured delay is what a match counts with.
        ObjectNode match = JSON.createObjectNode();
        match.set("source", JSON.readTree(CONSOLE));
        match.set("display", draft.path("item"));
        JsonNode repeater =
                draft("line-repeater", Least.LINE_REPEATER.answers, "[]").path("item");
        match.putObject("equipment")
                .put("fromCatalogue", false)
                .putArray("converters")
                .add(repeater);
        JsonNode answer = JSON.readTree(send(request("/v1/matches")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(JSON.writeValueAsString(match))))
                .body());
        JsonNode lag = answer.at("/ranked/0/modeSettings/0/measures/displayLagMs");
        assertThat(lag.path("typical").decimalValue())
                .as(answer.toString())
                .isEqualByComparingTo(new BigDecimal("12.5"));
        assertThat(lag.path("basis").asString()).isEqualTo("MEASURED");
    }

    @Test
    void anIdIsMadeOfTheName() throws Exception {
        assertThat(draft("television", "{\"name\": \"Ångström  40-B!\"}", "[]")
                        .at("/item/id")
                        .asString())
                .isEqualTo("angstrom-40-b");
        assertThat(draft("television", "{\"name\": \"画面\"}", "[]").path("item").has("id"))
                .isFalse();
        assertThat(draft("television", "{\"name\": \"Lowick\", \"id\": \"mine\"}", "[]")
                        .at("/item/id")
                        .asString())
                .isEqualTo("mine");
    }

    @Test
    void aPriceIsWrittenAsOne() throws Exception {
        JsonNode item = draft(
                        "switch",
                        "{\"name\": \"S\", \"connector\": \"HDMI\", \"formats\": [\"TMDS\"], \"ports\": 3, \"price\": \"20.00\","
                                + " \"currency\": \"EUR\"}",
                        "[]")
                .path("item");
        assertThat(item.path("price")).isEqualTo(JSON.readTree("{\"amount\": \"20.00\", \"currency\": \"EUR\"}"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "television | {} | [] | 400 | missing-member | /answers/name",
                "television | null | [] | 400 | wrong-type | /answers",
                "television | [] | [] | 400 | wrong-type | /answers",
                "television | {\"name\": 5} | [] | 400 | wrong-type | /answers/name",
                "television | {\"name\": null} | [] | 400 | wrong-type | /answers/name",
                "television | {\"name\": \"L\", \"colour\": \"red\"} | [] | 400 | unknown-member | /answers/colour",
                "television | {\"name\": \"L\", \"preset\": \"FAST\"} | [] | 400 | unknown-value | /answers/preset",
                "television | {\"name\": \"L\", \"lagMs\": \"12\"} | [] | 400 | wrong-type | /answers/lagMs",
                "television | {\"name\": \"L\", \"lagMs\": -1} | [] | 422 | invalid-value | /answers/lagMs",
                "television | {\"name\": \"L\", \"columns\": 1920.5} | [] | 400 | wrong-type | /answers/columns",
                "television | {\"name\": \"L\", \"id\": \"No Slug\"} | [] | 400 | wrong-type | /answers/id",
                "television | {\"name\": \"L\", \"price\": \"5\"} | [] | 400 | missing-member | /answers/currency",
                "television | {\"name\": \"L\", \"price\": \"5.\", \"currency\": \"EUR\"} | [] | 400 | wrong-type | /answers/price",
                "television | {\"name\": \"L\", \"price\": \"5\", \"currency\": \"XXXX\"} | [] | 400 | wrong-type | /answers/currency",
                "television | {\"name\": \"L\"} | [\"lagMs\"] | 422 | invalid-value | /measured/0",
                "monitor | {\"name\": \"M\", \"columns\": 1920, \"rows\": 100, \"connector\": \"VGA\"} | [] | 422 | invalid-value | /answers/columns",
                "monitor | {\"name\": \"M\", \"columns\": 1920, \"rows\": 1080, \"connector\": \"VGA\", \"leastLineRateHz\": \"90000\"} | [] | 422 | invalid-value | /answers/leastLineRateHz",
                "tube-set | {\"name\": \"T\", \"connector\": \"SCRT\", \"formats\": [\"RGB\"]} | [] | 400 | unknown-value | /answers/connector",
                "tube-set | {\"name\": \"T\", \"connector\": \"SCART\", \"formats\": []} | [] | 422 | invalid-value | /answers/formats",
                "tube-set | {\"name\": \"T\", \"connector\": \"SCART\", \"formats\": \"RGB\"} | [] | 400 | wrong-type | /answers/formats",
                "tube-set | {\"name\": \"T\", \"connector\": \"SCART\", \"formats\": [\"RGB\", \"RGB\"]} | [] | 422 | invalid-value | /answers/formats/1",
                "line-repeater | {\"name\": \"R\", \"inputConnector\": \"SCART\", \"inputFormats\": [\"RGB\"], \"multiples\": [2, 1]} | [] | 422 | invalid-value | /answers/multiples/1",
                "raster-scaler | {\"name\": \"R\", \"inputConnector\": \"SCART\", \"inputFormats\": [\"RGB\"], \"outputTimings\": [\"vic:16\", \"vic:0\"]} | [] | 422 | invalid-value | /answers/outputTimings/1",
                "transcoder | {\"name\": \"T\", \"fromConnector\": \"SCART\", \"fromFormat\": \"CVBS\", \"toConnector\": \"RCA_1\", \"toFormat\": \"CVBS\"} | [] | 422 | invalid-value | /answers/fromFormat"
            })
    void aWrongAnswerIsToldAtItsPlace(
            String template, String answers, String measured, int status, String code, String pointer)
            throws Exception {
        HttpResponse<String> refused = ask(template, answers, measured);
        assertThat(pointer(problem(refused, status, code))).isEqualTo(pointer);
    }

    @Test
    void aTemplateThatIsNotThereIsNotFound() throws Exception {
        problem(ask("toaster", "{}", "[]"), 404, "not-found");
    }

    private JsonNode draft(String template, String answers, String measured) throws Exception {
        HttpResponse<String> answer = ask(template, answers, measured);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JSON.readTree(answer.body());
    }

    private HttpResponse<String> ask(String template, String answers, String measured) throws Exception {
        return send(request("/v1/templates/" + template + "/drafts")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{\"answers\": " + answers + ", \"measured\": " + measured + "}")));
    }
}
