package rasterfit.app.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Requests to begin with: the published examples, and every console of the demo gear with every display. */
public final class RequestSeeds {
    private static final JsonMapper JSON = JsonMapper.shared();

    private RequestSeeds() {}

    /** Every seed, in a fixed order. */
    public static List<ObjectNode> all() {
        List<ObjectNode> requests = new ArrayList<>(examples());
        JsonNode gear = demo();
        for (JsonNode source : gear.path("sources")) {
            for (JsonNode display : gear.path("displays")) {
                int number = requests.size();
                ObjectNode request = number % 2 == 0 ? named(source, display) : described(source, display);
                request.set("equipment", equipment(gear, number));
                requests.add(request);
            }
        }
        return requests;
    }

    /** The demo gear as it is written. */
    public static JsonNode demo() {
        return JSON.readTree(text(Repository.ROOT.resolve("db/demo/catalogue.json")));
    }

    static List<byte[]> demoEdids() {
        return demo().findValuesAsString("edidBase64").stream()
                .map(Base64.getDecoder()::decode)
                .toList();
    }

    private static List<ObjectNode> examples() {
        try (Stream<Path> files = Files.list(Repository.ROOT.resolve("openapi/examples"))) {
            return files.filter(file -> file.toString().endsWith("-request.json"))
                    .sorted()
                    .map(file -> (ObjectNode) JSON.readTree(text(file)))
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static ObjectNode named(JsonNode source, JsonNode display) {
        ObjectNode request = JSON.createObjectNode();
        request.putObject("display").set("catalogueId", display.path("id"));
        ObjectNode console = request.putObject("source");
        console.set("catalogueId", source.path("id"));
        console.set("variantId", source.at("/variants/0/id"));
        request.put("intent", "LEAST_DELAY");
        return request;
    }

    private static ObjectNode described(JsonNode source, JsonNode display) {
        ObjectNode request = JSON.createObjectNode();
        request.set("display", display);
        ObjectNode console = request.putObject("source");
        console.set("name", source.path("name"));
        console.set("outputs", source.at("/variants/0/outputs"));
        console.set("modes", source.at("/variants/0/modes"));
        request.put("explain", "FULL");
        request.putObject("weights").put("latency", 3).put("cost", 0);
        ObjectNode limit = request.putArray("limits").addObject();
        limit.put("measure", "addedLatencyMs.typical");
        limit.put("atMost", 40);
        return request;
    }

    /** Every link and one converter, another from request to request, so that each takes little time. */
    private static ObjectNode equipment(JsonNode gear, int number) {
        ObjectNode equipment = JSON.createObjectNode();
        equipment.put("fromCatalogue", false);
        JsonNode converters = gear.path("converters");
        equipment.putArray("converters").add(converters.get(number % converters.size()));
        equipment.set("links", gear.path("links"));
        return equipment;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
