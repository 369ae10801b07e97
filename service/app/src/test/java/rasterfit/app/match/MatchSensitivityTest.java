package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.test.context.TestPropertySource;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The published example of remedies and sensitivity against the running service, and what it says checked by asking
 * again: with each weight a little before and a little beyond its bound, and with the fact to be measured next at either
 * end of its range.
 */
@TestPropertySource(properties = "rasterfit.tests.catalogue=of-the-demo-alone")
class MatchSensitivityTest extends ServedTest {
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
    private static final Path EXAMPLES = Path.of("..", "..", "openapi", "examples");
    private static final Path REQUEST = EXAMPLES.resolve("remedies-request.json");
    private static final Path ANSWER = EXAMPLES.resolve("remedies-answer.json");

    @Test
    void thePublishedRequestGivesThePublishedAnswer() throws Exception {
        JsonNode answer = match(published());
        if (Boolean.getBoolean("rasterfit.examples.write")) {
            Files.writeString(ANSWER, JSON.writeValueAsString(answer) + "\n");
        }
        assertThat(answer).isEqualTo(JSON.readTree(Files.readString(ANSWER)));
    }

    @Test
    void beforeABoundTheFirstPlaceStaysAndBeyondItDoesNot() throws Exception {
        JsonNode base = match(published());
        JsonNode first = base.at("/ranked/0");
        int bounds = 0;
        for (JsonNode room : base.at("/sensitivity/weights")) {
            double weight = room.path("weight").asDouble();
            for (String way : new String[] {"lower", "upper"}) {
                JsonNode bound = room.path(way);
                if (bound.isMissingNode()) {
                    continue;
                }
                bounds++;
                double at = bound.path("weight").asDouble();
                String criterion = room.path("criterion").asString();
                JsonNode before = weighted(criterion, weight + 0.99 * (at - weight));
                assertThat(settings(before)).as(room.toString()).isEqualTo(settings(first));
                JsonNode beyond = weighted(criterion, at + 0.01 * (at - weight));
                assertThat(settings(beyond)).as(room.toString()).isNotEqualTo(settings(first));
            }
        }
        assertThat(bounds).isPositive();
    }

    @Test
    void theFactToBeMeasuredNextDecidesWhoIsFirst() throws Exception {
        JsonNode base = match(published());
        JsonNode next = base.at("/sensitivity/measureNext");
        assertThat(next.path("of").asString()).isEqualTo("inputs/digital-1/overscanPercent");
        assertThat(next.path("item").asString()).isEqualTo("lowick-40");
        assertThat(next.path("changesFirst").asBoolean()).isTrue();
        JsonNode effect = base.at("/sensitivity/facts/0");
        assertThat(effect.path("of")).isEqualTo(next.path("of"));
        for (String end : new String[] {"Least", "Greatest"}) {
            double value = effect.path(end.toLowerCase(Locale.ROOT)).asDouble();
            JsonNode told = effect.path("at" + end);
            JsonNode first = match(withOverscan(value)).at("/ranked/0");
            assertThat(converter(first)).isEqualTo(converterOf(told.path("first")));
            assertThat(!converter(first).equals(converter(base.at("/ranked/0"))))
                    .isEqualTo(told.path("changesFirst").asBoolean());
        }
    }

    /** The catalogued display written into the request, with the overscan of its input known. */
    private ObjectNode withOverscan(double percent) throws Exception {
        ObjectNode display = (ObjectNode)
                JSON.readTree(get("/v1/catalogue/displays/lowick-40").body());
        ((ArrayNode) display.path("inputs")).forEach(input -> {
            if (input.path("id").asString().equals("digital-1")) {
                ((ObjectNode) input).put("overscanPercent", percent);
            }
        });
        display.put("input", "digital-1");
        ObjectNode request = published();
        request.set("display", display);
        return request.put("sensitivity", false);
    }

    private static String converter(JsonNode setup) {
        return setup.path("route")
                .valueStream()
                .filter(step -> step.path("stage").asString().equals("CONVERTER"))
                .map(step -> step.path("id").asString())
                .findFirst()
                .orElse("");
    }

    private static String converterOf(JsonNode ids) {
        String named = ids.path(2).asString();
        return named.substring(0, named.indexOf(':'));
    }

    private JsonNode weighted(String criterion, double weight) throws Exception {
        ObjectNode request = published().put("sensitivity", false);
        request.putObject("weights").put(criterion, weight);
        return match(request).at("/ranked/0");
    }

    private static String settings(JsonNode setup) {
        StringBuilder settings = new StringBuilder(setup.path("route").toString());
        setup.path("modeSettings").forEach(mode -> settings.append(mode.path("settings")));
        return settings.toString();
    }

    private static ObjectNode published() throws IOException {
        return (ObjectNode) JSON.readTree(Files.readString(REQUEST));
    }

    private JsonNode match(ObjectNode request) throws Exception {
        HttpResponse<String> answer = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(request.toString())));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JSON.readTree(answer.body());
    }
}
