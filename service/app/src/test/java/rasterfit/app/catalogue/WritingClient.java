package rasterfit.app.catalogue;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import tools.jackson.databind.json.JsonMapper;

/**
 * A client that writes without pause and remembers what it was told: a counter that several clients increment by {@code
 * If-Match}, items of its own that come and go, and imports of {@link #IMPORTED} items at once.
 */
final class WritingClient {
    static final int IMPORTED = 3;
    static final String COUNTER = "shared-counter";

    /** What may be answered while the database or the service is being killed. */
    private static final Set<Integer> EXPECTED = Set.of(200, 201, 204, 412, 503);

    private static final JsonMapper JSON = JsonMapper.shared();

    /** Revisions that were confirmed, with the item. */
    private final Map<Long, String> confirmed = new HashMap<>();

    private final List<String> unexpected = new ArrayList<>();
    private final String name;
    private final Random random;
    private final HttpClient http =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private int number;
    private int increments;
    private int possibleIncrements;

    WritingClient(String name, long seed) {
        this.name = name;
        this.random = new Random(seed);
    }

    Map<Long, String> confirmed() {
        return confirmed;
    }

    /** Answers that no client should get. */
    List<String> unexpected() {
        return unexpected;
    }

    /** How often the counter was confirmed to be incremented. */
    int increments() {
        return increments;
    }

    /** How often an increment was sent and not answered, or answered with 503: it may have happened. */
    int possibleIncrements() {
        return possibleIncrements;
    }

    /** Until the thread is interrupted or the service does not answer any more. */
    void write(ServiceProcess service) {
        try {
            while (!Thread.currentThread().isInterrupted()) {
                switch (random.nextInt(3)) {
                    case 0 -> increment(service);
                    case 1 -> comeOrGo(service);
                    default -> importSome(service);
                }
            }
        } catch (IOException | InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
    }

    private void increment(ServiceProcess service) throws IOException, InterruptedException {
        HttpResponse<String> read = get(service, COUNTER);
        if (read.statusCode() != 200) {
            return;
        }
        int value = JSON.readTree(read.body()).at("/price/amount").asInt();
        String document = lead(COUNTER, value + 1);
        possibleIncrements++;
        HttpResponse<String> written = put(service, COUNTER, document, tag(read));
        if (written.statusCode() == 200) {
            increments++;
        }
        if (written.statusCode() != 503) {
            possibleIncrements--;
        }
        remember(COUNTER, written);
    }

    private void comeOrGo(ServiceProcess service) throws IOException, InterruptedException {
        String id = name + "-" + random.nextInt(5);
        HttpResponse<String> read = get(service, id);
        if (read.statusCode() == 200 && random.nextBoolean()) {
            check(send(to(service, id).header("If-Match", tag(read)).DELETE()));
        } else if (read.statusCode() == 200) {
            remember(id, put(service, id, lead(id, ++number), tag(read)));
        } else if (read.statusCode() == 404) {
            remember(id, put(service, id, lead(id, ++number), null));
        }
    }

    private void importSome(ServiceProcess service) throws IOException, InterruptedException {
        List<String> items = new ArrayList<>();
        number++;
        for (int i = 0; i < IMPORTED; i++) {
            items.add(lead(name + "-imported-" + number + "-" + i, number));
        }
        String document = "{\"format\":\"catalogue/1\",\"links\":[" + String.join(",", items) + "]}";
        HttpResponse<String> answer = send(HttpRequest.newBuilder(URI.create(service.url("/v1/catalogue/imports")))
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(document)));
        check(answer);
        if (answer.statusCode() == 200) {
            long revision = JSON.readTree(answer.body()).path("revision").asLong();
            confirmed.put(revision, name + "-imported-" + number + "-0");
        }
    }

    private void remember(String id, HttpResponse<String> written) {
        check(written);
        if (written.statusCode() == 200 || written.statusCode() == 201) {
            confirmed.put(Long.parseLong(tag(written).replace("\"", "")), id);
        }
    }

    private void check(HttpResponse<String> answer) {
        if (!EXPECTED.contains(answer.statusCode())) {
            unexpected.add(answer.statusCode() + " " + answer.body());
        }
    }

    private HttpResponse<String> get(ServiceProcess service, String id) throws IOException, InterruptedException {
        HttpResponse<String> read = send(to(service, id));
        if (read.statusCode() != 404) {
            check(read);
        }
        return read;
    }

    private HttpResponse<String> put(ServiceProcess service, String id, String document, String ifMatch)
            throws IOException, InterruptedException {
        HttpRequest.Builder request =
                to(service, id).header("Content-Type", "application/json").PUT(BodyPublishers.ofString(document));
        return send(ifMatch == null ? request : request.header("If-Match", ifMatch));
    }

    private static HttpRequest.Builder to(ServiceProcess service, String id) {
        return HttpRequest.newBuilder(URI.create(service.url("/v1/catalogue/links/" + id)));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return http.send(request.timeout(Duration.ofSeconds(30)).build(), BodyHandlers.ofString());
    }

    private static String tag(HttpResponse<String> answer) {
        return answer.headers().firstValue("ETag").orElseThrow(() -> new AssertionError(answer.body()));
    }

    static String lead(String id, int amount) {
        return "{\"id\":\"" + id + "\",\"kind\":\"CABLE\",\"name\":\"A lead\",\"from\":{\"connector\":\"MINI_DIN_4\"},"
                + "\"to\":{\"connector\":\"MINI_DIN_4\"},\"carries\":[{\"format\":\"YC\"}],"
                + "\"price\":{\"amount\":\"" + amount + "\",\"currency\":\"EUR\"}}";
    }
}
