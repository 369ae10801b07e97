package rasterfit.app.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Rules, criteria and intents over HTTP. */
class RulesTest extends ServedTest {
    @Test
    void everyRuleHasAnIdAStatementAndASource() throws Exception {
        JsonNode rules = ok("/v1/rules").path("items");
        List<String> ids = new ArrayList<>();
        for (JsonNode rule : rules) {
            ids.add(rule.path("id").asString());
            assertThat(rule.path("id").asString()).matches("[a-z-]+\\.[a-zA-Z0-9-]+");
            assertThat(rule.path("statement").asString()).isNotBlank();
            assertThat(rule.path("source").asString()).isNotBlank();
            assertThat(rule.path("stage").asString()).isNotBlank();
            assertThat(rule.path("severity").asString()).isNotBlank();
        }
        assertThat(ids).doesNotHaveDuplicates().contains("sync.logic-level-into-75-ohm", "edid.checksum-wrong");
    }

    @Test
    void allTenCriteriaAreListedWithTheirCurve() throws Exception {
        List<String> ids = new ArrayList<>();
        for (JsonNode criterion : ok("/v1/criteria").path("items")) {
            ids.add(criterion.path("id").asString());
            assertThat(criterion.path("curve").asString()).isNotBlank();
            assertThat(criterion.path("unit").isString()).isTrue();
        }
        assertThat(ids)
                .containsExactlyInAnyOrder(
                        "dotUniformity",
                        "aspect",
                        "coverage",
                        "motion",
                        "latency",
                        "acceptance",
                        "linkDetail",
                        "modeSwitchGap",
                        "effort",
                        "cost");
    }

    @Test
    void intentsTellTheirWeightsAndLimits() throws Exception {
        JsonNode least = null;
        for (JsonNode intent : ok("/v1/criteria").path("intents")) {
            least = intent.path("id").asString().equals("LEAST_DELAY") ? intent : least;
        }
        assertThat(least).isNotNull();
        // Our own defaults (assumption): latency weighs 6 of all; the converter adds at most one field.
        assertThat(least.at("/weights/latency").asInt()).isEqualTo(6);
        assertThat(least.at("/weights/coverage").asDouble()).isEqualTo(0.5);
        assertThat(least.at("/limits/0/measure").asString()).isEqualTo("addedLatencyFields");
        assertThat(least.at("/limits/0/atMost").asInt()).isEqualTo(1);
        assertThat(least.at("/limits/0/unit").asString()).isEqualTo("fields");
        assertThat(least.at("/limits/1/measure").asString()).isEqualTo("acceptance");
        assertThat(least.at("/limits/1/atLeast").asString()).isEqualTo("WITHIN_LIMITS_NOT_PROMISED");
    }

    @Test
    void noParameterIsKnown() throws Exception {
        problem(get("/v1/rules?top=5"), 400, "unknown-parameter");
        problem(get("/v1/criteria?x"), 400, "unknown-parameter");
    }

    private JsonNode ok(String path) throws Exception {
        HttpResponse<String> answer = get(path);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JsonMapper.shared().readTree(answer.body());
    }
}
