package rasterfit.app.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.postgresql.ds.PGSimpleDataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import rasterfit.app.database.TestServer;

/**
 * Parallel clients write while connections to the database are cut in the middle of transactions, and while the service is
 * killed. What was confirmed is there, nothing is half-done, and no increment of the shared counter is lost.
 */
@Timeout(value = 300, unit = TimeUnit.SECONDS)
class BrokenWritesTest {
    private static final int CLIENTS = 4;
    private static final int KILLS = 2;
    private static final Duration WRITING = Duration.ofSeconds(3);

    private final String url = TestServer.newDatabase();
    private final JdbcClient database = JdbcClient.create(dataSource(url));
    private final List<WritingClient> clients = IntStream.range(0, CLIENTS)
            .mapToObj(i -> new WritingClient("client-" + i, i))
            .toList();

    @Test
    void whateverIsCutNothingIsHalfDoneAndNothingConfirmedIsLost() throws Exception {
        try (ServiceProcess service = ServiceProcess.start(url)) {
            createCounter(service);
            int cut = writing(service, this::cutConnections);
            assertThat(cut).isGreaterThan(10);
            checkStored();
            writing(service, () -> kill(service));
        }
        checkStored();
        for (int kill = 1; kill < KILLS; kill++) {
            try (ServiceProcess service = ServiceProcess.start(url)) {
                writing(service, () -> kill(service));
            }
            checkStored();
        }
        assertThat(clients).allSatisfy(client -> assertThat(client.unexpected()).isEmpty());
        assertThat(clients.stream()
                        .mapToInt(client -> client.confirmed().size())
                        .sum())
                .isGreaterThan(100);
    }

    private interface Fault {
        /** How many times something was broken. */
        int happen() throws Exception;
    }

    /** All clients write, and the fault happens meanwhile. */
    private int writing(ServiceProcess service, Fault fault) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(CLIENTS);
        try {
            clients.forEach(client -> threads.execute(() -> client.write(service)));
            return fault.happen();
        } finally {
            threads.shutdownNow();
            assertThat(threads.awaitTermination(60, TimeUnit.SECONDS)).isTrue();
        }
    }

    /** Of those that are in a transaction, again and again. */
    private int cutConnections() throws InterruptedException {
        int cut = 0;
        for (long end = System.nanoTime() + WRITING.toNanos(); System.nanoTime() < end; ) {
            Thread.sleep(20);
            cut += database.sql("select count(pg_terminate_backend(pid)) from pg_stat_activity"
                            + " where datname = current_database() and pid <> pg_backend_pid()"
                            + " and xact_start is not null and query not like 'LISTEN%'")
                    .query(Integer.class)
                    .single();
        }
        return cut;
    }

    private static int kill(ServiceProcess service) throws InterruptedException {
        Thread.sleep(WRITING.toMillis());
        service.close();
        return 1;
    }

    private void createCounter(ServiceProcess service) throws Exception {
        var request = HttpRequest.newBuilder(URI.create(service.url("/v1/catalogue/links/" + WritingClient.COUNTER)))
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(WritingClient.lead(WritingClient.COUNTER, 0)))
                .build();
        assertThat(HttpClient.newHttpClient()
                        .send(request, BodyHandlers.ofString())
                        .statusCode())
                .isEqualTo(201);
    }

    private void checkStored() {
        waitForTransactions();
        assertThat(rows("select revision from catalogue_state"))
                .as("the number of the newest change")
                .isEqualTo(rows("select max(revision) as revision from catalogue_revision"));
        assertThat(rows("""
                select r.kind, r.id from catalogue_revision r
                left join catalogue_item i on i.kind = r.kind and i.id = r.id
                where r.revision = (select max(revision) from catalogue_revision n where n.kind = r.kind and n.id = r.id)
                and (r.document is distinct from i.document or (i.id is not null and r.revision <> i.revision))"""))
                .as("items that are not as their newest change left them")
                .isEmpty();
        assertThat(rows("""
                select i.id from catalogue_item i where not exists
                (select 1 from catalogue_revision r where r.kind = i.kind and r.id = i.id and r.revision = i.revision)""")).as("items without a change").isEmpty();
        assertThat(rows("""
                select i.id from catalogue_item i where not exists
                (select 1 from catalogue_capability c where c.kind = i.kind and c.id = i.id)""")).as("items that cannot be found").isEmpty();
        assertThat(rows("select revision, count(*) from catalogue_revision where id like 'client-%-imported-%'"
                        + " group by revision having count(*) <> " + WritingClient.IMPORTED))
                .as("imports that are not whole")
                .isEmpty();
        for (WritingClient client : clients) {
            client.confirmed()
                    .forEach((revision, id) -> assertThat(rows("select id from catalogue_revision where revision = "
                                    + revision + " and id = '" + id + "'"))
                            .as("confirmed change " + revision + " of " + id)
                            .hasSize(1));
        }
        int increments = clients.stream().mapToInt(WritingClient::increments).sum();
        int possible =
                clients.stream().mapToInt(WritingClient::possibleIncrements).sum();
        assertThat(database.sql("select price_least from catalogue_item where id = '" + WritingClient.COUNTER + "'")
                        .query(Integer.class)
                        .single())
                .isBetween(increments, increments + possible);
    }

    /** The server ends what a killed process had begun a moment after its connection is gone. */
    private void waitForTransactions() {
        await().atMost(Duration.ofSeconds(20))
                .until(() -> rows("select pid from pg_stat_activity where datname = current_database()"
                                + " and pid <> pg_backend_pid() and xact_start is not null")
                        .isEmpty());
    }

    private List<String> rows(String sql) {
        return database.sql("select row_to_json(found)::text from (" + sql + ") found")
                .query(String.class)
                .list();
    }

    private static PGSimpleDataSource dataSource(String url) {
        PGSimpleDataSource dataSource = new PGSimpleDataSource();
        dataSource.setUrl(url);
        return dataSource;
    }
}
