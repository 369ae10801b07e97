package rasterfit.app.collection;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Collections whose gear the catalogue, which belongs to everybody, does not hold any more. */
class LostGearCallTest extends CollectionsServed {

    /** Another piece of gear in the catalogue with the facts of this one. */
    private String copied(String kind, String id, String newId) throws Exception {
        String path = "/v1/catalogue/" + kind + "/" + newId;
        ObjectNode gear = (ObjectNode) read("/v1/catalogue/" + kind + "/" + id);
        gear.put("id", newId);
        created(put(path, gear.toString(), null));
        return path;
    }

    /** With a converter that is plugged into the display and gone from the catalogue. */
    private String shelfWithLostBox(String id) throws Exception {
        String gear = copied("converters", "tarn-b", id + "-box");
        String path = shelf(id);
        created(put(path + "/items/lost", named("CONVERTER", id + "-box", "\"note\": \"Old\""), null));
        created(put(path + "/connections/c", connection("lost", "out", "set", "digital-1", "lead-1"), null));
        assertThat(delete(gear).statusCode()).isEqualTo(204);
        return path;
    }

    @Test
    void anItemSaysThatTheCatalogueHasLostItAndCanBeChangedAllTheSame() throws Exception {
        String path = shelfWithLostBox("lost-changed");
        HttpResponse<String> lost = ok(get(path + "/items/lost"));
        assertThat(JSON.readTree(lost.body()).path("missingFromCatalogue").asBoolean())
                .isTrue();
        read(path + "/items")
                .path("items")
                .forEach(item -> assertThat(item.has("missingFromCatalogue"))
                        .as(item.toString())
                        .isEqualTo(item.path("id").asString().equals("lost")));
        HttpResponse<String> same = ok(put(path + "/items/lost", lost.body(), tag(lost)));
        HttpResponse<String> noted = ok(patch(path + "/items/lost", "{\"note\": \"Bought used\"}", tag(same)));
        assertThat(JSON.readTree(noted.body()).path("note").asString()).isEqualTo("Bought used");
        // What it names anew has to be there.
        assertThat(pointer(problem(
                        patch(path + "/items/lost", "{\"catalogueId\": \"nowhere\"}", tag(noted)),
                        422,
                        "invalid-value")))
                .isEqualTo("/catalogueId");
    }

    @Test
    void anItemStaysWhileAConnectionNamesItThoughItsPortsAreUnknown() throws Exception {
        String path = shelfWithLostBox("lost-connected");
        JsonNode kept = problem(delete(path + "/items/lost"), 409, "conflict");
        assertThat(kept.path("detail").asString()).contains("connection \"c\"");
        problem(delete(path + "/items/lead-1"), 409, "conflict");
    }

    @Test
    void itsConnectionKeepsThePortsAtTheOtherEnd() throws Exception {
        String path = shelfWithLostBox("lost-ports");
        JsonNode taken = problem(
                post(path + "/connections", connection("box", "out", "set", "digital-1", "lead-2")), 409, "conflict");
        assertThat(taken.path("detail").asString()).contains("\"c\"");
    }

    @Test
    void whatIsNotLostCanStillBeChanged() throws Exception {
        String path = shelfWithLostBox("lost-others");
        HttpResponse<String> set = get(path + "/items/set");
        ok(patch(path + "/items/set", "{\"firmware\": \"2.0\"}", tag(set)));
    }

    @Test
    void aVariantThatIsLostIsToldAndKept() throws Exception {
        String gear = copied("sources", "quillon-16", "lost-variant-console");
        String path = shelf("lost-variant");
        created(put(
                path + "/items/other", named("SOURCE", "lost-variant-console", "\"variantId\":\"525-rev1\""), null));
        HttpResponse<String> now = get(gear);
        ok(put(gear, now.body().replace("\"525-rev1\"", "\"525-rev9\""), tag(now)));
        HttpResponse<String> item = ok(get(path + "/items/other"));
        assertThat(JSON.readTree(item.body()).path("missingFromCatalogue").asBoolean())
                .isTrue();
        HttpResponse<String> noted = ok(patch(path + "/items/other", "{\"note\": \"Shelf 2\"}", tag(item)));
        assertThat(pointer(problem(
                        patch(path + "/items/other", "{\"variantId\": \"nope\"}", tag(noted)), 422, "invalid-value")))
                .isEqualTo("/variantId");
    }

    @Test
    void whatWasMeasuredKeepsItsStatistics() throws Exception {
        String gear = copied("displays", "lowick-40", "lost-display");
        String path = shelf("lost-reading");
        created(put(path + "/items/other", named("DISPLAY", "lost-display"), null));
        created(put(path + "/lag-readings/one", """
                        {"item": "other", "input": "digital-1", "cameraFramesPerSecond": "240",
                         "framesCounted": [4, 5], "method": "SPLIT_SIGNAL", "on": "2026-05-01"}""", null));
        assertThat(delete(gear).statusCode()).isEqualTo(204);
        // 4.5 frames of 1000/240 ms.
        assertThat(read(path + "/lag-readings/one").at("/statistics/meanMs").asDouble())
                .isEqualTo(18.75);
    }

    @Test
    void whatNamesAnInputThatIsGoneIsToldInAMatch() throws Exception {
        String gear = copied("displays", "lowick-40", "lost-input-display");
        String path = shelf("lost-input");
        created(put(path + "/items/other", named("DISPLAY", "lost-input-display"), null));
        created(put(path + "/lag-readings/one", """
                        {"item": "other", "input": "component", "cameraFramesPerSecond": "240",
                         "framesCounted": [4, 5], "method": "SPLIT_SIGNAL", "on": "2026-05-01"}""", null));
        HttpResponse<String> now = get(gear);
        ObjectNode changed = (ObjectNode) JSON.readTree(now.body());
        ArrayNode left = changed.arrayNode();
        changed.path("inputs").forEach(input -> {
            if (!input.path("id").asString().equals("component")) {
                left.add(input);
            }
        });
        assertThat(left.size()).isLessThan(changed.path("inputs").size());
        ok(put(gear, changed.set("inputs", left).toString(), tag(now)));
        HttpResponse<String> match = ok(post("/v1/matches", """
                        {"display": {"itemId": "other"}, "source": {"itemId": "console"},
                         "equipment": {"collectionId": "lost-input"}}"""));
        assertThat(match.body()).contains("names input component");
    }
}
