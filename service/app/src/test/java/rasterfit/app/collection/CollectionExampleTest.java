package rasterfit.app.collection;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.springframework.core.io.ClassPathResource;
import tools.jackson.databind.JsonNode;

/** The collection that the documentation builds can be built, and does in a match what is said of it. */
class CollectionExampleTest extends CollectionsServed {
    @Test
    void theCollectionOfTheExampleTakesPartInItsMatch() throws Exception {
        JsonNode steps;
        try (InputStream in = new ClassPathResource("openapi/examples/collection.json").getInputStream()) {
            steps = JSON.readTree(in);
        }
        JsonNode match = null;
        for (JsonNode step : steps) {
            String body = step.path("body").toString();
            if (step.has("put")) {
                created(put(step.path("put").asString(), body, null));
            } else {
                HttpResponse<String> answer = ok(post(step.path("post").asString(), body));
                match = JSON.readTree(answer.body());
            }
        }
        assertThat(match).isNotNull();
        JsonNode best = match.at("/ranked/0");
        assertThat(best.at("/price/amount").asString()).isEqualTo("0");
        assertThat(best.toString()).contains("display.lag-measured-by-owner");
        assertThat(match.path("collectionRevision").asLong()).isEqualTo(10);
        assertThat(read("/v1/collections/den/due?asOf=2027-02-01")
                        .at("/items/0/overdue")
                        .asBoolean())
                .isTrue();
    }
}
