package rasterfit.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.springframework.beans.factory.annotation.Autowired;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What tests of imports have in common. */
abstract class TransferTest extends ServedTest {
    static final JsonMapper JSON = JsonMapper.shared();
    static final String IMPORTS = "/v1/catalogue/imports";

    @Autowired
    DataSource dataSource;

    final HttpResponse<String> importJson(String document, String query, String... headers)
            throws IOException, InterruptedException {
        return importText("application/json", document, query, headers);
    }

    final HttpResponse<String> importCsv(String table, String query, String... headers)
            throws IOException, InterruptedException {
        return importText("text/csv; charset=utf-8", table, query, headers);
    }

    final HttpResponse<String> importText(String type, String text, String query, String... headers)
            throws IOException, InterruptedException {
        var request = request(IMPORTS + query).header("Content-Type", type).POST(BodyPublishers.ofString(text));
        for (int i = 0; i < headers.length; i += 2) {
            request.header(headers[i], headers[i + 1]);
        }
        return send(request);
    }

    /** Where the status of an import is that was not done at once. */
    static String location(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(202);
        assertThat(answer.headers().firstValue("Retry-After")).contains("1");
        String location = answer.headers().firstValue("Location").orElseThrow();
        assertThat(location)
                .isEqualTo(
                        IMPORTS + "/" + JSON.readTree(answer.body()).path("id").asString());
        return location;
    }

    final JsonNode status(String location) {
        try {
            HttpResponse<String> answer = get(location);
            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
            JsonNode status = JSON.readTree(answer.body());
            boolean isRunning = status.path("state").asString().equals("RUNNING");
            assertThat(answer.headers().firstValue("Retry-After").isPresent()).isEqualTo(isRunning);
            assertThat(status.has("endedAt")).isNotEqualTo(isRunning);
            return status;
        } catch (IOException | InterruptedException failed) {
            throw new AssertionError(failed);
        }
    }

    final JsonNode ended(String location) {
        return await().atMost(Duration.ofSeconds(60))
                .pollInterval(Duration.ofMillis(50))
                .until(() -> status(location), status -> status.has("endedAt"));
    }

    /** Does something while another writer does not end; what is written to the catalogue waits for it. */
    final <T> T whileOneWrites(Callable<T> work) throws Exception {
        try (Connection connection = dataSource.getConnection()) {
            connection.setAutoCommit(false);
            try (Statement statement = connection.createStatement()) {
                statement.execute("select * from catalogue_state for update");
                return work.call();
            } finally {
                connection.rollback();
                connection.setAutoCommit(true);
            }
        }
    }

    static String lead(String id, String name) {
        return "{\"id\":\"" + id + "\",\"kind\":\"CABLE\",\"name\":\"" + name + "\","
                + "\"to\":{\"connector\":\"own:nowhere\"},\"from\":{\"connector\":\"own:nowhere\"},"
                + "\"carries\":[{\"format\":\"YC\"}]}";
    }

    static String document(List<String> leads) {
        return "{\"format\":\"catalogue/1\",\"links\":[\n" + String.join(",\n", leads) + "\n]}";
    }

    static String leads(String prefix, int number, String name) {
        return document(IntStream.range(0, number)
                .mapToObj(i -> lead(prefix + String.format("%05d", i), name))
                .collect(Collectors.toList()));
    }
}
