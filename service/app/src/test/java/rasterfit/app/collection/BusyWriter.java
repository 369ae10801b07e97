package rasterfit.app.collection;

import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A client that does anything in a collection that others write to as well: increments a counter, plugs in and unplugs, and
 * keeps service notes of its own, which it remembers.
 */
final class BusyWriter {
    /** Made, changed, taken away; refused because somebody else was there before. */
    private static final Set<Integer> EXPECTED = Set.of(200, 201, 204, 404, 409, 412, 428);

    private static final JsonMapper JSON = JsonMapper.shared();

    private final Map<String, JsonNode> kept = new HashMap<>();
    private final List<String> unexpected = new ArrayList<>();
    private final CollectionsServed calls;
    private final String path;
    private final int number;
    private final Random random;
    private int increments;

    BusyWriter(CollectionsServed calls, String path, int number) {
        this.calls = calls;
        this.path = path;
        this.number = number;
        this.random = new Random(number);
    }

    int increments() {
        return increments;
    }

    /** Notes of this client as they were answered last, by their place in the collection. */
    Map<String, JsonNode> kept() {
        return kept;
    }

    List<String> unexpected() {
        return unexpected;
    }

    Void write(int times) throws Exception {
        for (int i = 0; i < times; i++) {
            switch (random.nextInt(4)) {
                case 0 -> increment();
                case 1 -> plug();
                default -> note();
            }
        }
        return null;
    }

    private void increment() throws Exception {
        String counter = path + "/items/counter";
        HttpResponse<String> read = calls.found(counter);
        int value = JSON.readTree(read.body()).path("note").asInt();
        if (check(calls.patch(counter, "{\"note\": \"" + (value + 1) + "\"}", CollectionsServed.tag(read))) == 200) {
            increments++;
        }
    }

    /** Two boxes, two displays, two leads: most tries meet somebody else's plug. */
    private void plug() throws Exception {
        String place = path + "/connections/c" + random.nextInt(3);
        String box = random.nextBoolean() ? "box" : "box-2";
        String display = random.nextBoolean() ? "set" : "set-2";
        String lead = random.nextBoolean() ? "lead-1" : "lead-2";
        if (random.nextBoolean()) {
            check(calls.put(place, CollectionsServed.connection(box, "out", display, "digital-1", lead), null));
        } else {
            HttpResponse<String> read = calls.found(place);
            if (check(read) == 200) {
                check(calls.delete(place, CollectionsServed.tag(read)));
            }
        }
    }

    private void note() throws Exception {
        String place = "/service-notes/w" + number + "-" + random.nextInt(4);
        String body =
                "{\"item\":\"box\",\"work\":\"CHECK_SUPPLY\",\"on\":\"2026-01-0" + (1 + random.nextInt(9)) + "\"}";
        HttpResponse<String> read = calls.found(path + place);
        if (check(read) == 404) {
            remember(place, calls.put(path + place, body, null));
        } else if (random.nextBoolean()) {
            remember(place, calls.put(path + place, body, CollectionsServed.tag(read)));
        } else if (check(calls.delete(path + place, CollectionsServed.tag(read))) == 204) {
            kept.remove(place);
        }
    }

    private void remember(String place, HttpResponse<String> written) {
        int status = check(written);
        if (status == 200 || status == 201) {
            kept.put(place, JSON.readTree(written.body()));
        } else {
            unexpected.add("own note " + place + ": " + written.body());
        }
    }

    private int check(HttpResponse<String> answer) {
        if (!EXPECTED.contains(answer.statusCode())) {
            unexpected.add(answer.statusCode() + " " + answer.body());
        }
        return answer.statusCode();
    }
}
