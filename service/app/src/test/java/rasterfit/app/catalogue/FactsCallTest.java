package rasterfit.app.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Every value of a stored item with what it rests on. */
class FactsCallTest extends ServedTest {
    private static final JsonMapper JSON = JsonMapper.shared();

    @Test
    void everyValueHasTheBasisOfTheLongestPathThatLeadsToIt() throws Exception {
        put("links", "facts-lead", """
                {"id": "facts-lead", "kind": "CABLE", "name": "Facts lead", "lengthMm": 1800, "from": {"connector": "SCART"},
                 "to": {"connector": "SCART"}, "carries": [{"format": "RGB", "syncs": ["COMPOSITE_SYNC"]}, {"format": "CVBS"}],
                 "bandwidthHz": {"least": "50000000", "greatest": "60000000"},
                 "provenance": [{"of": "carries", "basis": "PUBLISHED", "source": "leaflet"},
                                {"of": "carries/0/syncs", "basis": "ASSUMED", "note": "not in the leaflet"},
                                {"of": "bandwidthHz", "basis": "MEASURED", "source": "network analyser", "note": "two\\nlines"}]}""");
        HttpResponse<String> answer = get("/v1/catalogue/links/facts-lead/facts");
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(answer.headers().firstValue("ETag"))
                .isEqualTo(get("/v1/catalogue/links/facts-lead").headers().firstValue("ETag"));
        assertThat(JSON.readTree(answer.body())).isEqualTo(JSON.readTree("""
                {"items": [
                  {"of": "kind", "value": "CABLE", "basis": "DECLARED", "stated": false},
                  {"of": "name", "value": "Facts lead", "basis": "DECLARED", "stated": false},
                  {"of": "lengthMm", "value": 1800, "basis": "DECLARED", "stated": false},
                  {"of": "from/connector", "value": "SCART", "basis": "DECLARED", "stated": false},
                  {"of": "to/connector", "value": "SCART", "basis": "DECLARED", "stated": false},
                  {"of": "carries/0/format", "value": "RGB", "basis": "PUBLISHED", "stated": true, "statedOf": "carries", "source": "leaflet"},
                  {"of": "carries/0/syncs/0", "value": "COMPOSITE_SYNC", "basis": "ASSUMED", "stated": true, "statedOf": "carries/0/syncs", "note": "not in the leaflet"},
                  {"of": "carries/1/format", "value": "CVBS", "basis": "PUBLISHED", "stated": true, "statedOf": "carries", "source": "leaflet"},
                  {"of": "bandwidthHz/least", "value": "50000000", "basis": "MEASURED", "stated": true, "statedOf": "bandwidthHz", "source": "network analyser", "note": "two\\nlines"},
                  {"of": "bandwidthHz/greatest", "value": "60000000", "basis": "MEASURED", "stated": true, "statedOf": "bandwidthHz", "source": "network analyser", "note": "two\\nlines"}
                ]}"""));
    }

    /** The demo console: each variant has its own provenance, whose paths begin at the variant. */
    @Test
    void theProvenanceOfAVariantHoldsInside() throws Exception {
        JsonNode items = JSON.readTree(
                        get("/v1/catalogue/sources/quillon-16/facts").body())
                .path("items");
        JsonNode mode = items.valueStream()
                .filter(fact -> fact.path("of").asString().endsWith("/modes/0/dotClockHz"))
                .findFirst()
                .orElseThrow();
        assertThat(mode.path("of").asString()).startsWith("variants/");
        assertThat(mode.path("statedOf").asString()).matches("variants/[a-z0-9-]+/modes");
        JsonNode name = items.get(0);
        assertThat(name.path("of").asString()).isEqualTo("name");
        assertThat(name.path("stated").booleanValue()).isFalse();
    }

    @Test
    void provenanceOfNothingIsRefused() throws Exception {
        String document = """
                {"kind": "CABLE", "name": "Lead", "from": {"connector": "SCART"}, "to": {"connector": "SCART"},
                 "carries": [{"format": "RGB"}],
                 "provenance": [{"of": "", "basis": "DECLARED"}, {"of": "lengthMm", "basis": "MEASURED"}]}""";
        HttpResponse<String> refused = send(request("/v1/catalogue/links/of-nothing")
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(document)));
        assertThat(pointer(problem(refused, 422, "invalid-value"))).isEqualTo("/provenance/1/of");
        HttpResponse<String> matched = send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{\"display\": {\"catalogueId\": \"lowick-40\"}, \"source\":"
                        + " {\"catalogueId\": \"quillon-16\"}, \"equipment\": {\"links\": [" + document + "]}}")));
        assertThat(pointer(problem(matched, 422, "invalid-value"))).isEqualTo("/equipment/links/0/provenance/1/of");
    }

    @Test
    void thereAreNoFactsOfWhatIsNotThere() throws Exception {
        problem(get("/v1/catalogue/links/nothing-here/facts"), 404, "not-found");
    }

    private void put(String kind, String id, String document) throws Exception {
        HttpResponse<String> written = send(request("/v1/catalogue/" + kind + "/" + id)
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(document)));
        assertThat(written.statusCode()).as(written.body()).isEqualTo(201);
    }
}
