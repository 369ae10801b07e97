package rasterfit.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Documents and tables in and out over HTTP, and what is told of faulty ones. */
class TransferCallTest extends TransferTest {
    private static final String HEADER = "id,kind,name,from/connector,to/connector,carries/0/format\r\n";
    private static final Path EXAMPLES = Path.of("..", "..", "openapi", "examples");

    @ParameterizedTest
    @ValueSource(strings = {"sources", "displays", "converters", "links"})
    void aTableThatIsTakenOutAndInAgainChangesNothing(String kind) throws Exception {
        HttpResponse<String> table = table(kind);
        assertThat(table.headers().firstValue("Content-Type").orElseThrow())
                .isEqualToIgnoringCase("text/csv;charset=utf-8");
        assertThat(table.headers().firstValue("ETag")).isPresent();
        assertThat(table.headers().firstValue("Content-Disposition").orElseThrow())
                .contains(kind + ".csv");
        HttpResponse<String> document = get("/v1/catalogue/exports?kind=" + kind);
        int items = JSON.readTree(document.body()).path(kind).size();
        JsonNode report = report(importCsv(table.body(), "?kind=" + kind));
        // Changed counts every item whose stored text is another one, be it by a zero or the order of two members.
        assertThat(report.path("changed").asInt()).isZero();
        assertThat(report.path("items").asInt()).isEqualTo(items).isGreaterThan(3);
        assertThat(get("/v1/catalogue/exports?kind=" + kind).body()).isEqualTo(document.body());
    }

    /** RFC 9110 §13.1.1: a table that was edited for a while must not put back what others have changed meanwhile. */
    @Test
    void anEditedExportIsWrittenOnlyOverTheStateThatItWasTakenFrom() throws Exception {
        importCsv(HEADER + "guarded-lead,CABLE,First,VGA,VGA,RGB\r\n", "?kind=links");
        for (String accept : List.of("text/csv", "application/json")) {
            String tag = send(request("/v1/catalogue/exports?kind=links").header("Accept", accept))
                    .headers()
                    .firstValue("ETag")
                    .orElseThrow();
            String edited = HEADER + "guarded-lead,CABLE,Edited as " + accept.length() + ",VGA,VGA,RGB\r\n";
            assertThat(importCsv(edited, "?kind=links", "If-Match", tag).statusCode())
                    .isEqualTo(200);
            String late = HEADER + "guarded-lead,CABLE,Late,VGA,VGA,RGB\r\n";
            problem(importCsv(late, "?kind=links", "If-Match", tag), 412, "precondition-failed");
            assertThat(get("/v1/catalogue/links/guarded-lead").body()).contains("Edited as " + accept.length());
        }
    }

    @Test
    void aTableAndADocumentOfOneStateAreToldApart() throws Exception {
        String table = table("links").headers().firstValue("ETag").orElseThrow();
        HttpResponse<String> document = send(request("/v1/catalogue/exports?kind=links")
                .header("Accept", "application/json")
                .header("If-None-Match", table));
        assertThat(document.statusCode()).isEqualTo(200);
    }

    @ParameterizedTest
    @CsvSource({"ISO-8859-1, text/csv, malformed-csv", "ISO-8859-1, application/json, malformed-json"})
    void otherCharactersThanUtf8AreToldAsSuch(String charset, String type, String code) throws Exception {
        String text = type.equals("text/csv")
                ? HEADER + "latin,CABLE,Längste,VGA,VGA,RGB\r\n"
                : "{\"format\":\"catalogue/1\",\"links\":[{\"id\":\"latin\",\"name\":\"Längste\"}]}";
        var request = request(IMPORTS + (type.equals("text/csv") ? "?kind=links" : ""))
                .header("Content-Type", type)
                .POST(BodyPublishers.ofByteArray(text.getBytes(charset)));
        problem(send(request), 400, code);
    }

    /** Against another reader of the same file: cell by cell it says what the JSON document says at the path of its column. */
    @Test
    void theCellsOfATableAreTheValuesOfTheDocument() throws Exception {
        JsonNode links =
                JSON.readTree(get("/v1/catalogue/exports?kind=links").body()).path("links");
        List<CSVRecord> rows = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .get()
                .parse(new StringReader(table("links").body()))
                .getRecords();
        assertThat(rows).hasSize(links.size());
        for (CSVRecord row : rows) {
            JsonNode link = links.get((int) row.getRecordNumber() - 1);
            for (String column : List.of("id", "kind", "from/connector", "price/amount", "carries/0/format")) {
                assertThat(row.get(column)).isEqualTo(link.at("/" + column).asString());
            }
        }
    }

    @Test
    void aSpreadsheetOfNewGearIsTakenWithAndWithoutAByteOrderMark() throws Exception {
        String row = "table-lead,CABLE,\"=Lead, \"\"long\"\"\",own:nowhere,own:nowhere,YC\r\n";
        assertThat(report(importCsv(HEADER + row, "?kind=links"))
                        .path("changed")
                        .asInt())
                .isEqualTo(1);
        assertThat(get("/v1/catalogue/links/table-lead").body())
                .isEqualTo("{\"id\":\"table-lead\",\"kind\":\"CABLE\",\"name\":\"=Lead, \\\"long\\\"\","
                        + "\"from\":{\"connector\":\"own:nowhere\"},\"to\":{\"connector\":\"own:nowhere\"},"
                        + "\"carries\":[{\"format\":\"YC\"}]}");
        assertThat(report(importCsv("\uFEFF" + HEADER + row, "?kind=links"))
                        .path("changed")
                        .asInt())
                .isZero();
        // What goes out to a spreadsheet is no formula there.
        assertThat(table("links").body()).contains("\"'=Lead, \"\"long\"\"\"").doesNotContain("\"=Lead");
    }

    @Test
    void faultsOfATableNameLineAndColumn() throws Exception {
        String table = HEADER
                + "good-lead,CABLE,A lead,VGA,VGA,RGB\r\n"
                + "\"bad-lead\",CABLE,\"A\nlead\",VGA,VGB,RGB\r\n"
                + "bad-two,CABEL,A lead,VGA,VGA,\r\n"
                + "good-lead,CABLE,A lead,VGA,VGA,RGB,RGB\r\n"
                + "good-lead,CABLE,A lead,VGA,VGA,RGB\r\n";
        for (String query : List.of("?kind=links", "?kind=links&validate=true")) {
            JsonNode problem = problem(importCsv(table, query), 400, "wrong-type");
            assertThat(faults(problem))
                    .containsExactly(
                            "/links/1/name 3 null name",
                            "/links/1/to/connector 3 null to/connector",
                            "/links/2/kind 5 null kind",
                            "/links/3 6 null null",
                            "/links/4/id 7 null id");
            assertThat(problem.at("/errors/4/message").asString()).contains("line 2");
            assertThat(problem.path("detail").asString())
                    .startsWith("line 3, name: ")
                    .endsWith("5 errors in all.");
        }
        problem(get("/v1/catalogue/links/good-lead"), 404, "not-found");
    }

    @Test
    void aFaultInAListNamesTheCellOfTheList() throws Exception {
        String table = "id,name,inputs/0/timings\r\na-display,A display,vic:16 vic:x\r\n";
        JsonNode problem = importedInVain(importCsv(table, "?kind=displays"));
        assertThat(faults(problem)).contains("/displays/0/inputs/0/timings/1 2 null inputs/0/timings");
    }

    @Test
    void faultsOfADocumentNameLineColumnAndField() throws Exception {
        String document = """
                { "format": "catalogue/1", "notes": [],
                  "links": [
                    { "id": "ä", "kind": "CABLE", "name": "A lead", "to": {"connector": "VGB"}, "from": {"connector": "VGA"},
                      "carries": [] },
                    { "name": "Ä lead", "kind": "CABEL", "to": {"connector": "VGA"}, "from": {"connector": "VGA"} },
                    7,
                    { "id": "twice", "kind": "CABLE", "name": "A lead", "to": {"connector": "VGA"},
                      "from": {"connector": "VGA"}, "carries": [{"format": "RGB"}] },
                    { "id": "twice", "kind": "CABLE", "name": "A lead", "to": {"connector": "VGA"},
                      "from": {"connector": "VGA"}, "carries": [{"format": "RGB", "sync": 1}] },
                    { "id": "twice", "kind": "CABLE", "name": "A lead", "to": {"connector": "VGA"},
                      "from": {"connector": "VGA"}, "carries": [{"format": "RGB"}] } ] }
                """;
        JsonNode problem = problem(importJson(document, ""), 400, "unknown-member");
        // Columns counted by hand, from 1, in characters.
        assertThat(faults(problem))
                .containsExactly(
                        "/notes 1 37 notes",
                        "/links/0/id 3 13 id",
                        "/links/1/id 5 5 id",
                        "/links/2 6 5 null",
                        "/links/4/carries/0/sync 10 75 carries/0/sync",
                        "/links/5/id 11 13 id");
        assertThat(problem.at("/errors/5/message").asString()).contains("line 7");
        problem(get("/v1/catalogue/links/twice"), 404, "not-found");
    }

    @Test
    void whatCannotBeUnderstoodIsToldBeforeWhatMakesNoSense() throws Exception {
        String table = HEADER
                + "twin,CABLE,A lead,VGA,VGA,RGB\r\ntwin,CABLE,A lead,VGA,VGA,RGB\r\nother,CABLE,A lead,VGB,VGA,RGB\r\n";
        JsonNode problem = problem(importCsv(table, "?kind=links"), 400, "unknown-value");
        assertThat(problem.path("detail").asString()).startsWith("line 4, from/connector: ");
        assertThat(faults(problem))
                .containsExactly("/links/1/id 3 null id", "/links/2/from/connector 4 null from/connector");
    }

    @Test
    void textThatIsNoJsonIsPlaced() throws Exception {
        JsonNode cut = problem(importJson("{\"format\":\"catalogue/1\",\n\"links\":[", ""), 400, "malformed-json");
        assertThat(cut.at("/errors/0/line").asInt()).isEqualTo(2);
        JsonNode twice = problem(
                importJson("{\"format\":\"catalogue/1\",\n\"links\":[{\"id\":\"a\",\n\"id\":\"a\"}]}", ""),
                400,
                "duplicate-member");
        assertThat(twice.at("/errors/0/pointer").asString()).isEqualTo("/links/0/id");
        assertThat(twice.at("/errors/0/line").asInt()).isEqualTo(3);
        problem(importJson("{\"format\":\"catalogue/1\"} {}", ""), 400, "malformed-json");
        problem(importJson("[]", ""), 400, "wrong-type");
        problem(importJson("", ""), 400, "missing-body");
        problem(importCsv("", "?kind=links"), 400, "missing-body");
        assertThat(pointer(problem(importJson("{\"links\":[]}", ""), 400, "missing-member")))
                .isEqualTo("/format");
        assertThat(pointer(problem(importJson("{\"format\":\"catalogue/9\"}", ""), 400, "unknown-value")))
                .isEqualTo("/format");
        assertThat(pointer(problem(importJson("{\"format\":\"catalogue/1\",\"links\":{}}", ""), 400, "wrong-type")))
                .isEqualTo("/links");
    }

    @Test
    void ofManyFaultsTheFirstAreListedAndTheRestIsCounted() throws Exception {
        String document = document(
                IntStream.range(0, 250).mapToObj(i -> lead("Bad" + i, "A lead")).toList());
        JsonNode problem = problem(importJson(document, ""), 400, "wrong-type");
        assertThat(problem.path("errors").size()).isEqualTo(100);
        assertThat(problem.path("furtherErrors").asInt()).isEqualTo(150);
        // One line above the first item, one item on each.
        assertThat(problem.at("/errors/99/line").asInt()).isEqualTo(101);
    }

    @Test
    void theLimitsAreStated() throws Exception {
        String items = "{},".repeat(20_000) + "{}";
        JsonNode tooMany =
                problem(importJson("{\"format\":\"catalogue/1\",\"links\":[" + items + "]}", ""), 422, "invalid-value");
        assertThat(tooMany.at("/errors/0/limit").asString()).isEqualTo("0..20000");
        String large = lead("large", "A lead").replace("[{", "[" + "{},".repeat(100_000) + "{");
        JsonNode tooLarge =
                problem(importJson(document(List.of(lead("small", "A lead"), large)), ""), 422, "invalid-value");
        assertThat(pointer(tooLarge)).isEqualTo("/links/1");
        JsonNode tooWide =
                problem(importCsv("id" + ",name".repeat(10_000) + "\r\n", "?kind=links"), 422, "invalid-value");
        assertThat(tooWide.at("/errors/0/limit").asString()).isEqualTo("1..10000");
        assertThat(limitFor(IMPORTS, 67_108_865)).isEqualTo("67108864");
        // Everything else keeps the ordinary limit, another spelling of the path included.
        assertThat(limitFor("/v1/matches", 1_048_577)).isEqualTo("1048576");
        assertThat(limitFor("/v1//catalogue/imports", 1_048_577)).isEqualTo("1048576");
    }

    /** What is told of a body of a declared length, before any of it is sent (RFC 9110 §10.1.1). */
    private String limitFor(String path, int length) throws IOException {
        String answer =
                sendRaw("POST " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nExpect: 100-continue\r\n"
                        + "Content-Type: application/json\r\nContent-Length: " + length + "\r\n\r\n");
        String body = answer.substring(answer.indexOf("\r\n\r\n") + 4);
        return problem(body, 413, "content-too-large").at("/errors/0/limit").asString();
    }

    @ParameterizedTest
    @CsvSource({
        "text/csv, '', 400, invalid-parameter",
        "text/csv, ?kind=cables, 400, invalid-parameter",
        "application/json, ?kind=links, 400, invalid-parameter",
        "text/csv;charset=iso-8859-1, ?kind=links, 415, unsupported-media-type",
        "application/xml, '', 415, unsupported-media-type",
        "text/csv, ?kind=links&limit=3, 400, unknown-parameter"
    })
    void whatIsNotTakenIsRefused(String type, String query, int status, String code) throws Exception {
        problem(importText(type, HEADER, query), status, code);
    }

    @Test
    void aTableIsOfOneKindAndAskedFor() throws Exception {
        problem(send(request("/v1/catalogue/exports").header("Accept", "text/csv")), 400, "invalid-parameter");
        problem(get("/v1/catalogue/exports?kind=cables"), 400, "invalid-parameter");
        problem(send(request("/v1/catalogue/exports").header("Accept", "text/html")), 406, "not-acceptable");
        for (String accept : List.of("*/*", "application/json, text/csv;q=0.5", "text/csv;q=0.4, */*;q=0.5")) {
            assertThat(send(request("/v1/catalogue/exports?kind=links").header("Accept", accept))
                            .body())
                    .as(accept)
                    .startsWith("{\"format\":\"catalogue/1\",\"links\":[{");
        }
        assertThat(send(request("/v1/catalogue/exports?kind=links").header("Accept", "text/csv, */*;q=0.1"))
                        .body())
                .startsWith("\"id\",");
    }

    @Test
    void thePublishedExamplesAreValid() throws Exception {
        String document = Files.readString(EXAMPLES.resolve("import-document.json"));
        assertThat(report(importJson(document, "?validate=true")).path("items").asInt())
                .isEqualTo(2);
        String table = Files.readString(EXAMPLES.resolve("import-links.csv"));
        JsonNode report = report(importCsv(table, "?kind=links&validate=true"));
        assertThat(report.path("validated").asBoolean()).isTrue();
        assertThat(report.path("items").asInt()).isEqualTo(2);
        JsonNode fault =
                problem(importCsv(table.replace("SCART", "SKART"), "?kind=links&validate=true"), 400, "unknown-value");
        JsonNode published = JSON.readTree(Files.readString(EXAMPLES.resolve("import-problem.json")));
        assertThat(fault).isEqualTo(published);
    }

    private HttpResponse<String> table(String kind) throws IOException, InterruptedException {
        HttpResponse<String> table =
                send(request("/v1/catalogue/exports?kind=" + kind).header("Accept", "text/csv"));
        assertThat(table.statusCode()).as(table.body()).isEqualTo(200);
        return table;
    }

    private static JsonNode report(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JSON.readTree(answer.body());
    }

    private static JsonNode importedInVain(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isBetween(400, 499);
        return JSON.readTree(answer.body());
    }

    /** Pointer, line, column and field of each. */
    private static List<String> faults(JsonNode problem) {
        return problem.path("errors")
                .valueStream()
                .map(error -> error.path("pointer").asString() + " " + told(error, "line") + " " + told(error, "column")
                        + " " + told(error, "field"))
                .toList();
    }

    private static String told(JsonNode error, String member) {
        return error.has(member) ? error.path(member).asString() : "null";
    }
}
