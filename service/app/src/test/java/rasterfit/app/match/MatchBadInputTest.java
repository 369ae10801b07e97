package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.app.match.MatchFaults.limit;
import static rasterfit.app.match.MatchFaults.set;
import static rasterfit.app.match.MatchRequests.changed;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Every kind of bad request to the main call, over HTTP: status, code and the place of the fault. */
class MatchBadInputTest extends ServedTest {
    private static final String MODE = "/source/modes/0";

    @ParameterizedTest(name = "{0}")
    @MethodSource("rasterfit.app.match.MatchFaults#all")
    void isAnsweredWithAProblemAtItsPlace(
            String what, Consumer<ObjectNode> change, int status, String code, List<String> pointers) throws Exception {
        JsonNode problem = problem(match(changed(change).toString()), status, code);
        assertThat(pointers(problem)).as(problem.toString()).isEqualTo(pointers);
    }

    @Test
    void aValueOutOfRangeComesWithItsLimit() throws Exception {
        JsonNode problem = problem(match(changed(set(MODE, "dotClockHz", "0")).toString()), 422, "invalid-value");
        assertThat(problem.at("/errors/0/limit").asString()).isEqualTo("1000..10000000000");
    }

    @Test
    void allFaultsAreToldAtOnceAndTheFormOfThemFirst() throws Exception {
        JsonNode problem = problem(
                match(changed(request -> {
                            set(MODE, "dotClockHz", "0").accept(request);
                            set(MODE + "/active", "dots", 70000).accept(request);
                            set(MODE, "linesPerField", "many").accept(request);
                            set("", "top", 0).accept(request);
                        })
                        .toString()),
                400,
                "wrong-type");
        assertThat(pointers(problem))
                .containsExactly(MODE + "/linesPerField", MODE + "/dotClockHz", MODE + "/active/dots", "/top");
    }

    @Test
    void allAbsentMembersAreToldAtOnce() throws Exception {
        JsonNode problem = problem(
                match("{\"source\": {\"name\": \"x\", \"outputs\": [{}], \"modes\": []}}"), 400, "missing-member");
        assertThat(pointers(problem))
                .containsExactly("/display", "/source/outputs/0/connector", "/source/outputs/0/format");
    }

    @Test
    void aMeasureThatIsNotKnownIsAnsweredWithThoseThatAre() throws Exception {
        JsonNode problem = problem(
                match(changed(limit("{\"measure\": \"lag\", \"atMost\": 5}")).toString()), 400, "unknown-value");
        assertThat(message(problem)).contains("addedLatencyMs", "croppedLines", "acceptance", "price");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"top\": 5      | 400 | malformed-json",
                "{\"top\": NaN}   | 400 | malformed-json",
                "{} {}            | 400 | malformed-json",
                "[]               | 400 | wrong-type",
                "7                | 400 | wrong-type",
                "null             | 400 | missing-body",
                "''               | 400 | missing-body",
                "{\"top\": 1, \"top\": 2} | 400 | duplicate-member",
            })
    void aBodyThatIsNoRequestIsRefused(String body, int status, String code) throws Exception {
        problem(match(body), status, code);
    }

    @Test
    void anotherMediaTypeIsRefused() throws Exception {
        HttpResponse<String> answer = send(request("/v1/matches")
                .header("Content-Type", "text/plain")
                .POST(BodyPublishers.ofString(MatchRequests.good().toString())));
        problem(answer, 415, "unsupported-media-type");
    }

    @Test
    void anUnknownQueryParameterIsNamed() throws Exception {
        HttpResponse<String> answer = send(request("/v1/matches?store=maybe")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(MatchRequests.good().toString())));
        JsonNode problem = problem(answer, 400, "unknown-parameter");
        assertThat(problem.at("/errors/0/parameter").asString()).isEqualTo("store");
    }

    @ParameterizedTest
    @CsvSource({"/v1/matches%2F1", "/v1/matches/%00", "/v1/%2e%2e/matches%5c"})
    void encodedSlashesAndNulsInThePathAreProblems(String path) throws Exception {
        String answer = sendRaw("POST " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                + "Content-Type: application/json\r\nContent-Length: 2\r\n\r\n{}");
        assertThat(answer).matches("(?s)HTTP/1.1 (400|404) .*").contains("application/problem+json");
        problem(
                answer.substring(answer.indexOf("\r\n\r\n") + 4).replaceAll("(?s)^[0-9a-f]+\r\n|\r\n0\r\n\r\n$", ""),
                answer.startsWith("HTTP/1.1 400") ? 400 : 404,
                answer.startsWith("HTTP/1.1 400") ? "bad-request" : "not-found");
    }

    private HttpResponse<String> match(String body) throws Exception {
        return send(request("/v1/matches")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(body)));
    }

    private static List<String> pointers(JsonNode problem) {
        List<String> pointers = new ArrayList<>();
        problem.path("errors")
                .forEach(error -> pointers.add(error.path("pointer").asString()));
        return pointers;
    }
}
