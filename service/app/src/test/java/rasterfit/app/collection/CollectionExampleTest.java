package rasterfit.app.collection;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.net.http.HttpResponse;
import java.util.Objects;
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
        HttpResponse<String> newest = null;
        for (JsonNode step : steps) {
            String body = step.path("body").toString();
            if (step.has("put")) {
                newest = created(put(step.path("put").asString(), body, null));
            } else {
                HttpResponse<String> answer = ok(post(step.path("post").asString(), body));
                match = JSON.readTree(answer.body());
            }
        }
        assertThat(match).isNotNull();
        JsonNode best = match.at("/ranked/0");
        assertThat(best.at("/price/amount").asString()).isEqualTo("0");
        assertThat(best.toString()).contains("display.lag-measured-by-owner");
        // The match names the change after which it was made; a point and what the answer adds follow it in the tag.
        assertThat(tag(Objects.requireNonNull(newest)))
                .matches("\"" + match.path("collectionRevision").asString() + "(\\..*)?\"");
        assertThat(read("/v1/collections/den/due?asOf=2027-02-01")
                        .at("/items/0/overdue")
                        .asBoolean())
                .isTrue();
    }
}
