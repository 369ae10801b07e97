package rasterfit.app.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The catalogue over HTTP, on a real PostgreSQL server. */
class CatalogueCallTest extends ServedTest {
    private static final JsonMapper JSON = JsonMapper.shared();

    @Test
    void anItemIsReadAsItWasWritten() throws Exception {
        String written = lead("read-back", "9.50");
        HttpResponse<String> created = put("read-back", written, Map.of());
        assertThat(created.statusCode()).as(created.body()).isEqualTo(201);
        assertThat(created.headers().firstValue("Location")).contains("/v1/catalogue/links/read-back");
        HttpResponse<String> read = get("/v1/catalogue/links/read-back");
        assertThat(read.statusCode()).isEqualTo(200);
        // Member order, number forms and members that no computation uses are kept.
        assertThat(read.body()).isEqualTo(written);
        assertThat(tag(read)).isEqualTo(tag(created)).matches("\"\\d+\"");
        assertThat(created.body()).isEqualTo(written);
    }

    @Test
    void anUnchangedItemIsNotSentTwice() throws Exception {
        String tag = tag(put("cached", lead("cached", "1"), Map.of()));
        // RFC 9110 §13.1.2: If-None-Match compares weakly, so that a proxy's W/ matches too.
        for (String known : List.of(tag, "W/" + tag, "\"0\", " + tag, "*")) {
            HttpResponse<String> again =
                    send(request("/v1/catalogue/links/cached").header("If-None-Match", known));
            assertThat(again.statusCode()).as(known).isEqualTo(304);
            assertThat(again.body()).isEmpty();
            assertThat(tag(again)).isEqualTo(tag);
        }
        assertThat(send(request("/v1/catalogue/links/cached").header("If-None-Match", "\"0\""))
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void aChangeNamesTheStateThatItChanges() throws Exception {
        String first = tag(put("guarded", lead("guarded", "1"), Map.of()));
        // RFC 6585 §3 without a condition, RFC 9110 §15.5.13 with a stale one.
        problem(put("guarded", lead("guarded", "2"), Map.of()), 428, "precondition-required");
        problem(delete("guarded", Map.of()), 428, "precondition-required");
        problem(patch("guarded", "{\"lengthMm\": 100}", Map.of()), 428, "precondition-required");
        HttpResponse<String> second = put("guarded", lead("guarded", "2"), Map.of("If-Match", first));
        assertThat(second.statusCode()).isEqualTo(200);
        assertThat(tag(second)).isNotEqualTo(first);
        problem(put("guarded", lead("guarded", "3"), Map.of("If-Match", first)), 412, "precondition-failed");
        problem(delete("guarded", Map.of("If-Match", first)), 412, "precondition-failed");
        problem(put("guarded", lead("guarded", "3"), Map.of("If-None-Match", "*")), 412, "precondition-failed");
        // RFC 9110 §13.1.1: If-Match compares strongly.
        problem(
                put("guarded", lead("guarded", "3"), Map.of("If-Match", "W/" + tag(second))),
                412,
                "precondition-failed");
        assertThat(get("/v1/catalogue/links/guarded").body()).isEqualTo(lead("guarded", "2"));
        problem(put("not-there", lead("not-there", "3"), Map.of("If-Match", "*")), 412, "precondition-failed");
        problem(get("/v1/catalogue/links/not-there"), 404, "not-found");
    }

    @Test
    void aPatchChangesWhatItNames() throws Exception {
        String tag = tag(put("patched", lead("patched", "1"), Map.of()));
        // RFC 7396: null removes, objects merge.
        HttpResponse<String> patched =
                patch("patched", "{\"lengthMm\": null, \"price\": {\"amount\": \"2\"}}", Map.of("If-Match", tag));
        assertThat(patched.statusCode()).as(patched.body()).isEqualTo(200);
        JsonNode now = JSON.readTree(patched.body());
        assertThat(now.has("lengthMm")).isFalse();
        assertThat(now.at("/price/amount").asString()).isEqualTo("2");
        assertThat(now.at("/price/currency").asString()).isEqualTo("EUR");
        JsonNode refused =
                problem(patch("patched", "{\"kind\": null}", Map.of("If-Match", tag(patched))), 400, "missing-member");
        assertThat(pointer(refused)).isEqualTo("/kind");
        assertThat(get("/v1/catalogue/links/patched").body()).isEqualTo(patched.body());
    }

    @Test
    void everyChangeCanBeReadAndRestored() throws Exception {
        String first = tag(put("history", lead("history", "1"), Map.of()));
        String second = tag(put("history", lead("history", "2"), Map.of("If-Match", first)));
        assertThat(delete("history", Map.of("If-Match", second)).statusCode()).isEqualTo(204);
        problem(get("/v1/catalogue/links/history"), 404, "not-found");
        JsonNode history =
                JSON.readTree(get("/v1/catalogue/links/history/revisions").body());
        assertThat(history.path("items")
                        .valueStream()
                        .map(one -> one.path("change").asString()))
                .containsExactly("DELETED", "REPLACED", "CREATED");
        String path = "/v1/catalogue/links/history/revisions/" + first.replace("\"", "");
        assertThat(get(path).body()).isEqualTo(lead("history", "1"));
        String deletion = history.at("/items/0/revision").asString();
        problem(get("/v1/catalogue/links/history/revisions/" + deletion), 404, "not-found");
        HttpResponse<String> restored = send(request(path + "/restore").POST(BodyPublishers.noBody()));
        assertThat(restored.statusCode()).as(restored.body()).isEqualTo(200);
        assertThat(get("/v1/catalogue/links/history").body()).isEqualTo(lead("history", "1"));
        // Over what is there it needs the state, like every change.
        problem(send(request(path + "/restore").POST(BodyPublishers.noBody())), 428, "precondition-required");
    }

    @Test
    void aHistoryComesInPages() throws Exception {
        String tag = tag(put("paged", lead("paged", "0"), Map.of()));
        for (int i = 1; i < 5; i++) {
            tag = tag(put("paged", lead("paged", Integer.toString(i)), Map.of("If-Match", tag)));
        }
        List<Long> revisions = new ArrayList<>();
        String cursor = "";
        do {
            JsonNode page = JSON.readTree(
                    get("/v1/catalogue/links/paged/revisions?size=2" + cursor).body());
            page.path("items").forEach(one -> revisions.add(one.path("revision").asLong()));
            cursor = page.has("next") ? "&cursor=" + page.path("next").asString() : "";
        } while (!cursor.isEmpty());
        assertThat(revisions).hasSize(5).isSortedAccordingTo((one, other) -> Long.compare(other, one));
    }

    @Test
    void aListGoesThroughAllItemsOnceInTheOrderOfTheirIds() throws Exception {
        for (String id : List.of("walk-c", "walk-a", "walk-b")) {
            put(id, lead(id, "1"), Map.of());
        }
        List<String> ids = new ArrayList<>();
        String cursor = "";
        do {
            JsonNode page =
                    JSON.readTree(get("/v1/catalogue/links?size=3" + cursor).body());
            assertThat(page.path("items").size()).isLessThanOrEqualTo(3);
            page.path("items").forEach(one -> ids.add(one.path("id").asString()));
            cursor = page.has("next") ? "&cursor=" + page.path("next").asString() : "";
        } while (!cursor.isEmpty());
        assertThat(ids).isSorted().doesNotHaveDuplicates().contains("walk-a", "walk-b", "walk-c");
    }

    @ParameterizedTest
    @CsvSource({
        "connector=MINI_DIN_4, true",
        "connector=SCART, false",
        "format=YC&connector=MINI_DIN_4, true",
        "format=RGB&connector=MINI_DIN_4, false",
        "maxPrice=4.00&currency=EUR, true",
        "maxPrice=3.99&currency=EUR, false",
        "maxPrice=4.00&currency=USD, false"
    })
    void aListIsNarrowedByWhatGearCanDo(String query, boolean isFound) throws Exception {
        if (get("/v1/catalogue/links/searched").statusCode() == 404) {
            put("searched", lead("searched", "4.00"), Map.of());
        }
        JsonNode page =
                JSON.readTree(get("/v1/catalogue/links?size=200&" + query).body());
        List<String> ids = page.path("items")
                .valueStream()
                .map(one -> one.path("id").asString())
                .toList();
        assertThat(ids.contains("searched")).isEqualTo(isFound);
    }

    @Test
    void gearIsFoundByALineRateThatItsInputsTake() throws Exception {
        // The demo's converters for 15 kHz: 13.5 MHz / 858 = 15,734.27 lines/s (BT.601); none takes 1 MHz.
        assertThat(found("converters?lineRateHz=15734.27&format=RGB")).isNotEmpty();
        assertThat(found("converters?lineRateHz=1000000&format=RGB")).isEmpty();
        assertThat(found("converters?lineRateHz=5")).isEmpty();
        // A console by what a meter of five digits shows; BT.601: 15,734.27 lines/s, and 315/88 MHz · 3/2 / 341 =
        // 15,745.80.
        assertThat(found("sources?lineRateHz=15740")).contains("quillon-16");
        // A cable states no line rate.
        assertThat(found("links?lineRateHz=5")).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "size=0",
                "size=a",
                "cursor=nonsense%20",
                "format=SOUND",
                "maxPrice=4",
                "currency=EUR",
                "lineRateHz=fast",
                "colour=RGB",
                "connector=a%00",
                "cursor=AAAA"
            })
    void aMalformedQueryIsRefused(String query) throws Exception {
        assertThat(get("/v1/catalogue/links?" + query).statusCode()).as(query).isEqualTo(400);
    }

    @Test
    void aDocumentIsHeldAgainstTheEnginesOwnTypes() throws Exception {
        JsonNode unknown = problem(
                put("faulty", lead("faulty", "1").replace("MINI_DIN_4", "MINI_DIN_5"), Map.of()), 400, "unknown-value");
        assertThat(unknown.at("/errors/0/pointer").asString()).isEqualTo("/from/connector");
        problem(put("faulty", lead("faulty", "1").replace("lengthMm", "length"), Map.of()), 400, "unknown-member");
        // A value that refuses itself while it is read is pointed at like any other.
        JsonNode refused = problem(
                put("faulty", lead("faulty", "1").replace("1500.0", "1500.0,\"bandwidthHz\":5"), Map.of()),
                400,
                "wrong-type");
        assertThat(pointer(refused)).isEqualTo("/bandwidthHz");
        problem(put("faulty", lead("other-id", "1"), Map.of()), 422, "invalid-value");
        problem(put("Faulty", lead("Faulty", "1"), Map.of()), 400, "wrong-type");
        problem(get("/v1/catalogue/links/faulty"), 404, "not-found");
        problem(get("/v1/catalogue/tools/faulty"), 404, "not-found");
    }

    @Test
    void aWriteIsInTheNextMatch() throws Exception {
        long before = revision();
        put("counted", lead("counted", "1"), Map.of());
        assertThat(revision()).isGreaterThan(before);
    }

    @Test
    void ofManyWritersToOneItemNoneIsLost() throws Exception {
        put("contended", lead("contended", "0"), Map.of());
        int writers = 8;
        int each = 5;
        ExecutorService pool = Executors.newFixedThreadPool(writers);
        try {
            List<Callable<Integer>> work = new ArrayList<>();
            for (int i = 0; i < writers; i++) {
                work.add(() -> increments(each));
            }
            int done = 0;
            for (Future<Integer> one : pool.invokeAll(work)) {
                done += one.get();
            }
            JsonNode now = JSON.readTree(get("/v1/catalogue/links/contended").body());
            assertThat(done).isEqualTo(writers * each);
            assertThat(now.at("/price/amount").asInt()).isEqualTo(writers * each);
        } finally {
            pool.shutdown();
        }
    }

    /** Reads, adds one, writes back under the condition that nobody else did; again if somebody did. */
    private int increments(int times) throws Exception {
        int done = 0;
        while (done < times) {
            HttpResponse<String> read = get("/v1/catalogue/links/contended");
            int amount = JSON.readTree(read.body()).at("/price/amount").asInt();
            HttpResponse<String> written =
                    put("contended", lead("contended", Integer.toString(amount + 1)), Map.of("If-Match", tag(read)));
            assertThat(written.statusCode()).as(written.body()).isIn(200, 412);
            done += written.statusCode() == 200 ? 1 : 0;
        }
        return done;
    }

    @Test
    void anExportImportedAgainChangesNothing() throws Exception {
        HttpResponse<String> export = get("/v1/catalogue/exports");
        assertThat(export.statusCode()).isEqualTo(200);
        JsonNode report = imported(export.body(), "");
        assertThat(report.path("changed").asInt()).isZero();
        assertThat(report.path("items").asInt()).isGreaterThan(20);
        assertThat(get("/v1/catalogue/exports").body()).isEqualTo(export.body());
    }

    @Test
    void anImportIsWholeOrNotAtAll() throws Exception {
        String good = lead("import-good", "1");
        String bad = lead("import-bad", "1").replace("MINI_DIN_4", "MINI_DIN_5");
        String document = "{\"format\":\"catalogue/1\",\"links\":[" + good + "," + bad + "]}";
        JsonNode refused = problem(importing(document, ""), 400, "unknown-value");
        assertThat(refused.at("/errors/0/pointer").asString()).isEqualTo("/links/1/from/connector");
        problem(get("/v1/catalogue/links/import-good"), 404, "not-found");
        String sound = document.replace("MINI_DIN_5", "MINI_DIN_4");
        JsonNode looked = imported(sound, "?validate=true");
        assertThat(looked.path("validated").asBoolean()).isTrue();
        assertThat(looked.path("changed").asInt()).isEqualTo(2);
        problem(get("/v1/catalogue/links/import-good"), 404, "not-found");
        JsonNode done = imported(sound, "");
        assertThat(done.path("changed").asInt()).isEqualTo(2);
        assertThat(get("/v1/catalogue/links/import-good").body()).isEqualTo(good);
        assertThat(JSON.readTree(get("/v1/catalogue/links/import-bad/revisions").body())
                        .at("/items/0/change")
                        .asString())
                .isEqualTo("IMPORTED");
    }

    private List<String> found(String query) throws Exception {
        return JSON.readTree(get("/v1/catalogue/" + query).body())
                .path("items")
                .valueStream()
                .map(one -> one.path("id").asString())
                .toList();
    }

    private JsonNode imported(String document, String query) throws Exception {
        HttpResponse<String> answer = importing(document, query);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JSON.readTree(answer.body());
    }

    private HttpResponse<String> importing(String document, String query) throws Exception {
        return send(request("/v1/catalogue/imports" + query)
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(document)));
    }

    /** As a match names it. */
    private long revision() throws Exception {
        String request =
                "{\"display\": {\"catalogueId\": \"lowick-40\"}, \"source\": {\"catalogueId\": \"quillon-16\", \"variantId\":"
                        + " \"525-rev1\"}, \"equipment\": {\"fromCatalogue\": false}}";
        HttpResponse<String> answer = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(request)));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JSON.readTree(answer.body()).path("catalogueRevision").asLong();
    }

    private static String lead(String id, String amount) {
        return "{\"id\":\"" + id + "\",\"kind\":\"CABLE\",\"name\":\"A lead\",\"lengthMm\":1500.0,"
                + "\"to\":{\"connector\":\"MINI_DIN_4\"},\"from\":{\"connector\":\"MINI_DIN_4\"},"
                + "\"carries\":[{\"format\":\"YC\"}],\"price\":{\"amount\":\"" + amount + "\",\"currency\":\"EUR\"}}";
    }

    private static String tag(HttpResponse<String> answer) {
        return answer.headers().firstValue("ETag").orElseThrow(() -> new AssertionError(answer.body()));
    }

    private HttpResponse<String> put(String id, String document, Map<String, String> headers) throws Exception {
        var request = request("/v1/catalogue/links/" + id)
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(document));
        headers.forEach(request::header);
        return send(request);
    }

    private HttpResponse<String> patch(String id, String patch, Map<String, String> headers) throws Exception {
        var request = request("/v1/catalogue/links/" + id)
                .header("Content-Type", "application/merge-patch+json")
                .method("PATCH", BodyPublishers.ofString(patch));
        headers.forEach(request::header);
        return send(request);
    }

    private HttpResponse<String> delete(String id, Map<String, String> headers) throws Exception {
        var request = request("/v1/catalogue/links/" + id).DELETE();
        headers.forEach(request::header);
        return send(request);
    }
}
