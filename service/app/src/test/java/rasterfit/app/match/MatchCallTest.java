package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.app.match.MatchRequests.changed;
import static rasterfit.app.match.MatchRequests.converter;
import static rasterfit.app.match.MatchRequests.object;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The main call over HTTP: who is matched with what, and in which form the answer comes. */
class MatchCallTest extends ServedTest {
    @Test
    void exactQuantitiesAreStringsAndAllOthersPlainNumbers() throws Exception {
        JsonNode measures = first(doubler(), "/modeSettings/0/measures");

        // (135/22 MHz) / (59062500/11 Hz) = 8/7; 135/22 MHz is half of the square-pixel rate of 780 samples (common
        // practice).
        assertThat(measures.path("pixelAspectRatio").asString()).isEqualTo("8/7");
        assertThat(measures.path("samplesPerDot").isString()).isTrue();
        assertThat(measures.path("aspectErrorPercent").isNumber()).isTrue();
        assertThat(measures.path("addedLatencyMs").propertyNames())
                .containsExactly("top", "middle", "bottom", "least", "typical", "greatest", "basis");
        assertThat(measures.at("/addedLatencyMs/basis").asString()).isEqualTo("COMPUTED");
    }

    @Test
    void aDoubledRasterHasTwiceTheLineRateOfItsSource() throws Exception {
        JsonNode timing = first(doubler(), "/modeSettings/0/outputTiming");

        // 59062500/11 / 341 dots = 15745.80 lines per second; twice that is 118125000/3751. 524 lines of 2 × 262.
        assertThat(timing.path("lineRateHz").asString()).isEqualTo("118125000/3751");
        assertThat(timing.path("verticalTotal").asInt()).isEqualTo(524);
        assertThat(timing.path("verticalActive").asInt()).isEqualTo(480);
        // 15745.80 / 262 = 60.098478 fields per second, the handbook value of this raster.
        assertThat(timing.path("fieldRateHz").asString()).isEqualTo("29531250/491381");
    }

    @Test
    void noNumberIsWrittenWithAnExponentAndNothingIsNull() throws Exception {
        assertThat(answer(doubler()).body())
                .doesNotContainPattern("[0-9][eE][-+]?[0-9]")
                .doesNotContain(":null");
    }

    @Test
    void theSameRequestGetsTheSameBytes() throws Exception {
        assertThat(answer(doubler()).body()).isEqualTo(answer(doubler()).body());
    }

    @Test
    void everyAnswerNamesEngineAndCatalogue() throws Exception {
        JsonNode answer = json(doubler());
        assertThat(answer.path("engineVersion").asString()).matches("[0-9]+\\.[0-9]+\\.[0-9]+.*");
        assertThat(answer.path("catalogueRevision").asLong()).isPositive();
    }

    @Test
    void whatACompositeSignalLosesIsToldAsTaken() throws Exception {
        HttpResponse<String> answer = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("""
                        {"display": {"catalogueId": "ancroft-25"}, "top": 50,
                         "source": {"catalogueId": "quillon-16", "variantId": "525-rev1"}}""")));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        int composite = 0;
        for (JsonNode setup : MatchRequests.JSON.readTree(answer.body()).path("ranked")) {
            boolean isComposite = setup.at("/route/0/id").asString().equals("cvbs");
            composite += isComposite ? 1 : 0;
            assertThat(setup.path("findings")
                            .valueStream()
                            .anyMatch(one -> one.path("rule").asString().equals("assumed.colour-decoder")))
                    .as(setup.path("route").toString())
                    .isEqualTo(isComposite);
        }
        assertThat(composite).isPositive();
    }

    @Test
    void whatAnEdidLeavesOpenIsTold() throws Exception {
        assertThat(messages(first(doubler(), "/findings"), "assumed.display"))
                .anySatisfy(message -> assertThat(message).contains("1920 by 1080"))
                .anySatisfy(message -> assertThat(message).contains("a television is assumed"))
                .anySatisfy(message -> assertThat(message).contains("fill, signalled and one-to-one"));
    }

    @Test
    void everyStepIsToldOnlyWhenAskedFor() throws Exception {
        ObjectNode full = doubler().put("explain", "FULL");
        assertThat(first(doubler(), "/modeSettings/0/steps").size())
                .isLessThan(first(full, "/modeSettings/0/steps").size());
        JsonNode step = first(full, "/modeSettings/0/steps/0");
        assertThat(step.propertyNames()).contains("name", "inputs", "formula", "source", "result");
    }

    @Test
    void gearOfTheCatalogueIsNamedByItsIds() throws Exception {
        ObjectNode request = (ObjectNode) MatchRequests.JSON.readTree("""
                { "source": {"catalogueId": "wendrel", "variantId": "625-rev1"},
                  "display": {"catalogueId": "kyloe-55", "input": "digital-1/low-lag"}, "top": 100 }
                """);
        JsonNode ranked = json(request).path("ranked");
        assertThat(ranked.size()).isPositive();
        ranked.forEach(setup -> {
            JsonNode route = setup.path("route");
            assertThat(route.path(route.size() - 1).path("id").asString()).isEqualTo("kyloe-55");
            assertThat(route.path(route.size() - 1).path("state").asString()).isEqualTo("low-lag");
        });
    }

    @Test
    void inlineGearStandsInThePlaceOfCataloguedGearWithItsId() throws Exception {
        ObjectNode request = changed(all -> {
            object(all, "/equipment").put("fromCatalogue", true);
            ((ArrayNode) all.at("/equipment/converters")).add(converter().put("id", "tarn-b"));
            all.put("top", 1000);
        });
        List<String> prices = new ArrayList<>();
        json(request)
                .path("ranked")
                .forEach(setup -> setup.path("route").forEach(part -> {
                    if (part.path("id").asString().equals("tarn-b")) {
                        prices.add(setup.at("/price/unpriced/0").asString());
                    }
                }));
        // The catalogued one has a price, the one of the request has none.
        assertThat(prices).isNotEmpty().allMatch(id -> id.equals("tarn-b"));
    }

    /** VESA DMT 1.13: 0x1C is 1280 × 800 at 60 Hz, 83.5 MHz, which CTA-861-I does not have. */
    @Test
    void aScalerCanDriveAMonitorTimingThatTheDisplayLists() throws Exception {
        ObjectNode scaler = converter();
        scaler.set("processing", MatchRequests.JSON.readTree("""
                [ {"kind": "RASTER_SCALE", "timings": ["dmt:0x1c"], "vertical": {"factors": "ANY", "taps": 1},
                   "horizontal": {"factors": "ANY", "taps": 1},
                   "rateLocks": [ {"kind": "FREE_RUNNING", "fieldStores": 2} ]} ]"""));
        ObjectNode request = changed(all -> {
            ((ArrayNode) all.at("/equipment/converters")).add(scaler);
            all.set("display", MatchRequests.JSON.readTree("""
                    { "panel": {"kind": "GRID", "pixels": {"columns": 1280, "rows": 800}},
                      "inputs": [ {"connector": "HDMI", "link": "HDMI", "timings": ["dmt:0x1c"]} ] }"""));
        });
        JsonNode mode = first(request, "/modeSettings/0");
        assertThat(mode.at("/settings/outputTiming").asString()).isEqualTo("dmt:0x1c");
        assertThat(mode.at("/outputTiming/pixelClockHz").asString()).isEqualTo("83500000");
        assertThat(mode.at("/outputTiming/verticalTotal").asInt()).isEqualTo(831);
        assertThat(mode.at("/measures/acceptance").asString()).isEqualTo("LISTED");
        assertThat(mode.at("/measures/listedAs").asString()).isEqualTo("dmt:0x1c");
    }

    @Test
    void aLimitThatNothingKeepsRefusesByItsRule() throws Exception {
        ObjectNode request = doubler();
        request.set("limits", MatchRequests.JSON.readTree("[{\"measure\": \"totalLatencyMs\", \"atMost\": 0.001}]"));
        JsonNode answer = json(request);
        assertThat(answer.path("ranked").size()).isZero();
        List<String> rules = new ArrayList<>();
        answer.path("refused").forEach(refusal -> rules.add(refusal.path("rule").asString()));
        assertThat(rules).contains("limit.totalLatencyMs");
    }

    @Test
    void refusedSettingsAddUpToTheirCount() throws Exception {
        JsonNode answer = json(changed(all -> object(all, "/equipment").put("fromCatalogue", true)));
        long settings = 0;
        long routes = 0;
        for (JsonNode refusal : answer.path("refused")) {
            if (refusal.path("of").asString().equals("SETTING")) {
                settings += refusal.path("count").asLong();
            } else {
                routes += refusal.path("count").asLong();
            }
        }
        assertThat(settings)
                .isPositive()
                .isEqualTo(answer.at("/counts/refusedSettings").asLong());
        assertThat(routes).isEqualTo(answer.at("/counts/refusedRoutes").asLong());
    }

    private static ObjectNode doubler() {
        return changed(request -> ((ArrayNode) request.at("/equipment/converters")).add(converter()));
    }

    private HttpResponse<String> answer(ObjectNode request) throws Exception {
        HttpResponse<String> answer = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(request.toString())));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    private JsonNode json(ObjectNode request) throws Exception {
        return MatchRequests.JSON.readTree(answer(request).body());
    }

    private JsonNode first(ObjectNode request, String pointer) throws Exception {
        JsonNode found = json(request).at("/ranked/0" + pointer);
        assertThat(found.isMissingNode()).isFalse();
        return found;
    }

    private static List<String> messages(JsonNode findings, String rule) {
        List<String> messages = new ArrayList<>();
        findings.forEach(finding -> {
            if (finding.path("rule").asString().equals(rule)) {
                messages.add(finding.path("message").asString());
            }
        });
        return messages;
    }
}
