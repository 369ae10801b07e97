package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.app.match.Shelf.DAY;
import static rasterfit.app.match.Shelf.DEMO;
import static rasterfit.app.match.Shelf.FULL_HD;
import static rasterfit.app.match.Shelf.acceptances;
import static rasterfit.app.match.Shelf.converterOfTheDemo;
import static rasterfit.app.match.Shelf.messages;
import static rasterfit.app.match.Shelf.present;
import static rasterfit.app.match.Shelf.read;
import static rasterfit.app.match.Shelf.request;
import static rasterfit.app.match.Shelf.tested;

import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.app.belongings.Owned.OwnedSource;
import rasterfit.app.problem.FuzzJson;
import rasterfit.gear.DisplayTest;
import rasterfit.upkeep.InputTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** What an owner found out about a display, in a match against the demo catalogue: sections 8 and 9 of ../shared/DOMAIN.md. */
class OwnedDisplayMatchTest {
    private final Shelf shelf = new Shelf();

    @Test
    void aDisplayIsNamedByItsItemAndToldByIt() {
        shelf.owned("my-kyloe", List.of(), List.of());
        shelf.sources.put("my-quillon", new OwnedSource(present(DEMO.sources().get("quillon-16")), null));
        ObjectNode request = request();
        MatchRequests.object(request, "/display").remove("catalogueId");
        MatchRequests.object(request, "/display").put("itemId", "my-kyloe");
        MatchRequests.object(request, "/source").remove("catalogueId");
        MatchRequests.object(request, "/source").put("itemId", "my-quillon");

        JsonNode route = shelf.json(request).at("/ranked/0/route");
        route.forEach(step -> assertThat(step.path("owned").asBoolean(false)).isTrue());
        assertThat(route.path(route.size() - 1).path("id").asString()).isEqualTo("my-kyloe");
        assertThat(route.path(0).path("name").asString()).isEqualTo("Quillon 16");
    }

    @Test
    void theOnlyOwnedDisplayOfAModelBringsWhatItsOwnerFoundOut() {
        shelf.owned("my-kyloe", List.of(read(9, 9, 9, 9)), List.of(tested(DisplayTest.Outcome.SHOWN, "2.1")));
        ObjectNode request = request();
        MatchRequests.object(request, "/equipment").putArray("converters").add(converterOfTheDemo("pikelaw"));

        JsonNode answer = shelf.json(request);
        assertThat(acceptances(answer, "vic:16")).isNotEmpty().containsOnly("TESTED");
        JsonNode best = answer.at("/ranked/0");
        JsonNode route = best.path("route");
        assertThat(route.path(route.size() - 1).path("id").asString()).isEqualTo("kyloe-55");
        assertThat(route.path(route.size() - 1).path("owned").asBoolean(false)).isTrue();
        // Four equal counts of a camera of 1000 frames a second: 9 ms, and one frame open on either side.
        JsonNode lag = best.at("/modeSettings/0/measures/displayLagMs");
        assertThat(lag.path("typical").asInt()).isEqualTo(9);
        assertThat(lag.path("least").asInt()).isEqualTo(8);
        assertThat(lag.path("greatest").asInt()).isEqualTo(10);
        assertThat(lag.path("basis").asString()).isEqualTo("MEASURED");
        assertThat(messages(answer, "display.lag-measured-by-owner"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("2026-03-09", "in place of"));
        assertThat(messages(answer, "display.own-test-shown"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("2026-03-09 with firmware 2.1"));
        JsonNode tested = MatchRequests.JSON
                .readTree(FuzzJson.written(shelf.answer(request)))
                .findValue("tested");
        assertThat(tested.path("outcome").asString()).isEqualTo("SHOWN");
        assertThat(tested.path("on").asString()).isEqualTo("2026-03-09");
        assertThat(tested.path("firmware").asString()).isEqualTo("2.1");
    }

    @Test
    void whatStayedBlankIsRefusedAndWhatAnotherFirmwareDidIsOnlyTold() {
        ObjectNode request = request();
        MatchRequests.object(request, "/equipment").putArray("converters").add(converterOfTheDemo("pikelaw"));

        shelf.owned("my-kyloe", List.of(), List.of(tested(DisplayTest.Outcome.BLANK, "2.1")));
        JsonNode blank = shelf.json(request);
        assertThat(acceptances(blank, "vic:16")).isEmpty();
        assertThat(blank.path("refused")
                        .valueStream()
                        .map(refusal -> refusal.path("rule").asString()))
                .contains("display.own-test-blank");

        shelf.owned("my-kyloe", List.of(), List.of(tested(DisplayTest.Outcome.BLANK, "1.0")));
        JsonNode outdated = shelf.json(request);
        assertThat(acceptances(outdated, "vic:16")).isNotEmpty().doesNotContain("TESTED");
        assertThat(messages(outdated, "display.own-test-outdated")).isNotEmpty();
    }

    @Test
    void ofTwoDisplaysOfAModelOneHasToBeNamedByItsItem() {
        shelf.owned("in-the-parlour", List.of(), List.of(tested(DisplayTest.Outcome.BLANK, "2.1")));
        shelf.owned("in-the-attic", List.of(), List.of());

        JsonNode answer = shelf.json(request());
        assertThat(messages(answer, "collection.which-display"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("in-the-parlour", "in-the-attic", "itemId"));
        assertThat(messages(answer, "display.own-test-shown")).isEmpty();
    }

    @Test
    void evidenceThatFindsNoInputIsTold() {
        InputTest elsewhere = new InputTest(
                "digital-9", null, new DisplayTest(FULL_HD.raster(), DisplayTest.Outcome.SHOWN, null, DAY));
        shelf.owned("my-kyloe", List.of(), List.of(elsewhere));
        shelf.missing.add("old-box");

        JsonNode answer = shelf.json(request());
        assertThat(messages(answer, "collection.evidence-without-input"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("input digital-9"));
        assertThat(messages(answer, "collection.item-without-gear"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("old-box"));
    }
}
