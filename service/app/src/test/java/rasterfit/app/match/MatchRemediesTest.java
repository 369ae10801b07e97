package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.app.problem.ServedTest;
import rasterfit.remedy.Change.Kind;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Remedies over HTTP: each is applied to the request by hand, and the match is asked again. */
class MatchRemediesTest extends ServedTest {
    /** Cables of which the first is wired otherwise than the converter. */
    private static final List<String> WRONG_LEAD = List.of("quillon-av-21-pin", "hdmi-lead");

    private static final List<String> LEADS = List.of("quillon-av-scart", "hdmi-lead");

    @Test
    void aCableOfTheRightWiringIsFoundInTheCatalogue() throws Exception {
        ObjectNode request = request("quillon-16", "lowick-40", "digital-1", List.of("clough"), WRONG_LEAD);
        JsonNode answer = checked(request, Kind.ADDED_LINK);

        JsonNode remedy = remedies(answer, "wiring.differs-at-the-input").stream()
                .filter(one -> one.path("kind").asString().equals("ADDED_LINK"))
                .findFirst()
                .orElseThrow();
        assertThat(remedy.path("id").asString()).isEqualTo("quillon-av-scart");
        assertThat(remedy.path("change").asString()).isEqualTo("Add the cable Quillon AV to SCART.");
        assertThat(remedy.path("added").asBoolean()).isTrue();
        assertThat(remedy.path("cautions").size()).isZero();
        assertThat(remedy.at("/price/currency").asString()).isEqualTo("EUR");
        assertThat(answer.at("/remedyRuns/made").asInt()).isPositive();
        assertThat(answer.at("/remedyRuns/leftOut").asInt()).isZero();
    }

    @Test
    void aConverterIsFoundWhereThereIsNone() throws Exception {
        checked(request("quillon-16", "lowick-40", "digital-1", List.of(), LEADS), Kind.ADDED_CONVERTER);
    }

    @Test
    void aLimitIsRelaxedToAValueThatCanBeWritten() throws Exception {
        ObjectNode request = request("quillon-16", "lowick-40", "digital-1", List.of("clough"), LEADS);
        request.set("limits", MatchRequests.JSON.readTree("[{\"measure\": \"addedLatencyMs\", \"atMost\": 0.05}]"));
        JsonNode answer = checked(request, Kind.RELAXED_LIMIT);
        assertThat(remedies(answer, "limit.addedLatencyMs")).anySatisfy(remedy -> {
            assertThat(remedy.path("instead").asString()).isEqualTo("0.05");
            assertThat(remedy.path("value").isMissingNode()).isFalse();
        });
    }

    /** Overscan of 3.5 % (our assumption for SD) hides 16.8 rows of 480 at each edge: 16.8 of 240 doubled lines in all. */
    @Test
    void aLimitIsRelaxedAsFarAsTheBestSetupNeeds() throws Exception {
        ObjectNode request = request("quillon-16", "lowick-40", "digital-1", List.of("clough"), LEADS);
        request.set("limits", MatchRequests.JSON.readTree("[{\"measure\": \"croppedLines\", \"atMost\": 8}]"));
        JsonNode answer = checked(request, Kind.RELAXED_LIMIT);
        assertThat(remedies(answer, "limit.croppedLines"))
                .filteredOn(remedy -> remedy.path("kind").asString().equals("RELAXED_LIMIT"))
                .extracting(remedy -> remedy.path("value").asString(""))
                .containsExactly("16.8");
    }

    /** The computer monitor follows 50 to 90 fields a second, the 625-line variant sends 49.86 (from their documents). */
    @Test
    void anotherVariantIsFound() throws Exception {
        ObjectNode request = (ObjectNode) MatchRequests.JSON.readTree("""
                {"source": {"catalogueId": "wendrel", "variantId": "625-rev1"},
                 "display": {"catalogueId": "branxton-17"}}""");
        JsonNode answer = checked(request, Kind.OTHER_VARIANT);
        assertThat(answer.path("ranked").size()).isZero();
    }

    @Test
    void anotherMenuStateIsFound() throws Exception {
        ObjectNode request = request("quillon-16", "kyloe-55", "digital-1/standard", List.of("tarn-b"), LEADS);
        request.set("limits", MatchRequests.JSON.readTree("[{\"measure\": \"displayLagMs\", \"atMost\": 30}]"));
        checked(request, Kind.OTHER_MENU_STATE, Kind.RELAXED_LIMIT);
    }

    @Test
    void theWholeCatalogueLeavesNothingToAdd() throws Exception {
        ObjectNode request = (ObjectNode) MatchRequests.JSON.readTree("""
                {"source": {"catalogueId": "quillon-16"}, "display": {"catalogueId": "kyloe-55"},
                 "remedies": {"forRank": 2}}""");
        JsonNode answer = checked(request, Kind.OTHER_OUTPUT, Kind.OTHER_SETTINGS);
        assertThat(answer.at("/ranked/0").has("remedies")).isFalse();
        JsonNode lifting = answer.at("/ranked/1/remedies");
        double score = answer.at("/ranked/1/score").asDouble();
        assertThat(lifting.isArray()).isTrue();
        lifting.forEach(
                remedy -> assertThat(remedy.path("resultingScore").asDouble()).isGreaterThan(score));
    }

    @Test
    void remediesAreLeftOutWhenNotAskedFor() throws Exception {
        ObjectNode request = request("quillon-16", "lowick-40", "digital-1", List.of("clough"), WRONG_LEAD);
        request.putObject("remedies").put("refusals", false);
        JsonNode answer = match(request);
        assertThat(answer.path("refused").size()).isPositive();
        answer.path("refused")
                .forEach(refusal -> assertThat(refusal.has("remedies")).isFalse());
        assertThat(answer.has("remedyRuns")).isFalse();
        assertThat(answer.has("sensitivity")).isFalse();
    }

    @Test
    void theSameRequestGetsTheSameBytes() throws Exception {
        ObjectNode request = request("quillon-16", "lowick-40", "digital-1", List.of("clough"), WRONG_LEAD)
                .put("sensitivity", true);
        assertThat(send(posted(request)).body()).isEqualTo(send(posted(request)).body());
    }

    @Test
    void aRankThatIsNotReturnedIsAFault() throws Exception {
        ObjectNode request = request("quillon-16", "lowick-40", "digital-1", List.of("clough"), LEADS);
        request.putObject("remedies").put("forRank", 6);
        assertThat(pointer(problem(send(posted(request)), 422, "invalid-value")))
                .isEqualTo("/remedies/forRank");
        request.putObject("remedies").put("forRank", 0);
        assertThat(pointer(problem(send(posted(request)), 422, "invalid-value")))
                .isEqualTo("/remedies/forRank");
        request.putObject("remedies").put("forAll", true);
        assertThat(pointer(problem(send(posted(request)), 400, "unknown-member")))
                .isEqualTo("/remedies/forAll");
        request.putObject("remedies").put("refusals", "yes");
        assertThat(pointer(problem(send(posted(request)), 400, "wrong-type"))).isEqualTo("/remedies/refusals");
    }

    /** Applies every remedy of the answer, and wants some kinds among them. */
    private JsonNode checked(ObjectNode request, Kind... wanted) throws Exception {
        JsonNode answer = match(request);
        Set<Kind> seen = EnumSet.noneOf(Kind.class);
        List<JsonNode> all = new ArrayList<>();
        answer.path("refused").forEach(refusal -> refusal.path("remedies").forEach(all::add));
        answer.path("ranked").forEach(setup -> setup.path("remedies").forEach(all::add));
        for (JsonNode remedy : all) {
            seen.add(Kind.valueOf(remedy.path("kind").asString()));
            JsonNode changed = match(applied(request, remedy));
            List<String> promised = List.of(
                    remedy.path("route").toString(),
                    remedy.path("resultingScore").toString());
            List<List<String>> ranked = new ArrayList<>();
            changed.path("ranked")
                    .forEach(setup -> ranked.add(List.of(
                            setup.path("route").toString(), setup.path("score").toString())));
            assertThat(ranked).as(remedy.toString()).contains(promised);
        }
        assertThat(seen).as(all.toString()).contains(wanted);
        return answer;
    }

    private ObjectNode applied(ObjectNode request, JsonNode remedy) throws Exception {
        ObjectNode changed = request.deepCopy();
        changed.put("top", 1000).putObject("remedies").put("refusals", false);
        String id = remedy.path("id").asString("");
        boolean added = remedy.path("added").asBoolean(false);
        switch (Kind.valueOf(remedy.path("kind").asString())) {
            case ADDED_LINK -> ((ArrayNode) changed.at("/equipment/links")).add(gear("links", id));
            case ADDED_CONVERTER, OTHER_CONVERTER -> {
                if (added) {
                    ((ArrayNode) changed.at("/equipment/converters")).add(gear("converters", id));
                }
            }
            case OTHER_VARIANT -> ((ObjectNode) changed.path("source")).put("variantId", id);
            case OTHER_DISPLAY_INPUT, OTHER_MENU_STATE -> {
                if (added) {
                    ((ObjectNode) changed.path("display")).put("input", id);
                }
            }
            case RELAXED_LIMIT -> relaxed((ArrayNode) changed.path("limits"), remedy);
            case OTHER_SETTINGS, OTHER_LINKS, OTHER_OUTPUT, OTHER_CONVERTER_PORTS, WITHOUT_CONVERTER -> {
                // All parts are at hand: the answer of the same request has it.
            }
        }
        return changed;
    }

    private static void relaxed(ArrayNode limits, JsonNode remedy) {
        JsonNode value = remedy.path("value");
        assertThat(limits.size()).isEqualTo(1);
        if (value.isMissingNode()) {
            limits.removeAll();
        } else {
            ((ObjectNode) limits.path(0)).put("atMost", new BigDecimal(value.asString()));
        }
    }

    /** @param source id, with a variant behind a colon */
    private ObjectNode request(
            String source, String display, @Nullable String input, List<String> converters, List<String> links)
            throws Exception {
        ObjectNode request = MatchRequests.JSON.createObjectNode();
        String[] named = source.split(":", 2);
        ObjectNode chosen = request.putObject("source").put("catalogueId", named[0]);
        if (named.length > 1) {
            chosen.put("variantId", named[1]);
        }
        ObjectNode shown = request.putObject("display").put("catalogueId", display);
        if (input != null) {
            shown.put("input", input);
        }
        ObjectNode equipment = request.putObject("equipment").put("fromCatalogue", false);
        ArrayNode boxes = equipment.putArray("converters");
        for (String id : converters) {
            boxes.add(gear("converters", id));
        }
        ArrayNode leads = equipment.putArray("links");
        for (String id : links) {
            leads.add(gear("links", id));
        }
        return request;
    }

    private JsonNode gear(String kind, String id) throws Exception {
        HttpResponse<String> answer = get("/v1/catalogue/" + kind + "/" + id);
        assertThat(answer.statusCode()).as(id).isEqualTo(200);
        return MatchRequests.JSON.readTree(answer.body());
    }

    private static List<JsonNode> remedies(JsonNode answer, String rule) {
        List<JsonNode> remedies = new ArrayList<>();
        answer.path("refused").forEach(refusal -> {
            if (refusal.path("rule").asString().equals(rule)) {
                refusal.path("remedies").forEach(remedies::add);
            }
        });
        return remedies;
    }

    private JsonNode match(ObjectNode request) throws Exception {
        HttpResponse<String> answer = send(posted(request));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return MatchRequests.JSON.readTree(answer.body());
    }

    private HttpRequest.Builder posted(ObjectNode request) {
        return request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(request.toString()));
    }
}
