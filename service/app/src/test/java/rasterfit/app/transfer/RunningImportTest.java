package rasterfit.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import tools.jackson.databind.JsonNode;

/** Imports that take longer than their request, because another writer does not end. */
class RunningImportTest extends TransferTest {
    @Autowired
    JdbcClient database;

    @Autowired
    ImportData data;

    @Autowired
    ImportWork work;

    @Autowired
    ImportStatuses statuses;

    @Test
    void anImportThatIsNotDoneAtOnceIsLookedUp() throws Exception {
        String location = whileOneWrites(() -> {
            String begun = location(importJson(leads("looked-up-", 3, "A"), ""));
            JsonNode running = status(begun);
            assertThat(running.path("state").asString()).isEqualTo("RUNNING");
            assertThat(running.path("checked").asInt()).isEqualTo(3);
            assertThat(running.path("done").asInt()).isZero();
            problem(get("/v1/catalogue/links/looked-up-00000"), 404, "not-found");
            return begun;
        });
        JsonNode status = ended(location);
        assertThat(status.path("state").asString()).isEqualTo("DONE");
        assertThat(status.path("done").asInt()).isEqualTo(3);
        assertThat(status.path("total").asInt()).isEqualTo(3);
        assertThat(status.at("/report/changed").asInt()).isEqualTo(3);
        assertThat(get("/v1/catalogue/links/looked-up-00000").statusCode()).isEqualTo(200);
        // What has ended cannot be ended.
        problem(send(request(location).DELETE()), 409, "conflict");
    }

    @Test
    void anImportThatIsEndedWritesNothing() throws Exception {
        String location = whileOneWrites(() -> {
            String begun = location(importJson(leads("ended-", 3, "A"), ""));
            assertThat(send(request(begun).DELETE()).statusCode()).isEqualTo(204);
            assertThat(status(begun).path("state").asString()).isEqualTo("CANCELLED");
            assertThat(send(request(begun).DELETE()).statusCode()).isEqualTo(204);
            return begun;
        });
        settled();
        assertThat(status(location).path("state").asString()).isEqualTo("CANCELLED");
        problem(get("/v1/catalogue/links/ended-00000"), 404, "not-found");
        problem(get("/v1/catalogue/links/ended-00000/revisions"), 404, "not-found");
    }

    /** Its instance may only have been slow: what was given up must not appear later. */
    @Test
    void anImportWithoutASignOfLifeIsLostAndWritesNothing() throws Exception {
        String location = whileOneWrites(() -> {
            String begun = location(importJson(leads("lost-", 3, "A"), ""));
            String id = begun.substring(begun.lastIndexOf('/') + 1);
            assertThat(database.sql("update catalogue_import set state = 'LOST', ended_at = now() where id = ?")
                            .param(id)
                            .update())
                    .isEqualTo(1);
            return begun;
        });
        settled();
        assertThat(status(location).path("state").asString()).isEqualTo("LOST");
        problem(get("/v1/catalogue/links/lost-00000"), 404, "not-found");
    }

    @Test
    void aStatusWithoutASignOfLifeIsLost() throws Exception {
        database.sql("insert into catalogue_import (id, owner, state, started_at, heartbeat_at) values"
                        + " ('silent', 'local', 'RUNNING', now() - interval '11 s', now() - interval '11 s'),"
                        + " ('alive', 'local', 'RUNNING', now() - interval '11 s', now()),"
                        + " ('foreign', 'another', 'RUNNING', now(), now())")
                .update();
        assertThat(status(IMPORTS + "/silent").path("state").asString()).isEqualTo("LOST");
        assertThat(status(IMPORTS + "/alive").path("state").asString()).isEqualTo("RUNNING");
        // What belongs to another owner is not there.
        problem(get(IMPORTS + "/foreign"), 404, "not-found");
        problem(send(request(IMPORTS + "/foreign").DELETE()), 404, "not-found");
        problem(get(IMPORTS + "/none"), 404, "not-found");
        database.sql("delete from catalogue_import where id in ('silent', 'alive', 'foreign')")
                .update();
    }

    @Test
    void whatAnOwnerBeganIsGivenOutAndGoesWithTheOwner() {
        database.sql("insert into catalogue_import (id, owner, state, started_at, heartbeat_at) values"
                        + " ('leaving', 'leaver', 'RUNNING', now(), now())")
                .update();
        assertThat(data.export("leaver").at("/0/id").asString()).isEqualTo("leaving");
        data.delete("leaver");
        assertThat(data.export("leaver").isEmpty()).isTrue();
    }

    @Test
    void anIdempotencyKeyGoesWithTheImport() throws Exception {
        String first = leads("once-", 2, "A");
        String location = whileOneWrites(() -> {
            String begun = location(importJson(first, "", "Idempotency-Key", "import-once"));
            HttpResponse<String> meanwhile = importJson(first, "", "Idempotency-Key", "import-once");
            problem(meanwhile, 409, "conflict");
            assertThat(meanwhile.headers().firstValue("Retry-After")).isPresent();
            return begun;
        });
        JsonNode report = ended(location).path("report");
        assertThat(report.path("changed").asInt()).isEqualTo(2);
        HttpResponse<String> again = importJson(first, "", "Idempotency-Key", "import-once");
        assertThat(again.statusCode()).as(again.body()).isEqualTo(200);
        // A second import of the same items would have changed none of them.
        assertThat(JSON.readTree(again.body())).isEqualTo(report);
        problem(importJson(leads("once-", 3, "A"), "", "Idempotency-Key", "import-once"), 422, "invalid-value");
        problem(importJson(first, "", "Idempotency-Key", "two words"), 400, "invalid-parameter");
    }

    @Test
    void aKeyOfAnImportThatFailedMayBeUsedAgain() throws Exception {
        String faulty = leads("again-", 2, "A").replace("YC", "YD");
        problem(importJson(faulty, "", "Idempotency-Key", "import-again"), 400, "unknown-value");
        HttpResponse<String> sound = importJson(leads("again-", 2, "A"), "", "Idempotency-Key", "import-again");
        assertThat(JSON.readTree(sound.body()).path("changed").asInt())
                .as(sound.body())
                .isEqualTo(2);
    }

    @Test
    void aSingleWriteDoesNotWaitForEver() throws Exception {
        HttpResponse<String> refused = whileOneWrites(() -> send(request("/v1/catalogue/links/waiting")
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(lead("waiting", "A")))));
        JsonNode problem = problem(refused, 503, "unavailable");
        assertThat(problem.path("detail").asString()).contains("Another change");
        assertThat(refused.headers().firstValue("Retry-After")).contains("5");
        problem(get("/v1/catalogue/links/waiting"), 404, "not-found");
    }

    @Test
    void tooManyImportsAreTurnedAway() throws Exception {
        ExecutorService clients = Executors.newFixedThreadPool(ImportRunner.MOST);
        List<String> locations = new ArrayList<>();
        try {
            HttpResponse<String> refused = whileOneWrites(() -> {
                List<Callable<HttpResponse<String>>> crowd = IntStream.range(0, ImportRunner.MOST)
                        .mapToObj(i -> (Callable<HttpResponse<String>>)
                                () -> importJson(leads("crowd-" + i + "-", 1, "A"), ""))
                        .toList();
                for (Future<HttpResponse<String>> one : clients.invokeAll(crowd)) {
                    locations.add(location(one.get()));
                }
                return importJson(leads("crowd-x-", 1, "A"), "");
            });
            problem(refused, 503, "unavailable");
            assertThat(refused.headers().firstValue("Retry-After")).isPresent();
        } finally {
            clients.shutdown();
        }
        for (String location : locations) {
            assertThat(ended(location).path("state").asString()).isEqualTo("DONE");
        }
    }

    @Test
    void anInstanceThatStopsEndsWhatItBegan() throws Exception {
        ImportRunner stopping = new ImportRunner(work, statuses);
        stopping.start();
        ImportJob job = job("stopping-");
        ExecutorService other = Executors.newSingleThreadExecutor();
        try {
            Future<Boolean> stop = whileOneWrites(() -> {
                statuses.begin(job);
                stopping.reserve();
                assertThat(stopping.submit(job)).isNotDone();
                return other.submit(() -> {
                    stopping.stop();
                    return true;
                });
            });
            assertThat(stop.get(20, TimeUnit.SECONDS)).isTrue();
        } finally {
            other.shutdown();
        }
        assertThat(stopping.isRunning()).isFalse();
        assertThat(status(IMPORTS + "/" + job.id()).path("state").asString()).isEqualTo("DONE");
        assertThat(get("/v1/catalogue/links/stopping-00000").statusCode()).isEqualTo(200);
        assertThatThrownBy(() -> stopping.submit(job("too-late-")))
                .isInstanceOfSatisfying(
                        ProblemException.class,
                        problem -> assertThat(problem.type()).isEqualTo(ProblemType.UNAVAILABLE));
    }

    private static ImportJob job(String prefix) throws IOException {
        byte[] body = leads(prefix, 1, "A").getBytes(StandardCharsets.UTF_8);
        return new ImportJob(
                UUID.randomUUID().toString(),
                "local",
                new IdempotentRequest(null, "POST " + IMPORTS, ""),
                SentText.of(new ByteArrayInputStream(body), null),
                false,
                null);
    }

    /** After this, whatever was at work before is over: there is a place for every import again, and each took its turn. */
    private void settled() throws Exception {
        for (int i = 0; i < 3; i++) {
            HttpResponse<String> next = importJson(leads("settled-", 1, "Name " + System.nanoTime()), "");
            if (next.statusCode() == 202) {
                ended(location(next));
            }
        }
    }
}
