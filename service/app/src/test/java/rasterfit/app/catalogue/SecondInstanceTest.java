package rasterfit.app.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.time.Duration;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import rasterfit.app.RasterfitApplication;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.json.JsonMapper;

/** Two instances of the service on one database. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SecondInstanceTest extends ServedTest {
    private static final JsonMapper JSON = JsonMapper.shared();

    /** What the service promises. */
    private static final Duration SEEN_WITHIN = Duration.ofSeconds(2);

    @Value("${spring.datasource.url}")
    String url;

    @Autowired
    JdbcClient database;

    private ConfigurableApplicationContext second;

    @BeforeAll
    void startTheSecond() {
        second = new SpringApplicationBuilder(RasterfitApplication.class)
                .run("--server.port=0", "--spring.datasource.url=" + url);
    }

    @AfterAll
    void stopTheSecond() {
        second.close();
    }

    @Test
    void aChangeIsSeenWithinTwoSeconds() throws Exception {
        long revision = write("second-a", "1", null);
        assertSeen(revision);
    }

    @Test
    void aChangeIsSeenAlthoughTheNotificationWasLost() throws Exception {
        long revision = write("second-b", "1", null);
        assertSeen(revision);
        long listening = database.sql("select count(pg_terminate_backend(pid)) from pg_stat_activity"
                        + " where query like 'LISTEN%' and datname = current_database()")
                .query(Long.class)
                .single();
        assertThat(listening).isGreaterThanOrEqualTo(2);
        // Silently: no notification goes out with it.
        database.sql("update catalogue_state set revision = revision + 1").update();
        assertSeen(revision + 1);
    }

    @Test
    void aClientMatchesWithWhatItWroteElsewhereAtOnce() throws Exception {
        for (int i = 0; i < 10; i++) {
            long revision = write("second-own-" + i, "1", null);
            HttpResponse<String> answer = matchOnSecond("?minCatalogueRevision=" + revision);
            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
            assertThat(revisionOf(answer)).isGreaterThanOrEqualTo(revision);
        }
    }

    @Test
    void aChangeThatIsNotThereYetIsRefused() throws Exception {
        long revision = write("second-c", "1", null);
        var problem = problem(matchOnSecond("?minCatalogueRevision=" + (revision + 1_000_000)), 422, "invalid-value");
        assertThat(problem.at("/errors/0/parameter").asString()).isEqualTo("minCatalogueRevision");
        assertThat(problem.at("/errors/0/limit").asLong()).isGreaterThanOrEqualTo(revision);
        problem(matchOnSecond("?minCatalogueRevision=soon"), 400, "invalid-parameter");
    }

    @Test
    void aStateReadOnOneInstanceGuardsAChangeOnTheOther() throws Exception {
        long first = write("second-d", "1", null);
        HttpResponse<String> changed = putOnSecond("second-d", "2", "\"" + first + "\"");
        assertThat(changed.statusCode()).as(changed.body()).isEqualTo(200);
        problem(putOnFirst("second-d", "3", "\"" + first + "\""), 412, "precondition-failed");
        assertThat(JSON.readTree(get("/v1/catalogue/links/second-d").body())
                        .at("/price/amount")
                        .asString())
                .isEqualTo("2");
    }

    private void assertSeen(long revision) throws Exception {
        long end = System.nanoTime() + SEEN_WITHIN.toNanos();
        long seen = revisionOf(matchOnSecond(""));
        while (seen < revision && System.nanoTime() < end) {
            Thread.sleep(20);
            seen = revisionOf(matchOnSecond(""));
        }
        assertThat(seen).isGreaterThanOrEqualTo(revision);
    }

    /** The number of the change. */
    private long write(String id, String amount, String ifMatch) throws Exception {
        HttpResponse<String> written = putOnFirst(id, amount, ifMatch);
        assertThat(written.statusCode()).as(written.body()).isIn(200, 201);
        return Long.parseLong(written.headers().firstValue("ETag").orElseThrow().replace("\"", ""));
    }

    private HttpResponse<String> putOnFirst(String id, String amount, String ifMatch) throws Exception {
        return send(put(request("/v1/catalogue/links/" + id), amount, ifMatch));
    }

    private HttpResponse<String> putOnSecond(String id, String amount, String ifMatch) throws Exception {
        return send(put(second("/v1/catalogue/links/" + id), amount, ifMatch));
    }

    private static HttpRequest.Builder put(HttpRequest.Builder request, String amount, String ifMatch) {
        request.header("Content-Type", "application/json").PUT(BodyPublishers.ofString("""
                {"kind": "CABLE", "name": "A lead", "from": {"connector": "MINI_DIN_4"}, "to": {"connector": "MINI_DIN_4"},
                 "carries": [{"format": "YC"}], "price": {"amount": "%s", "currency": "EUR"}}""".formatted(amount)));
        return ifMatch == null ? request : request.header("If-Match", ifMatch);
    }

    private HttpResponse<String> matchOnSecond(String query) throws Exception {
        return send(second("/v1/matches" + query)
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("""
                        {"display": {"catalogueId": "lowick-40"},
                         "source": {"catalogueId": "quillon-16", "variantId": "525-rev1"},
                         "equipment": {"fromCatalogue": false}}""")));
    }

    private static long revisionOf(HttpResponse<String> answer) {
        return JSON.readTree(answer.body()).path("catalogueRevision").asLong();
    }

    private HttpRequest.Builder second(String pathAndQuery) {
        String port = second.getEnvironment().getProperty("local.server.port");
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + pathAndQuery))
                .timeout(Duration.ofSeconds(30));
    }
}
