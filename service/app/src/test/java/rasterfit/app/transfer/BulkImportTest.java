package rasterfit.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.ClassPathResource;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Ten thousand items in one transaction, seen from outside. */
class BulkImportTest extends TransferTest {
    private static final int ITEMS = 10_000;
    private static final int LEADS = 8_000;

    @Autowired
    JdbcClient database;

    /** Other tests walk through the catalogue. */
    @AfterEach
    void clean() {
        database.sql("""
                with gone as (delete from catalogue_item where id like 'bulk-%' returning kind, id),
                     next as (update catalogue_state set revision = revision + 1 returning revision)
                insert into catalogue_revision (kind, id, revision, change, changed_at, changed_by)
                select kind, id, revision, 'DELETED', now(), 'local' from gone, next
                """).update();
    }

    @Test
    void tenThousandItemsComeTogetherWithProgress() throws Exception {
        String document = tenThousand();
        AtomicBoolean isOver = new AtomicBoolean();
        ExecutorService others = Executors.newFixedThreadPool(2);
        try {
            Future<List<Integer>> seen = others.submit(reader(isOver));
            // However fast the machine is, it is still at work when it is looked at.
            String location = whileOneWrites(() -> location(importJson(document, "")));
            Future<List<Integer>> written = others.submit(writer(isOver));
            List<Integer> progress = new ArrayList<>();
            JsonNode status = status(location);
            while (!status.has("endedAt")) {
                progress.add(
                        status.path("checked").asInt() + status.path("done").asInt());
                Thread.sleep(20);
                status = status(location);
            }
            isOver.set(true);
            assertThat(status.path("state").asString()).as(status.toString()).isEqualTo("DONE");
            assertThat(status.path("done").asInt()).isEqualTo(ITEMS);
            assertThat(status.at("/report/changed").asInt()).isEqualTo(ITEMS);
            // It only grows, and is seen to grow: at the beginning, in between, and above at the end.
            assertThat(progress).isSorted();
            assertThat(new HashSet<>(progress)).hasSizeGreaterThan(2);
            // Whoever read meanwhile saw none or all.
            assertThat(seen.get()).containsOnly(0, LEADS).isSorted();
            // Whoever wrote meanwhile was let in, or told to come again.
            assertThat(written.get()).isNotEmpty().isSubsetOf(200, 201, 503);
            assertThat(get("/v1/catalogue/links/bulk-writer").statusCode()).isEqualTo(200);
            tableOfAll();
        } finally {
            isOver.set(true);
            others.shutdown();
        }
    }

    /** Leads, and converters as rich as the demo's. */
    private static String tenThousand() throws IOException {
        ObjectNode document = (ObjectNode) JSON.readTree(leads("bulk-", LEADS, "A lead"));
        ArrayNode converters = document.putArray("converters");
        try (InputStream in = new ClassPathResource("demo/catalogue.json").getInputStream()) {
            JsonNode demo = JSON.readTree(in).path("converters");
            for (int i = LEADS; i < ITEMS; i++) {
                converters.add(((ObjectNode) demo.get(i % demo.size()).deepCopy()).put("id", "bulk-" + i));
            }
        }
        return JSON.writeValueAsString(document);
    }

    /** The leads as a table, one of them faulty and then none. */
    private void tableOfAll() throws Exception {
        String table = send(request("/v1/catalogue/exports?kind=links").header("Accept", "text/csv"))
                .body();
        long before = revision();
        String faulty = table.replace("\"bulk-07000\",\"CABLE\"", "\"bulk-07000\",\"CABEL\"")
                .replace("A lead", "Another lead");
        long line = faulty.substring(0, faulty.indexOf("CABEL")).lines().count();
        JsonNode problem = problemOf(importCsv(faulty, "?kind=links"));
        assertThat(problem.path("errors").size()).isEqualTo(1);
        assertThat(problem.at("/errors/0/line").asLong()).isEqualTo(line);
        assertThat(problem.at("/errors/0/field").asString()).isEqualTo("kind");
        assertThat(revision()).isEqualTo(before);
        HttpResponse<String> unchanged = importCsv(table, "?kind=links");
        JsonNode report = unchanged.statusCode() == 200
                ? JSON.readTree(unchanged.body())
                : ended(location(unchanged)).path("report");
        assertThat(report.path("items").asInt()).isGreaterThan(LEADS);
        assertThat(report.path("changed").asInt()).isZero();
    }

    /** Told at once or with the status. */
    private JsonNode problemOf(HttpResponse<String> answer) {
        if (answer.statusCode() != 202) {
            return problem(answer, 400, "unknown-value");
        }
        JsonNode status = ended(location(answer));
        assertThat(status.path("state").asString()).isEqualTo("FAILED");
        return problem(status.path("problem").toString(), 400, "unknown-value");
    }

    private Callable<List<Integer>> reader(AtomicBoolean isOver) {
        return () -> {
            List<Integer> seen = new ArrayList<>();
            boolean isLast;
            do {
                isLast = isOver.get();
                JsonNode links = JSON.readTree(
                                get("/v1/catalogue/exports?kind=links").body())
                        .path("links");
                seen.add((int) links.valueStream()
                        .filter(link -> link.path("id").asString().matches("bulk-\\d+"))
                        .count());
            } while (!isLast);
            return seen;
        };
    }

    private Callable<List<Integer>> writer(AtomicBoolean isOver) {
        return () -> {
            List<Integer> answered = new ArrayList<>();
            boolean isThere = false;
            while (!isThere || !isOver.get()) {
                var write = request("/v1/catalogue/links/bulk-writer")
                        .header("Content-Type", "application/json")
                        .PUT(BodyPublishers.ofString(lead("bulk-writer", "Name " + answered.size())));
                int status =
                        send(isThere ? write.header("If-Match", "*") : write).statusCode();
                answered.add(status);
                isThere |= status == 201;
                Thread.sleep(20);
            }
            return answered;
        };
    }

    private long revision() {
        return database.sql("select revision from catalogue_state")
                .query(Long.class)
                .single();
    }
}
