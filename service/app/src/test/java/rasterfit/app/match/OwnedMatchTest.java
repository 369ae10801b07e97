package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.app.match.Shelf.DEMO;
import static rasterfit.app.match.Shelf.converter;
import static rasterfit.app.match.Shelf.converterOfTheDemo;
import static rasterfit.app.match.Shelf.parts;
import static rasterfit.app.match.Shelf.pointers;
import static rasterfit.app.match.Shelf.present;
import static rasterfit.app.match.Shelf.request;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rasterfit.app.belongings.Owned.OwnedSource;
import rasterfit.app.problem.FuzzJson;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.quantity.Rational;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A match with what somebody owns, against the demo catalogue: which parts take part, and how they are named. */
class OwnedMatchTest {
    private final Shelf shelf = new Shelf();

    @Test
    void withACollectionOnlyWhatIsOwnedTakesPartAndCostsNothing() {
        JsonNode answer = shelf.json(request());

        assertThat(parts(answer)).containsExactly("my-av-lead (owned)", "my-hdmi-lead (owned)", "my-tarn (owned)");
        answer.path("ranked").forEach(setup -> {
            assertThat(setup.at("/price/amount").asString()).isEqualTo("0");
            assertThat(setup.at("/price/unpriced").size()).isZero();
        });
        assertThat(answer.path("catalogueRevision").asLong()).isEqualTo(17);
        assertThat(answer.path("collectionRevision").asLong()).isEqualTo(7);
    }

    @Test
    void withoutACollectionNothingIsToldOfOne() {
        ObjectNode request = request();
        request.remove("equipment");
        assertThat(FuzzJson.written(shelf.answer(request)))
                .doesNotContain("collectionRevision")
                .doesNotContain("\"owned\"");
    }

    @Test
    void fromTheCatalogueTheRestCanBeBought() {
        JsonNode answer = shelf.json(request(true));

        assertThat(parts(answer)).contains("my-tarn (owned)", "my-hdmi-lead (owned)", "tarn-b", "hdmi-lead", "pikelaw");
        // The demo's prices in EUR: the second lead is 8.00, the converter 95.00 to 120.00, so 115.50 for both and
        // nothing
        // where both are owned.
        Map<String, String> prices = new LinkedHashMap<>();
        answer.path("ranked").forEach(setup -> {
            List<String> ids = new ArrayList<>();
            setup.path("route").forEach(step -> ids.add(step.path("id").asString()));
            prices.put(
                    String.join(" ", ids.subList(1, ids.size() - 1)),
                    setup.at("/price/amount").asString());
        });
        assertThat(prices)
                .containsEntry("my-av-lead my-tarn my-hdmi-lead", "0")
                .containsEntry("my-av-lead my-tarn hdmi-lead", "8.00")
                .containsEntry("my-av-lead tarn-b my-hdmi-lead", "107.50")
                .containsEntry("my-av-lead tarn-b hdmi-lead", "115.50");
    }

    @Test
    void anItemWithTheIdOfACataloguedThingStandsBesideIt() {
        shelf.converters.clear();
        shelf.converters.put("tarn-b", converter("tarn-b"));

        assertThat(parts(shelf.json(request(true)))).contains("tarn-b", "tarn-b (owned)");
    }

    @Test
    void aChainThatNothingMendsNamesItsOwnedParts() {
        ObjectNode request = request();
        request.set("limits", MatchRequests.JSON.readTree("[{\"measure\": \"totalLatencyMs\", \"atMost\": 0.001}]"));
        List<String> routes = shelf.json(request)
                .path("refused")
                .valueStream()
                .filter(refusal -> refusal.path("rule").asString().equals("limit.totalLatencyMs"))
                .map(refusal -> refusal.at("/nearest/route").toString())
                .toList();
        assertThat(routes).singleElement().asString().contains("owned:my-av-lead", "owned:my-tarn:");
    }

    @Test
    void twoPiecesOfOneModelStayTwo() {
        shelf.converters.put("spare-tarn", converter("tarn-b"));

        assertThat(parts(shelf.json(request()))).contains("my-tarn (owned)", "spare-tarn (owned)");
    }

    @Test
    void describedGearStandsInThePlaceOfAnItemWithItsId() {
        ObjectNode request = request();
        ArrayNode described = MatchRequests.object(request, "/equipment").putArray("converters");
        described.add(converterOfTheDemo("tarn-b").put("id", "my-tarn"));

        JsonNode answer = shelf.json(request);
        assertThat(parts(answer)).containsExactly("my-av-lead (owned)", "my-hdmi-lead (owned)", "my-tarn");
        assertThat(answer.at("/ranked/0/price/amount").asString()).isEqualTo("107.50");
    }

    @Test
    void aCollectionThatIsNotThereIsToldAtItsPlaceAlone() {
        ObjectNode request = request();
        MatchRequests.object(request, "/equipment").put("collectionId", "somebody-elses");
        MatchRequests.object(request, "/display").remove("catalogueId");
        MatchRequests.object(request, "/display").put("itemId", "my-kyloe");

        ProblemException problem = shelf.refused(request);
        assertThat(problem.type()).isEqualTo(ProblemType.INVALID_VALUE);
        assertThat(pointers(problem)).containsExactly("/equipment/collectionId");
    }

    @Test
    void anItemThatIsNotThereOrHasNoCollectionIsToldAtItsPlace() {
        shelf.missing.add("old-console");
        ObjectNode request = request();
        MatchRequests.object(request, "/display").remove("catalogueId");
        MatchRequests.object(request, "/display").put("itemId", "my-tarn");
        MatchRequests.object(request, "/source").remove("catalogueId");
        MatchRequests.object(request, "/source").put("itemId", "old-console");
        ProblemException unknown = shelf.refused(request);
        assertThat(unknown.type()).isEqualTo(ProblemType.INVALID_VALUE);
        assertThat(pointers(unknown)).containsExactly("/source/itemId", "/display/itemId");
        assertThat(unknown.errors().stream().map(ProblemError::message).collect(Collectors.joining()))
                .contains("gone", "no display with this id");

        request.remove("equipment");
        assertThat(pointers(shelf.refused(request))).containsExactly("/source/itemId", "/display/itemId");
    }

    @Test
    void aDisplayIsNamedInOneWayOnly() {
        shelf.owned("my-kyloe", List.of(), List.of());
        ObjectNode request = request();
        MatchRequests.object(request, "/display").put("itemId", "my-kyloe");
        ProblemException problem = shelf.refused(request);
        assertThat(problem.type()).isEqualTo(ProblemType.WRONG_TYPE);
        assertThat(pointers(problem)).containsExactly("/display");
    }

    @Test
    void anItemThatIsOneVariantIsNoOther() {
        shelf.sources.put("my-wendrel", new OwnedSource(present(DEMO.sources().get("wendrel")), "625-rev1"));
        ObjectNode request = request(true);
        request.set("source", MatchRequests.JSON.readTree("{\"itemId\": \"my-wendrel\"}"));
        JsonNode answer = shelf.json(request);
        // The variant for 625 lines has about 50 fields a second, the other about 60 (CTA-861-I §4).
        String fieldRate =
                answer.at("/ranked/0/modeSettings/0/outputTiming/fieldRateHz").asString();
        assertThat(Rational.parse(fieldRate).toDouble()).isBetween(49.5, 50.5);

        MatchRequests.object(request, "/source").put("variantId", "525-rev1");
        assertThat(pointers(shelf.refused(request))).containsExactly("/source/variantId");
        MatchRequests.object(request, "/source").put("variantId", "625-rev1");
        assertThat(shelf.json(request)).isEqualTo(answer);
    }
}
