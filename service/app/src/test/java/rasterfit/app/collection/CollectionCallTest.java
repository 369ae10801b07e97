package rasterfit.app.collection;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Collections, items and connections over HTTP, on a real PostgreSQL server. */
class CollectionCallTest extends CollectionsServed {

    @Test
    void aCollectionIsReadAsItWasWrittenAndGuardedByItsState() throws Exception {
        String path = "/v1/collections/guarded";
        HttpResponse<String> created = created(put(path, "{\"name\": \"Den\", \"note\": \"North wall\"}", null));
        assertThat(created.headers().firstValue("Location")).contains(path);
        HttpResponse<String> read = ok(get(path));
        assertThat(read.body()).isEqualTo("{\"id\":\"guarded\",\"name\":\"Den\",\"note\":\"North wall\"}");
        assertThat(tag(read)).isEqualTo(tag(created));
        problem(put(path, "{\"name\": \"Attic\"}", null), 428, "precondition-required");
        problem(put(path, "{\"name\": \"Attic\"}", "\"99\""), 412, "precondition-failed");
        HttpResponse<String> renamed = ok(patch(path, "{\"name\": \"Attic\", \"note\": null}", tag(read)));
        assertThat(renamed.body()).isEqualTo("{\"id\":\"guarded\",\"name\":\"Attic\"}");
        assertThat(send(request(path).header("If-None-Match", tag(renamed))).statusCode())
                .isEqualTo(304);
        // GET and PUT exchange a document unchanged.
        ok(put(path, renamed.body(), tag(renamed)));
        assertThat(delete(path).statusCode()).isEqualTo(204);
        problem(get(path), 404, "not-found");
    }

    @Test
    void anIdIsTheClientsOrMadeHere() throws Exception {
        HttpResponse<String> own = created(post("/v1/collections", "{\"id\": \"chosen\", \"name\": \"Mine\"}"));
        assertThat(own.headers().firstValue("Location")).contains("/v1/collections/chosen");
        problem(post("/v1/collections", "{\"id\": \"chosen\", \"name\": \"Mine\"}"), 409, "conflict");
        String made = created(post("/v1/collections", "{\"name\": \"Mine\"}"))
                .headers()
                .firstValue("Location")
                .orElseThrow();
        assertThat(read(made).path("name").asString()).isEqualTo("Mine");
        assertThat(pointer(problem(post("/v1/collections", "{\"id\": \"No!\", \"name\": \"x\"}"), 400, "wrong-type")))
                .isEqualTo("/id");
    }

    @Test
    void aRepeatedRequestCreatesOnce() throws Exception {
        String path = shelf("repeated");
        String body = named("LINK", "hdmi-lead");
        HttpResponse<String> first = created(postOnce(path + "/items", body, "key-1"));
        HttpResponse<String> again = created(postOnce(path + "/items", body, "key-1"));
        assertThat(again.headers().firstValue("Location"))
                .isEqualTo(first.headers().firstValue("Location"));
        assertThat(again.body()).isEqualTo(first.body());
        problem(postOnce(path + "/items", named("LINK", "vga-lead"), "key-1"), 422, "invalid-value");
        assertThat(read(path + "/items").path("items").size()).isEqualTo(7);
    }

    @Test
    void itemsComeInPages() throws Exception {
        String path = shelf("paged");
        JsonNode first = read(path + "/items?size=4");
        assertThat(ids(first)).containsExactly("av-lead", "box", "console", "lead-1");
        JsonNode rest = read(path + "/items?size=4&cursor=" + first.path("next").asString());
        assertThat(ids(rest)).containsExactly("lead-2", "set");
        assertThat(rest.has("next")).isFalse();
        problem(get(path + "/items?size=0"), 400, "invalid-parameter");
        problem(get(path + "/items?cursor=%21"), 400, "invalid-parameter");
        problem(get(path + "/shoes"), 404, "not-found");
        problem(get("/v1/collections/nobodys/items"), 404, "not-found");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"kind\": \"DISPLAY\", \"catalogueId\": \"nowhere\"}                     | 422 | invalid-value  | /catalogueId",
                "{\"kind\": \"DISPLAY\"}                                                   | 400 | wrong-type     | ''",
                "{\"catalogueId\": \"lowick-40\"}                                          | 400 | wrong-type     | ''",
                "{\"kind\": \"SOURCE\", \"catalogueId\": \"quillon-16\", \"variantId\": \"x\"} | 422 | invalid-value | /variantId",
                "{\"kind\": \"LINK\", \"catalogueId\": \"hdmi-lead\", \"variantId\": \"x\"}    | 422 | invalid-value | /variantId",
                "{\"kind\": \"LINK\", \"catalogueId\": \"hdmi-lead\", \"colour\": \"red\"}     | 400 | unknown-member | /colour",
                "{\"kind\": \"TEAPOT\", \"catalogueId\": \"hdmi-lead\"}                    | 400 | unknown-value  | /kind",
                "{\"kind\": \"LINK\", \"catalogueId\": \"hdmi-lead\", \"acquiredOn\": \"2026-02-30\"} | 400 | wrong-type | /acquiredOn",
                "{\"kind\": \"LINK\", \"catalogueId\": \"hdmi-lead\", \"id\": \"other\"}       | 422 | invalid-value  | /id",
                "{\"link\": {\"kind\": \"CABLE\", \"name\": \"x\", \"from\": {\"connector\": \"SOCK\"}, \"to\": {\"connector\": \"VGA\"},"
                        + " \"carries\": [{\"format\": \"RGB\"}]}} | 400 | unknown-value | /link/from/connector",
            })
    void aBadItemIsToldItsPlace(String body, int status, String code, String pointer) throws Exception {
        String path = "/v1/collections/bad-items";
        put(path, "{\"name\": \"Shelf\"}", null);
        assertThat(pointer(problem(put(path + "/items/bad", body, null), status, code)))
                .isEqualTo(pointer);
        problem(get(path + "/items/bad"), 404, "not-found");
    }

    @Test
    void aPortIsInOneConnectionAndAConflictNamesBoth() throws Exception {
        String path = shelf("ports");
        created(put(path + "/connections/av", connection("console", "rgb", "box", "av", "av-lead"), null));
        created(put(path + "/connections/out", connection("box", "out", "set", "digital-1", "lead-1"), null));
        // Another signal of the console's one connector, the same input, the same lead.
        JsonNode sameSocket = problem(
                put(path + "/connections/second", connection("console", "cvbs", "box", "av", "av-lead"), null),
                409,
                "conflict");
        assertThat(sameSocket.path("detail").asString()).contains("\"second\"").contains("\"av\"");
        created(put(path + "/items/other", named("CONVERTER", "tarn-b"), null));
        JsonNode sameInput = problem(
                put(path + "/connections/third", connection("other", "out", "set", "digital-1", "lead-2"), null),
                409,
                "conflict");
        assertThat(sameInput.path("detail").asString())
                .contains("\"third\"")
                .contains("digital-1 of set")
                .contains("\"out\"");
        // Freed, it can be used.
        assertThat(delete(path + "/connections/out").statusCode()).isEqualTo(204);
        created(put(path + "/connections/third", connection("other", "out", "set", "digital-1", "lead-1"), null));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "nothing | rgb  | box | av        |         | /from/item",
                "console | nope | box | av        | av-lead | /from/port",
                "set     | digital-1 | box | av   |         | /from/port",
                "console | rgb  | box | out       | av-lead | /to/port",
                "console | rgb  | box | av        | box     | /links/0",
                "console | rgb  | box | av        | lead-1  | /links/0",
                "box     | out  | box | av        | lead-1  | /to/item",
                "console | rgb  | box | av        |         | /to/port",
            })
    void aConnectionJoinsWhatIsThereAndMates(
            String from, String fromPort, String to, String toPort, String link, String pointer) throws Exception {
        String path = "/v1/collections/mating";
        if (get(path).statusCode() == 404) {
            shelf("mating");
        }
        String body =
                link == null ? connection(from, fromPort, to, toPort) : connection(from, fromPort, to, toPort, link);
        JsonNode refused = problem(put(path + "/connections/bad", body, null), 422, "invalid-value");
        assertThat(refused.at("/errors/0/pointer").asString()).isEqualTo(pointer);
    }

    @Test
    void anItemThatSomethingNamesIsKept() throws Exception {
        String path = shelf("named");
        created(put(path + "/connections/out", connection("box", "out", "set", "digital-1", "lead-1"), null));
        JsonNode kept = problem(delete(path + "/items/lead-1"), 409, "conflict");
        assertThat(kept.path("detail").asString()).contains("connection \"out\"");
        // Nor can it become something that does not fit.
        problem(put(path + "/items/box", named("LINK", "vga-lead"), tag(get(path + "/items/box"))), 409, "conflict");
        assertThat(read(path + "/items/box").path("catalogueId").asString()).isEqualTo("tarn-b");
        assertThat(delete(path + "/items/lead-2").statusCode()).isEqualTo(204);
    }

    @Test
    void anItemBecomesAnotherOnlyWhereItStaysPluggedInAsItIs() throws Exception {
        String path = shelf("other-gear");
        created(put(path + "/connections/out", connection("box", "out", "set", "digital-1", "lead-1"), null));
        // Another display with the same input and connector fits.
        ok(patch(path + "/items/set", "{\"catalogueId\": \"kyloe-55\"}", tag(get(path + "/items/set"))));
        // A tube has no such input.
        JsonNode refused = problem(
                patch(path + "/items/set", "{\"catalogueId\": \"ancroft-25\"}", tag(get(path + "/items/set"))),
                409,
                "conflict");
        assertThat(refused.path("detail").asString()).contains("connection \"out\"");

        // Two variants that give the same signal at different sockets, and a display whose connector nobody noted.
        ObjectNode source = (ObjectNode) read("/v1/catalogue/sources/quillon-16");
        ObjectNode display = (ObjectNode) read("/v1/catalogue/displays/lowick-40");
        source.remove("id");
        display.remove("id");
        ((ObjectNode) display.at("/inputs/0")).remove("connector");
        ObjectNode variant = source.at("/variants/0").asObject().deepCopy();
        variant.put("id", "other");
        variant.path("outputs").forEach(output -> ((ObjectNode) output).put("connector", "VGA"));
        ((ArrayNode) source.path("variants")).add(variant);
        created(put(path + "/items/twin", "{\"variantId\": \"525-rev1\", \"source\": " + source + "}", null));
        created(put(path + "/items/bare", "{\"display\": " + display + "}", null));
        created(put(path + "/connections/direct", connection("twin", "rgb", "bare", "digital-1"), null));
        JsonNode elsewhere = problem(
                patch(path + "/items/twin", "{\"variantId\": \"other\"}", tag(get(path + "/items/twin"))),
                409,
                "conflict");
        assertThat(elsewhere.path("detail").asString()).contains("connection \"direct\"", "elsewhere");
    }

    @Test
    void whatTheCatalogueLosesStaysInTheCollection() throws Exception {
        String gear = "/v1/catalogue/links/short-lived";
        String lead = "{\"kind\":\"CABLE\",\"name\":\"A lead\",\"from\":{\"connector\":\"VGA\"},"
                + "\"to\":{\"connector\":\"VGA\"},\"carries\":[{\"format\":\"RGB\"}]}";
        created(put(gear, lead, null));
        String path = shelf("losing");
        created(put(path + "/items/lost", named("LINK", "short-lived"), null));
        assertThat(delete(gear).statusCode()).isEqualTo(204);
        assertThat(read(path + "/items/lost").path("catalogueId").asString()).isEqualTo("short-lived");
        HttpResponse<String> match = match("losing");
        assertThat(match.body()).contains("collection.item-without-gear").contains("lost");
    }

    @Test
    void aMatchTakesWhatIsOwned() throws Exception {
        String path = shelf("matching");
        JsonNode answer = JSON.readTree(ok(match("matching")).body());
        long revision = answer.path("collectionRevision").asLong();
        assertThat(revision).isPositive();
        JsonNode best = answer.at("/ranked/0");
        assertThat(best.at("/price/amount").asString()).isEqualTo("0");
        best.path("route")
                .forEach(stage -> assertThat(stage.path("owned").asBoolean())
                        .as(stage.toString())
                        .isTrue());
        assertThat(delete(path + "/items/box").statusCode()).isEqualTo(204);
        JsonNode without = JSON.readTree(ok(match("matching")).body());
        assertThat(without.path("collectionRevision").asLong()).isGreaterThan(revision);
        assertThat(without.path("ranked").toString()).doesNotContain("\"CONVERTER\"");
    }

    private HttpResponse<String> match(String collection) throws Exception {
        return post("/v1/matches", """
                {"display": {"itemId": "set"}, "source": {"itemId": "console"},
                 "equipment": {"collectionId": "%s"}}""".formatted(collection));
    }

    @Test
    void parallelWritersTakeAPortOnceAndLoseNoChange() throws Exception {
        String path = shelf("parallel");
        int clients = 6;
        ExecutorService threads = Executors.newFixedThreadPool(clients);
        try {
            List<Callable<Integer>> calls = java.util.stream.IntStream.range(0, clients)
                    .<Callable<Integer>>mapToObj(i -> () -> put(
                                    path + "/connections/c" + i,
                                    connection("box", "out", "set", "digital-1", "lead-1"),
                                    null)
                            .statusCode())
                    .toList();
            List<Integer> statuses = new java.util.ArrayList<>();
            for (Future<Integer> done : threads.invokeAll(calls)) {
                statuses.add(done.get());
            }
            assertThat(statuses).containsOnly(201, 409).containsOnlyOnce(201);
            assertThat(read(path + "/connections").path("items").size()).isEqualTo(1);

            List<Callable<Integer>> notes = java.util.stream.IntStream.range(0, clients)
                    .<Callable<Integer>>mapToObj(i -> () -> appended(path + "/items/set", "n" + i))
                    .toList();
            for (Future<Integer> done : threads.invokeAll(notes)) {
                assertThat(done.get()).isEqualTo(200);
            }
        } finally {
            threads.shutdownNow();
        }
        String note = read(path + "/items/set").path("note").asString();
        for (int i = 0; i < clients; i++) {
            assertThat(note).contains("n" + i);
        }
    }

    /** Reads, appends and writes until nobody else was faster. */
    private int appended(String path, String word) throws Exception {
        while (true) {
            HttpResponse<String> read = get(path);
            String note = JSON.readTree(read.body()).path("note").asString("");
            HttpResponse<String> written =
                    patch(path, "{\"note\": \"" + (note + " " + word).strip() + "\"}", tag(read));
            if (written.statusCode() != 412) {
                return written.statusCode();
            }
        }
    }

    @Test
    void aCollectionIsExportedWhole() throws Exception {
        String path = shelf("exported");
        created(put(path + "/connections/out", connection("box", "out", "set", "digital-1", "lead-1"), null));
        JsonNode whole = read(path + "/export");
        assertThat(whole.path("name").asString()).isEqualTo("Shelf");
        assertThat(whole.path("items").size()).isEqualTo(6);
        assertThat(whole.at("/connections/0/links/0").asString()).isEqualTo("lead-1");
        assertThat(read("/v1/owner/export").at("/data/collections").toString()).contains("\"exported\"");
    }
}
