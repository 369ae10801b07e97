package rasterfit.app.collection;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Calls on collections of the running service. */
abstract class CollectionsServed extends ServedTest {
    static final JsonMapper JSON = JsonMapper.shared();

    /** With a display, a console, a converter and three leads of the demo gear. */
    final String shelf(String id) throws Exception {
        String path = "/v1/collections/" + id;
        created(put(path, "{\"name\": \"Shelf\"}", null));
        created(put(path + "/items/set", named("DISPLAY", "lowick-40"), null));
        created(put(path + "/items/console", named("SOURCE", "quillon-16", "\"variantId\":\"525-rev1\""), null));
        created(put(path + "/items/box", named("CONVERTER", "tarn-b"), null));
        created(put(path + "/items/av-lead", named("LINK", "quillon-av-scart"), null));
        created(put(path + "/items/lead-1", named("LINK", "hdmi-lead"), null));
        created(put(path + "/items/lead-2", named("LINK", "hdmi-lead"), null));
        return path;
    }

    static String named(String kind, String catalogueId, String... more) {
        return "{\"kind\":\"" + kind + "\",\"catalogueId\":\"" + catalogueId + "\""
                + (more.length == 0 ? "" : "," + String.join(",", more)) + "}";
    }

    static String connection(String from, String fromPort, String to, String toPort, String... links) {
        return "{\"from\":{\"item\":\"" + from + "\",\"port\":\"" + fromPort + "\"},\"to\":{\"item\":\"" + to
                + "\",\"port\":\"" + toPort + "\"},\"links\":["
                + String.join(
                        ",",
                        java.util.Arrays.stream(links)
                                .map(link -> "\"" + link + "\"")
                                .toList())
                + "]}";
    }

    static HttpResponse<String> created(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
        return answer;
    }

    static HttpResponse<String> ok(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    final JsonNode read(String path) throws Exception {
        return JSON.readTree(ok(get(path)).body());
    }

    static String tag(HttpResponse<String> answer) {
        return answer.headers().firstValue("ETag").orElseThrow(() -> new AssertionError(answer.body()));
    }

    final HttpResponse<String> put(String path, String body, @Nullable String ifMatch) throws Exception {
        return send(path, "PUT", "application/json", body, ifMatch);
    }

    final HttpResponse<String> patch(String path, String body, @Nullable String ifMatch) throws Exception {
        return send(path, "PATCH", "application/merge-patch+json", body, ifMatch);
    }

    final HttpResponse<String> post(String path, String body) throws Exception {
        return send(path, "POST", "application/json", body, null);
    }

    final HttpResponse<String> postOnce(String path, String body, String key) throws Exception {
        return send(request(path)
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", key)
                .POST(BodyPublishers.ofString(body)));
    }

    /** For clients in classes of their own. */
    final HttpResponse<String> found(String path) throws Exception {
        return get(path);
    }

    final HttpResponse<String> delete(String path, String ifMatch) throws Exception {
        return send(request(path).header("If-Match", ifMatch).DELETE());
    }

    final HttpResponse<String> delete(String path) throws Exception {
        return delete(path, tag(get(path)));
    }

    private HttpResponse<String> send(String path, String method, String type, String body, @Nullable String ifMatch)
            throws Exception {
        var request = request(path).header("Content-Type", type).method(method, BodyPublishers.ofString(body));
        return send(ifMatch == null ? request : request.header("If-Match", ifMatch));
    }

    static List<String> ids(JsonNode page) {
        return page.path("items")
                .valueStream()
                .map(one -> one.path("id").asString())
                .toList();
    }
}
