package rasterfit.app.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The contract shows what the documents of the catalogue look like. */
class GearContractTest extends ServedTest {
    private static final JsonMapper JSON = JsonMapper.shared();
    private static final String SCHEMAS = "#/components/schemas/";
    private static final String ITEM = "/paths/~1v1~1catalogue~1{kind}~1{id}";
    private static final String OF_JSON = "/content/application~1json/schema/$ref";

    @ParameterizedTest
    @CsvSource({
        ITEM + "/put/requestBody, GearBody",
        ITEM + "/put/responses/200, GearBody",
        ITEM + "/put/responses/201, GearBody",
        ITEM + "/get/responses/200, GearBody",
        ITEM + "/patch/responses/200, GearBody",
        ITEM + "~1revisions~1{revision}/get/responses/200, GearBody",
        ITEM + "~1revisions~1{revision}~1restore/post/responses/200, GearBody",
        "/paths/~1v1~1catalogue~1imports/post/requestBody, CatalogueBody",
        "/paths/~1v1~1catalogue~1exports/get/responses/200, CatalogueBody"
    })
    void everyDocumentIsDescribed(String place, String schema) throws Exception {
        assertThat(contract().at(place + OF_JSON).asString()).isEqualTo(SCHEMAS + schema);
    }

    @Test
    void gearIsOneOfFourKinds() throws Exception {
        JsonNode schemas = contract().at("/components/schemas");
        assertThat(schemas.at("/GearBody/oneOf")
                        .valueStream()
                        .map(kind -> kind.path("$ref").asString()))
                .containsExactly(
                        SCHEMAS + "SourceBody",
                        SCHEMAS + "DisplayBody",
                        SCHEMAS + "ConverterBody",
                        SCHEMAS + "LinkBody");
        assertThat(contract()
                        .at(
                                "/paths/~1v1~1catalogue~1{kind}/get/responses/200/content/application~1json/schema/properties/items/items/$ref")
                        .asString())
                .isEqualTo(SCHEMAS + "GearBody");
        assertThat(schemas.at("/CatalogueBody/properties/converters/items/$ref").asString())
                .isEqualTo(SCHEMAS + "ConverterBody");
    }

    /** A choice of which two forms fit is none (JSON Schema 2020-12, core, 10.2.1.3). */
    @Test
    void anItemFitsOneKindAlone() throws Exception {
        JsonNode schemas = contract().at("/components/schemas");
        JsonNode demo = JSON.readTree(Files.readString(Path.of("..", "..", "db", "demo", "catalogue.json")));
        List<String> kinds = List.of("SourceBody", "DisplayBody", "ConverterBody", "LinkBody");
        List<String> plural = List.of("sources", "displays", "converters", "links");
        for (int i = 0; i < kinds.size(); i++) {
            for (JsonNode item : demo.path(plural.get(i))) {
                assertThat(kinds.stream().filter(kind -> fits(item, schemas.path(kind))))
                        .as(item.path("id").asString())
                        .containsExactly(kinds.get(i));
            }
        }
        JsonNode leastDisplay = JSON.readTree("{\"inputs\": [{\"connector\": \"HDMI\", \"timings\": [\"vic:16\"]}]}");
        assertThat(kinds.stream().filter(kind -> fits(leastDisplay, schemas.path(kind))))
                .containsExactly("DisplayBody");
    }

    /** By the names of its members. */
    private static boolean fits(JsonNode item, JsonNode schema) {
        assertThat(schema.path("additionalProperties").isBoolean()).isTrue();
        assertThat(schema.path("additionalProperties").booleanValue()).isFalse();
        Set<String> known = Set.copyOf(schema.path("properties").propertyNames());
        List<String> required = new ArrayList<>();
        schema.path("required").forEach(name -> required.add(name.asString()));
        Set<String> members = item.propertyNames().stream().collect(Collectors.toSet());
        return known.containsAll(members) && members.containsAll(required);
    }

    private JsonNode contract() throws Exception {
        return JSON.readTree(get("/v3/api-docs").body());
    }
}
