package rasterfit.app.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The published contract says what the service really takes and gives. */
class ContractTest extends ServedTest {
    @Test
    void everyOperationHasASummaryAndTheProblemsItCanGive() throws Exception {
        List<String> operations = new ArrayList<>();
        contract()
                .path("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(operation -> {
                    String name = operation.getKey() + " " + path.getKey();
                    JsonNode described = operation.getValue();
                    operations.add(name);
                    assertThat(described.path("summary").asString()).as(name).isNotBlank();
                    assertThat(described.path("operationId").asString())
                            .as(name)
                            .isNotBlank();
                    boolean hasContent = described.at("/responses/200/content").has("application/json")
                            || described.at("/responses/201/content").has("application/json");
                    assertThat(hasContent || described.path("responses").has("204"))
                            .as(name)
                            .isTrue();
                    assertThat(described
                                    .at("/responses/400/content/application~1problem+json/schema/$ref")
                                    .asString())
                            .as(name)
                            .endsWith("/Problem");
                }));
        assertThat(operations)
                .containsExactlyInAnyOrder(
                        "post /v1/matches",
                        "post /v1/displays/decode",
                        "post /v1/displays/drafts",
                        "get /v1/templates",
                        "post /v1/templates/{id}/drafts",
                        "get /v1/timings",
                        "post /v1/timings/generate",
                        "post /v1/timings/identify",
                        "get /v1/catalogue/{kind}",
                        "get /v1/catalogue/{kind}/{id}",
                        "put /v1/catalogue/{kind}/{id}",
                        "patch /v1/catalogue/{kind}/{id}",
                        "delete /v1/catalogue/{kind}/{id}",
                        "get /v1/catalogue/{kind}/{id}/facts",
                        "get /v1/catalogue/{kind}/{id}/revisions",
                        "get /v1/catalogue/{kind}/{id}/revisions/{revision}",
                        "post /v1/catalogue/{kind}/{id}/revisions/{revision}/restore",
                        "post /v1/catalogue/imports",
                        "get /v1/catalogue/imports/{id}",
                        "delete /v1/catalogue/imports/{id}",
                        "get /v1/catalogue/exports",
                        "get /v1/collections",
                        "post /v1/collections",
                        "get /v1/collections/{id}",
                        "put /v1/collections/{id}",
                        "patch /v1/collections/{id}",
                        "delete /v1/collections/{id}",
                        "get /v1/collections/{id}/export",
                        "get /v1/collections/{collection}/{section}",
                        "post /v1/collections/{collection}/{section}",
                        "get /v1/collections/{collection}/{section}/{id}",
                        "put /v1/collections/{collection}/{section}/{id}",
                        "patch /v1/collections/{collection}/{section}/{id}",
                        "delete /v1/collections/{collection}/{section}/{id}",
                        "post /v1/tokens",
                        "get /v1/tokens",
                        "get /v1/tokens/{id}",
                        "delete /v1/tokens/{id}",
                        "get /v1/owner",
                        "get /v1/owner/export",
                        "delete /v1/owner",
                        "get /v1/rules",
                        "get /v1/criteria");
    }

    @Test
    void everyOperationNamesTheScopeThatItsTokenNeeds() throws Exception {
        JsonNode contract = contract();
        assertThat(contract.at("/components/securitySchemes/token/scheme").asString())
                .isEqualTo("bearer");
        contract.path("paths")
                .forEach(path -> path.forEach(operation -> {
                    String name = operation.path("operationId").asString();
                    assertThat(operation.at("/security/0/token/0").asString())
                            .as(name)
                            .isIn("READ", "WRITE", "CATALOGUE", "ADMIN");
                    // Nor any, where none is asked for.
                    assertThat(operation.at("/security/1").isEmpty()).as(name).isTrue();
                    assertThat(operation.path("responses").has("401")).as(name).isTrue();
                    assertThat(operation.path("responses").has("403")).as(name).isTrue();
                }));
        assertThat(contract.at("/paths/~1v1~1tokens/post/security/0/token/0").asString())
                .isEqualTo("ADMIN");
        assertThat(contract.at("/components/schemas/OwnerExport/properties/data/type")
                        .asString())
                .isEqualTo("object");
    }

    @Test
    void aMatchCanBeTooMuchOrTooLong() throws Exception {
        JsonNode responses = contract().at("/paths/~1v1~1matches/post/responses");
        assertThat(responses.has("422")).isTrue();
        assertThat(responses.at("/503/headers").has("Retry-After")).isTrue();
    }

    @Test
    void onlyWhatIsAlwaysThereIsRequired() throws Exception {
        JsonNode schemas = contract().at("/components/schemas");
        assertThat(required(schemas, "MatchRequestBody")).containsExactlyInAnyOrder("display", "source");
        assertThat(required(schemas, "MatchAnswer"))
                .containsExactlyInAnyOrder("engineVersion", "catalogueRevision", "counts", "ranked", "refused");
        assertThat(required(schemas, "RemedyAnswer"))
                .contains("change", "kind", "resultingScore", "price", "route", "cautions")
                .doesNotContain("id", "instead", "value", "added");
        assertThat(required(schemas, "RefusalAnswer")).doesNotContain("remedies");
        assertThat(required(schemas, "SensitivityAnswer")).containsExactlyInAnyOrder("weights", "facts", "runs");
        assertThat(required(schemas, "MeasuresAnswer"))
                .contains("pixelAspectRatio", "addedLatencyMs", "acceptance")
                .doesNotContain("samplesPerDot", "bufferedLines", "fallback", "verticalScale", "tested");
        assertThat(required(schemas, "RouteStepAnswer")).containsExactlyInAnyOrder("stage", "id", "name");
        assertThat(required(schemas, "TestedAnswer")).containsExactlyInAnyOrder("outcome", "on");
        assertThat(required(schemas, "FallbackAnswer")).containsExactlyInAnyOrder("acceptance", "settings", "score");
        assertThat(required(schemas, "Problem")).contains("type", "code").doesNotContain("errors", "requestId");
    }

    @Test
    void aChoiceIsOneOfItsForms() throws Exception {
        JsonNode schemas = contract().at("/components/schemas");
        assertThat(schemas.path("NumberFact").propertyNames()).containsExactly("oneOf");
        assertThat(schemas.path("ListedTiming").propertyNames()).containsExactly("oneOf");
        assertThat(schemas.path("MeasuredQuantity").propertyNames()).containsExactly("oneOf");
        assertThat(schemas.path("ProcessingBody").has("properties")).isFalse();
        assertThat(schemas.at("/LineRepeatBody/properties/kind/enum/0").asString())
                .isEqualTo("LINE_REPEAT");
        assertThat(required(schemas, "LineRepeatBody")).contains("kind", "lines");
        assertThat(required(schemas, "GtfBody"))
                .containsExactlyInAnyOrder("formula", "horizontalActive", "verticalActive", "fieldRateHz");
        assertThat(required(schemas, "ReducedV3BlankingBody")).containsExactly("kind");
        assertThat(schemas.at("/CvtBody/properties/horizontalActive/type").asString())
                .isEqualTo("integer");
        assertThat(schemas.at("/ActiveBody/properties/dots/type").asString()).isEqualTo("integer");
        assertThat(schemas.at("/ModeBody/properties/dotClockHz/type").asString())
                .isEqualTo("string");
    }

    @Test
    void aRecordIsThatOfItsSection() throws Exception {
        JsonNode section = contract().at("/paths/~1v1~1collections~1{collection}~1{section}");
        JsonNode record = contract().at("/paths/~1v1~1collections~1{collection}~1{section}~1{id}");
        for (JsonNode body : List.of(section.at("/post/requestBody"), record.at("/put/requestBody"))) {
            assertThat(body.path("required").asBoolean()).isTrue();
            assertThat(body.at("/content/application~1json/schema/oneOf").toString())
                    .contains(
                            "OwnItemBody",
                            "ConnectionBody",
                            "LagReadingBody",
                            "TestResultBody",
                            "ServiceNoteBody",
                            "DueBody");
        }
    }

    /** The generator names schemas by simple name, and of two equal names one would vanish. */
    @Test
    void noTwoRecordsShareASimpleName() {
        List<String> names = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("rasterfit.app").stream()
                        .filter(type -> type.isAssignableTo(Record.class))
                        .map(JavaClass::getSimpleName)
                        .toList();
        assertThat(names).hasSizeGreaterThan(50).doesNotHaveDuplicates();
    }

    private JsonNode contract() throws Exception {
        HttpResponse<String> answer = get("/v3/api-docs");
        assertThat(answer.statusCode()).isEqualTo(200);
        JsonNode contract = JsonMapper.shared().readTree(answer.body());
        assertThat(contract.path("openapi").asString()).startsWith("3.1");
        // The echo endpoint belongs to other tests.
        ObjectNode paths = (ObjectNode) contract.path("paths");
        paths.propertyNames().stream()
                .filter(path -> path.startsWith("/echo"))
                .toList()
                .forEach(paths::remove);
        return contract;
    }

    private static List<String> required(JsonNode schemas, String name) {
        List<String> required = new ArrayList<>();
        assertThat(schemas.has(name)).as(name).isTrue();
        schemas.path(name).path("required").forEach(member -> required.add(member.asString()));
        return required;
    }
}
