package rasterfit.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.postgresql.ds.PGSimpleDataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import rasterfit.app.catalogue.ServiceProcess;
import rasterfit.app.database.TestServer;
import tools.jackson.databind.json.JsonMapper;

/** A service that is killed while it writes an import: nothing of it is there, and any other instance can tell. */
class KilledImportTest {
    private final String url = TestServer.newDatabase();
    private final JdbcClient database = JdbcClient.create(dataSource(url));

    @Test
    void whatAKilledServiceImportedIsNotThereAndLost() throws Exception {
        String location;
        // Half of it is written when it comes to an item that somebody else writes just then, and does not end. The
        // service is
        // killed before that is undone.
        try (Connection other = dataSource(url).getConnection();
                ServiceProcess service = ServiceProcess.start(url)) {
            other.setAutoCommit(false);
            try (Statement statement = other.createStatement()) {
                statement.execute("insert into catalogue_item (kind, id, revision, name, document)"
                        + " values ('LINK', 'killed-05000', 1, 'x', '{}')");
            }
            location = TransferTest.location(begin(service));
            await().atMost(Duration.ofSeconds(60))
                    .pollInterval(Duration.ofMillis(10))
                    .until(() -> count("catalogue_import where state = 'RUNNING' and done >= 4000") == 1);
        }
        String id = location.substring(location.lastIndexOf('/') + 1);
        ImportStatuses elsewhere = new ImportStatuses(database, JsonMapper.shared());
        assertThat(elsewhere.find(id, "local").orElseThrow().state()).isEqualTo(ImportState.RUNNING);
        // As if the silence had been so long.
        assertThat(database.sql("update catalogue_import set heartbeat_at = heartbeat_at - make_interval(secs => ?)")
                        .param(ImportStatuses.SILENCE.toSeconds())
                        .update())
                .isEqualTo(1);
        ImportAnswer lost = elsewhere.find(id, "local").orElseThrow();
        assertThat(lost.state()).isEqualTo(ImportState.LOST);
        assertThat(lost.done()).isZero();
        assertThat(count("catalogue_item where id like 'killed-%'")).isZero();
        assertThat(count("catalogue_revision where id like 'killed-%'")).isZero();
        assertThat(count("idempotency_key")).isZero();
        // The change of the demo gear was the only one.
        assertThat(count("catalogue_state where revision = 1")).isEqualTo(1);
    }

    private static HttpResponse<String> begin(ServiceProcess service) throws Exception {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(service.url(TransferTest.IMPORTS)))
                                .header("Content-Type", "application/json")
                                .header("Idempotency-Key", "killed")
                                .POST(BodyPublishers.ofString(TransferTest.leads("killed-", 10_000, "A lead")))
                                .build(),
                        BodyHandlers.ofString());
    }

    private int count(String what) {
        return database.sql("select count(*) from " + what).query(Integer.class).single();
    }

    private static PGSimpleDataSource dataSource(String url) {
        PGSimpleDataSource dataSource = new PGSimpleDataSource();
        dataSource.setUrl(url);
        return dataSource;
    }
}
