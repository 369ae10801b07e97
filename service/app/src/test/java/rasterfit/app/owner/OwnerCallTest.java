package rasterfit.app.owner;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.jdbc.core.simple.JdbcClient;
import rasterfit.app.access.OwnerData;
import rasterfit.app.access.Scope;
import rasterfit.app.access.TokenServedTest;
import tools.jackson.databind.JsonNode;

/** Tokens and owners over HTTP. */
@ExtendWith(OutputCaptureExtension.class)
class OwnerCallTest extends TokenServedTest {
    private static final String LEAD = """
            {"kind":"CABLE","name":"A lead","from":{"connector":"SCART"},"to":{"connector":"SCART"},\
            "carries":[{"format":"RGB"}]}""";

    @Autowired
    JdbcClient database;

    @Autowired
    List<OwnerData> kept;

    @Test
    void aTokenIsGivenOnceAndListedWithoutItsSecret() throws Exception {
        HttpResponse<String> created = postAs(
                ADMIN,
                "/v1/tokens",
                "{\"owner\":\"nils\",\"name\":\"Den ☺\",\"scopes\":[\"WRITE\",\"READ\"],"
                        + "\"expiresAt\":\"2126-01-31T12:00:00.5+02:00\"}");
        assertThat(created.statusCode()).as(created.body()).isEqualTo(201);
        // RFC 6749 §5.1 on answers that hold tokens.
        assertThat(created.headers().firstValue("Cache-Control")).contains("no-store");
        JsonNode given = JSON.readTree(created.body());
        String secret = given.path("secret").asString();
        String location = created.headers().firstValue("Location").orElseThrow();
        assertThat(location).isEqualTo("/v1/tokens/" + given.at("/token/id").asString());
        JsonNode token = given.path("token");
        assertThat(token.path("owner").asString()).isEqualTo("nils");
        assertThat(token.path("name").asString()).isEqualTo("Den ☺");
        assertThat(token.path("scopes").toString()).isEqualTo("[\"READ\",\"WRITE\"]");
        assertThat(token.path("expiresAt").asString()).isEqualTo("2126-01-31T10:00:00.500Z");
        assertThat(token.has("revokedAt") || token.has("lastUsedAt")).isFalse();

        HttpResponse<String> read = getAs(ADMIN, location);
        assertThat(JSON.readTree(read.body())).isEqualTo(token);
        assertThat(getAs(ADMIN, "/v1/tokens?owner=nils").body())
                .contains(token.path("id").asString())
                .doesNotContain(secret);

        JsonNode me = JSON.readTree(getAs(secret, "/v1/owner").body());
        assertThat(me.toString())
                .isEqualTo("{\"owner\":\"nils\",\"scopes\":[\"READ\",\"WRITE\"],\"tokenId\":" + token.path("id") + "}");
        Instant used = Instant.parse(
                JSON.readTree(getAs(ADMIN, location).body()).path("lastUsedAt").asString());
        assertThat(used).isBetween(Instant.now().minusSeconds(60), Instant.now());
        JsonNode admin = JSON.readTree(getAs(ADMIN, "/v1/owner").body());
        assertThat(admin.path("owner").asString()).isEqualTo("admin");
        assertThat(admin.has("tokenId")).isFalse();
    }

    @Test
    void aRevokedTokenStaysListed() throws Exception {
        Given given = give("olga", Scope.READ);
        assertThat(deleteAs(ADMIN, "/v1/tokens/" + given.id()).statusCode()).isEqualTo(204);
        refusedToken(getAs(given.secret(), "/v1/owner"));
        JsonNode first = JSON.readTree(getAs(ADMIN, "/v1/tokens/" + given.id()).body());
        assertThat(first.path("revokedAt").asString()).endsWith("Z");
        assertThat(deleteAs(ADMIN, "/v1/tokens/" + given.id()).statusCode()).isEqualTo(204);
        assertThat(JSON.readTree(getAs(ADMIN, "/v1/tokens/" + given.id()).body()))
                .isEqualTo(first);
        problem(deleteAs(ADMIN, "/v1/tokens/no-such-token"), 404, "not-found");
        problem(getAs(ADMIN, "/v1/tokens/no-such-token"), 404, "not-found");
    }

    @Test
    void tokensComeInPages() throws Exception {
        for (int i = 0; i < 5; i++) {
            give("paged", Scope.READ);
        }
        List<String> ids = new java.util.ArrayList<>();
        String path = "/v1/tokens?owner=paged&size=2";
        String next = "";
        do {
            JsonNode page = JSON.readTree(getAs(ADMIN, path + (next.isEmpty() ? "" : "&cursor=" + next))
                    .body());
            page.path("items").forEach(token -> ids.add(token.path("id").asString()));
            next = page.path("next").asString("");
        } while (!next.isEmpty());
        assertThat(ids).hasSize(5).doesNotHaveDuplicates().isSorted();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    {"name":"n","scopes":["READ"]}                                   | 400 | missing-member | /owner
                    {"owner":"Mira","name":"n","scopes":["READ"]}                    | 400 | wrong-type     | /owner
                    {"owner":"demo","name":"n","scopes":["READ"]}                    | 422 | invalid-value  | /owner
                    {"owner":"deleted-owner","name":"n","scopes":["READ"]}           | 422 | invalid-value  | /owner
                    {"owner":"mira","name":" ","scopes":["READ"]}                    | 422 | invalid-value  | /name
                    {"owner":"mira","name":"n","scopes":[]}                          | 422 | invalid-value  | /scopes
                    {"owner":"mira","name":"n","scopes":["READ","READ"]}             | 422 | invalid-value  | /scopes
                    {"owner":"mira","name":"n","scopes":["ROOT"]}                    | 400 | unknown-value  | /scopes/0
                    {"owner":"mira","name":"n","scopes":["READ"],"secret":"x"}       | 400 | unknown-member | /secret
                    {"owner":"mira","name":"n","scopes":["READ"],"expiresAt":"2020-01-01T00:00:00Z"} | 422 | invalid-value | /expiresAt
                    {"owner":"mira","name":"n","scopes":["READ"],"expiresAt":"2126-01-01"}           | 400 | wrong-type    | /expiresAt
                    """)
    void aTokenThatMakesNoSenseIsRefused(String body, int status, String code, String place) throws Exception {
        JsonNode problem = problem(postAs(ADMIN, "/v1/tokens", body), status, code);
        assertThat(pointer(problem)).isEqualTo(place);
    }

    @Test
    void aRepeatedRequestGivesNoSecondTokenAndNoSecret() throws Exception {
        String body = "{\"owner\":\"petra\",\"name\":\"once\",\"scopes\":[\"READ\"]}";
        HttpResponse<String> first = keyed("give-1", body);
        assertThat(first.statusCode()).isEqualTo(201);
        JsonNode given = JSON.readTree(first.body());
        JsonNode again = problem(keyed("give-1", body), 409, "conflict");
        assertThat(again.path("detail").asString())
                .contains(given.at("/token/id").asString())
                .doesNotContain(given.path("secret").asString());
        problem(keyed("give-1", body.replace("once", "twice")), 422, "invalid-value");
        assertThat(JSON.readTree(getAs(ADMIN, "/v1/tokens?owner=petra").body())
                        .path("items")
                        .size())
                .isEqualTo(1);
    }

    @Test
    void neitherTheDatabaseNorTheLogHoldsASecret(CapturedOutput log) throws Exception {
        HttpResponse<String> created = keyed(
                "give-secret", "{\"owner\":\"ruth\",\"name\":\"kept\",\"scopes\":[\"READ\",\"WRITE\",\"CATALOGUE\"]}");
        String secret = JSON.readTree(created.body()).path("secret").asString();
        getAs(secret, "/v1/owner/export");
        getAs(secret, "/v1/tokens");
        getAs(secret.substring(1), "/v1/owner");
        get("/v1/rules?access_token=" + secret);
        getAs(ADMIN, "/v1/rules?access_token=" + secret);
        getAs(ADMIN, "/echo/defect");
        String random = secret.substring(secret.indexOf('_', 4) + 1);
        String everything = dump();
        assertThat(everything)
                .contains(secret.substring(4, 20))
                .doesNotContain(secret)
                .doesNotContain(random)
                .doesNotContain(ADMIN);
        assertThat(log.getAll()).contains("/echo/defect").doesNotContain(random).doesNotContain(ADMIN);
    }

    @Test
    void everythingOfAnOwnerIsExportedAndDeletedAndNothingOfOthers() throws Exception {
        Given mine = give("sven", Scope.READ, Scope.WRITE, Scope.CATALOGUE, Scope.ADMIN);
        Given other = give("tove", Scope.READ, Scope.WRITE, Scope.CATALOGUE, Scope.ADMIN);
        for (Given one : List.of(mine, other)) {
            HttpResponse<String> written = send(as(one.secret(), "/v1/catalogue/links/of-" + one.id())
                    .header("Content-Type", "application/json")
                    .PUT(BodyPublishers.ofString(LEAD.replace("{\"kind", "{\"id\":\"of-" + one.id() + "\",\"kind"))));
            assertThat(written.statusCode()).as(written.body()).isEqualTo(201);
            HttpResponse<String> keyed = send(as(one.secret(), "/v1/tokens")
                    .header("Content-Type", "application/json")
                    .header("Idempotency-Key", "key-of-" + one.id())
                    .POST(BodyPublishers.ofString(
                            "{\"owner\":\"later-" + one.id() + "\",\"name\":\"n\",\"scopes\":[\"READ\"]}")));
            assertThat(keyed.statusCode()).isEqualTo(201);
        }
        JsonNode export = JSON.readTree(getAs(mine.secret(), "/v1/owner/export").body());
        assertThat(export.path("owner").asString()).isEqualTo("sven");
        JsonNode data = export.path("data");
        assertThat(data.propertyNames())
                .containsExactlyElementsOf(
                        kept.stream().map(OwnerData::section).sorted().toList());
        assertThat(data.at("/tokens/0/id").asString()).isEqualTo(mine.id());
        assertThat(data.at("/idempotencyKeys/0/key").asString()).isEqualTo("key-of-" + mine.id());
        assertThat(data.at("/catalogueChanges/0/id").asString()).isEqualTo("of-" + mine.id());
        assertThat(data.toString()).doesNotContain("tove").doesNotContain(other.id());

        problem(deleteAs(mine.secret(), "/v1/owner"), 400, "invalid-parameter");
        problem(
                send(as(mine.secret(), "/v1/owner")
                        .header("Confirm-Owner", "tove")
                        .DELETE()),
                422,
                "invalid-value");
        assertThat(dump()).contains("sven");
        HttpResponse<String> deleted = send(
                as(mine.secret(), "/v1/owner").header("Confirm-Owner", "sven").DELETE());
        assertThat(deleted.statusCode()).as(deleted.body()).isEqualTo(204);
        refusedToken(getAs(mine.secret(), "/v1/owner"));
        assertThat(dump())
                .doesNotContain("sven")
                .doesNotContain("key-of-" + mine.id())
                .contains("tove");

        // The shared catalogue keeps what was changed, and no longer says by whom.
        JsonNode history = JSON.readTree(getAs(ADMIN, "/v1/catalogue/links/of-" + mine.id() + "/revisions")
                .body());
        assertThat(history.at("/items/0/changedBy").asString()).isEqualTo("deleted-owner");
        history = JSON.readTree(getAs(ADMIN, "/v1/catalogue/links/of-" + other.id() + "/revisions")
                .body());
        assertThat(history.at("/items/0/changedBy").asString()).isEqualTo("tove");
        assertThat(getAs(other.secret(), "/v1/owner").statusCode()).isEqualTo(200);
    }

    @Test
    void aDeletionThatFailsHalfwayDeletesNothing() throws Exception {
        Given given = give("ulla", Scope.READ, Scope.WRITE);
        // The last that is deleted cannot be.
        database.sql("create table holds_ulla (id text references access_token (id))")
                .update();
        database.sql("insert into holds_ulla values (?)").param(given.id()).update();
        database.sql("insert into idempotency_key (owner, key, request_sha256, answer, created_at)"
                        + " values ('ulla', 'k', 'x', '{}', now())")
                .update();
        try {
            HttpResponse<String> answer = send(as(given.secret(), "/v1/owner")
                    .header("Confirm-Owner", "ulla")
                    .DELETE());
            assertThat(answer.statusCode()).isEqualTo(500);
            assertThat(getAs(given.secret(), "/v1/owner/export").body()).contains("\"key\":\"k\"", given.id());
        } finally {
            database.sql("drop table holds_ulla").update();
        }
    }

    private HttpResponse<String> keyed(String key, String body) throws Exception {
        return send(as(ADMIN, "/v1/tokens")
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", key)
                .POST(BodyPublishers.ofString(body)));
    }

    /** Every value of every table. */
    private String dump() {
        StringBuilder all = new StringBuilder();
        database.sql("select tablename from pg_tables where schemaname = 'public' order by tablename")
                .query(String.class)
                .list()
                .forEach(table -> database.sql("select t::text from " + table + " t")
                        .query(String.class)
                        .list()
                        .forEach(row -> all.append(row).append('\n')));
        return all.toString();
    }
}
