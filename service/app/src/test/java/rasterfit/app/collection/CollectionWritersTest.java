package rasterfit.app.collection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;

/** Several writers at once, and writers that fail: nothing is lost, taken twice or half-written. */
class CollectionWritersTest extends CollectionsServed {
    private static final int CLIENTS = 6;

    @Autowired
    JdbcClient database;

    /** What each of several calls at the same time gave. */
    private static <T> List<T> together(IntFunction<Callable<T>> call) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(CLIENTS);
        try {
            List<T> answers = new ArrayList<>();
            for (Future<T> done :
                    threads.invokeAll(IntStream.range(0, CLIENTS).mapToObj(call).toList())) {
                answers.add(done.get());
            }
            return answers;
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void ofSeveralWhoCreateACollectionAtOnceOneDoes() throws Exception {
        for (int round = 0; round < 5; round++) {
            String path = "/v1/collections/raced-" + round;
            assertThat(together(
                            i -> () -> put(path, "{\"name\": \"Mine\"}", null).statusCode()))
                    .containsOnly(201, 428)
                    .containsOnlyOnce(201);
            String body = "{\"id\": \"raced-posts-" + round + "\", \"name\": \"Mine\"}";
            assertThat(together(i -> () -> post("/v1/collections", body).statusCode()))
                    .containsOnly(201, 409)
                    .containsOnlyOnce(201);
        }
    }

    @Test
    void ofSeveralWhoPlugIntoOnePortOneDoes() throws Exception {
        String path = shelf("raced-port");
        String body = connection("box", "out", "set", "digital-1", "lead-1");
        assertThat(together(i -> () -> post(path + "/connections", body).statusCode()))
                .containsOnly(201, 409)
                .containsOnlyOnce(201);
        assertThat(read(path + "/connections").path("items").size()).isEqualTo(1);
    }

    @Test
    void theDatabaseHoldsEachPortForOneConnectionWhateverTheWritersBelieve() throws Exception {
        String path = shelf("guarded-port");
        created(put(path + "/connections/one", connection("box", "out", "set", "digital-1", "lead-1"), null));
        created(put(path + "/items/box-2", named("CONVERTER", "tarn-b"), null));
        created(put(path + "/items/set-2", named("DISPLAY", "kyloe-55"), null));
        created(put(path + "/connections/two", connection("box-2", "out", "set-2", "digital-1", "lead-2"), null));
        assertThatThrownBy(() -> database.sql("insert into collection_port (owner, collection, item, port, connection)"
                                + " values ('local', 'guarded-port', 'set', 'digital-1', 'two')")
                        .update())
                .isInstanceOf(DuplicateKeyException.class);
    }

    @Test
    void aCollectionThatIsMadeAnewHasNoTagOfTheFormerOne() throws Exception {
        String path = shelf("anew");
        String tag = tag(get(path));
        String itemTag = tag(get(path + "/items/set"));
        assertThat(delete(path).statusCode()).isEqualTo(204);
        shelf("anew");
        problem(put(path, "{\"name\": \"Old belief\"}", tag), 412, "precondition-failed");
        problem(patch(path + "/items/set", "{\"note\": \"Old belief\"}", itemTag), 412, "precondition-failed");
    }

    @Test
    void aRepeatedRequestIsAnsweredTheSameWhateverHappenedSince() throws Exception {
        String path = shelf("repeated-later");
        String body = named("LINK", "hdmi-lead", "\"id\": \"once\"", "\"note\": \"First\"");
        HttpResponse<String> first = created(postOnce(path + "/items", body, "later-1"));
        ok(patch(path + "/items/once", "{\"note\": \"Second\"}", tag(first)));
        same(first, postOnce(path + "/items", body, "later-1"));
        assertThat(delete(path + "/items/once").statusCode()).isEqualTo(204);
        same(first, postOnce(path + "/items", body, "later-1"));
        problem(get(path + "/items/once"), 404, "not-found");

        String collection = "{\"id\": \"repeated-whole\", \"name\": \"First\"}";
        HttpResponse<String> whole = created(postOnce("/v1/collections", collection, "later-2"));
        assertThat(delete("/v1/collections/repeated-whole").statusCode()).isEqualTo(204);
        same(whole, postOnce("/v1/collections", collection, "later-2"));
    }

    private static void same(HttpResponse<String> first, HttpResponse<String> again) {
        assertThat(created(again).body()).isEqualTo(first.body());
        assertThat(tag(again)).isEqualTo(tag(first));
        assertThat(again.headers().firstValue("Location"))
                .isEqualTo(first.headers().firstValue("Location"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // The first end is free, the second is not.
                "PUT    | /connections/new | {\"from\":{\"item\":\"box-2\",\"port\":\"out\"},\"to\":{\"item\":\"set\",\"port\":\"digital-1\"},\"links\":[\"lead-2\"]} |  | 409",
                "PUT    | /connections/one | {\"from\":{\"item\":\"box-2\",\"port\":\"out\"},\"to\":{\"item\":\"set-2\",\"port\":\"digital-1\"},\"links\":[\"lead-3\"]} | * | 409",
                "PUT    | /connections/one | {\"from\":{\"item\":\"box-2\",\"port\":\"out\"},\"to\":{\"item\":\"set\",\"port\":\"nowhere\"}} | * | 422",
                "PATCH  | /connections/one | {\"links\":[\"lead-9\"]}                          | * | 422",
                "PATCH  | /items/box       | {\"catalogueId\":\"nowhere\"}                      | * | 422",
                "PATCH  | /items/box       | {\"kind\":\"LINK\",\"catalogueId\":\"hdmi-lead\"}  | * | 409",
                "PATCH  | /items/box       | {\"note\":\"Late\"}                                | \"0\" | 412",
                "PATCH  | /items/box       | {\"note\":\"Blind\"}                               |   | 428",
                "POST   | /items           | {\"id\":\"box\",\"kind\":\"LINK\",\"catalogueId\":\"hdmi-lead\"} | | 409",
                "POST   | /lag-readings    | {\"item\":\"set\"}                                 |   | 400",
                "DELETE | /items/box       | ''                                                 | * | 409",
                "PUT    | ''               | {\"name\":\"Late\"}                                | \"0\" | 412",
            })
    void aFailedWriteChangesNothing(String method, String place, String body, String ifMatch, int status)
            throws Exception {
        String path = "/v1/collections/unchanged";
        if (get(path).statusCode() == 404) {
            shelf("unchanged");
            created(put(path + "/items/box-2", named("CONVERTER", "tarn-b"), null));
            created(put(path + "/items/box-3", named("CONVERTER", "tarn-b"), null));
            created(put(path + "/items/lead-3", named("LINK", "hdmi-lead"), null));
            created(put(path + "/connections/one", connection("box", "out", "set", "digital-1", "lead-1"), null));
            created(put(path + "/items/set-2", named("DISPLAY", "kyloe-55"), null));
            created(put(path + "/connections/two", connection("box-3", "out", "set-2", "digital-1", "lead-3"), null));
        }
        List<String> before = rows("unchanged");
        var request = request(path + place)
                .header("Content-Type", method.equals("PATCH") ? "application/merge-patch+json" : "application/json")
                .method(method, BodyPublishers.ofString(body));
        HttpResponse<String> answer = send(ifMatch == null ? request : request.header("If-Match", ifMatch));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        assertThat(rows("unchanged")).isEqualTo(before);
    }

    /** Everything that is stored of a collection. */
    private List<String> rows(String collection) {
        return database.sql("select 'collection ' || to_jsonb(c)::text as row from collection c where c.id = :id"
                        + " union all select 'record ' || to_jsonb(r)::text from collection_record r where r.collection = :id"
                        + " union all select 'port ' || to_jsonb(p)::text from collection_port p where p.collection = :id"
                        + " order by row")
                .param("id", collection)
                .query(String.class)
                .list();
    }

    @Test
    void writersWhoDoAnythingLoseNothing() throws Exception {
        String path = shelf("busy");
        created(put(path + "/items/set-2", named("DISPLAY", "kyloe-55"), null));
        created(put(path + "/items/box-2", named("CONVERTER", "tarn-b"), null));
        created(put(path + "/items/counter", named("LINK", "hdmi-lead", "\"note\": \"0\""), null));
        List<BusyWriter> writers = IntStream.range(0, CLIENTS)
                .mapToObj(i -> new BusyWriter(this, path, i))
                .toList();
        together(i -> () -> writers.get(i).write(40));

        int increments = writers.stream().mapToInt(BusyWriter::increments).sum();
        assertThat(increments).isPositive();
        assertThat(read(path + "/items/counter").path("note").asInt()).isEqualTo(increments);
        JsonNode whole = read(path + "/export");
        for (BusyWriter writer : writers) {
            assertThat(writer.unexpected()).isEmpty();
            writer.kept()
                    .forEach((place, document) ->
                            assertThat(readQuietly(path + place)).as(place).isEqualTo(document));
        }
        assertThat(whole.path("service-notes").size())
                .isEqualTo(writers.stream()
                        .mapToInt(writer -> writer.kept().size())
                        .sum());
        // What is stored of ports is what the connections that are there hold: two ends and a lead each.
        long connections = whole.path("connections").size();
        assertThat(connections).isLessThanOrEqualTo(2);
        assertThat(rows("busy").stream().filter(row -> row.startsWith("port")).count())
                .isEqualTo(3 * connections);
        // Every change had a number of its own, and the collection has the newest one.
        List<Long> revisions = database.sql(
                        "select revision from collection_record where collection = 'busy' order by revision")
                .query(Long.class)
                .list();
        assertThat(revisions).doesNotHaveDuplicates();
        assertThat(database.sql("select revision from collection where id = 'busy'")
                        .query(Long.class)
                        .single())
                .isGreaterThanOrEqualTo(revisions.get(revisions.size() - 1));
    }

    private JsonNode readQuietly(String path) {
        try {
            return read(path);
        } catch (Exception failed) {
            throw new AssertionError(path, failed);
        }
    }
}
