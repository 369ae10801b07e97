package rasterfit.app.draft;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** The published examples of drafts and facts against the running service. */
class DraftExamplesTest extends ServedTest {
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
    private static final Path EXAMPLES = Path.of("..", "..", "openapi", "examples");

    @ParameterizedTest
    @CsvSource({
        "/v1/templates/line-repeater/drafts, draft-line-repeater",
        "/v1/templates/television/drafts, draft-television",
        "/v1/displays/drafts, draft-display"
    })
    void aPublishedDraftIsWhatTheServiceMakes(String address, String example) throws Exception {
        String body = Files.readString(EXAMPLES.resolve(example + ".json"));
        HttpResponse<String> answer =
                send(request(address).header("Content-Type", "application/json").POST(BodyPublishers.ofString(body)));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        agree(JSON.readTree(answer.body()), example + "-answer.json");
    }

    @Test
    void thePublishedTemplatesAreThoseOfTheService() throws Exception {
        agree(JSON.readTree(get("/v1/templates").body()), "templates-answer.json");
    }

    @Test
    void thePublishedFactsAreThoseOfTheDemoGear() throws Exception {
        agree(JSON.readTree(get("/v1/catalogue/converters/thwaite/facts").body()), "facts-answer.json");
    }

    private static void agree(JsonNode answer, String file) throws Exception {
        if (Boolean.getBoolean("rasterfit.examples.write")) {
            Files.writeString(EXAMPLES.resolve(file), JSON.writeValueAsString(answer) + "\n");
        }
        assertThat(answer).isEqualTo(JSON.readTree(Files.readString(EXAMPLES.resolve(file))));
    }
}
