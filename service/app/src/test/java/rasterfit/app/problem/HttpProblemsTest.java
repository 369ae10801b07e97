package rasterfit.app.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import tools.jackson.databind.JsonNode;

/** Everything about a request but its JSON; statuses and header fields follow RFC 9110, bodies RFC 9457. */
@ExtendWith(OutputCaptureExtension.class)
class HttpProblemsTest extends ServedTest {

    @Test
    void anUnknownQueryParameterIsNamedWithThoseKnown() throws Exception {
        JsonNode problem = problem(get("/echo?top=3&tpo=4"), 400, "unknown-parameter");
        assertThat(problem.path("errors").toString())
                .isEqualTo("[{\"parameter\":\"tpo\",\"message\":"
                        + "\"Unknown query parameter; known here: order, top.\"}]");
    }

    @Test
    void aQueryParameterIsUnknownWhereNoneIsDeclared() throws Exception {
        HttpResponse<String> answer = send(request("/echo?pretty")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{}")));
        assertThat(message(problem(answer, 400, "unknown-parameter"))).contains("No query parameter");
    }

    @Test
    void knownQueryParametersAreTaken() throws Exception {
        assertThat(get("/echo?top=7&order=INTERLACED&").body()).contains("7").contains("INTERLACED");
    }

    @Test
    void aParameterThatHoldsOneValueIsNotGivenTwice() throws Exception {
        JsonNode problem = problem(get("/echo?top=3&top=4"), 400, "invalid-parameter");
        assertThat(problem.path("errors").path(0).path("parameter").asString()).isEqualTo("top");
    }

    @Test
    void theContractItselfIsNotSubjectToTheCheck() throws Exception {
        assertThat(get("/v3/api-docs?x=1").statusCode()).isEqualTo(200);
    }

    @Test
    void aParameterOfTheWrongFormIsNamed() throws Exception {
        JsonNode problem = problem(get("/echo?top=many"), 400, "invalid-parameter");
        assertThat(problem.path("errors").path(0).path("parameter").asString()).isEqualTo("top");
    }

    @Test
    void aParameterOutsideItsEnumIsToldTheNames() throws Exception {
        JsonNode problem = problem(get("/echo?order=sideways"), 400, "invalid-parameter");
        assertThat(problem.path("errors").path(0).path("parameter").asString()).isEqualTo("order");
        assertThat(message(problem)).contains("PROGRESSIVE, INTERLACED");
    }

    @Test
    void aParameterOutOfRangeIsToldItsLimit() throws Exception {
        JsonNode problem = problem(get("/echo?top=51"), 422, "invalid-value");
        assertThat(problem.path("errors").toString())
                .isEqualTo(
                        "[{\"parameter\":\"top\",\"message\":\"must be less than or equal to 50\",\"limit\":\"50\"}]");
    }

    @Test
    void aMissingParameterIsNamed() throws Exception {
        JsonNode problem = problem(get("/echo/needed"), 400, "invalid-parameter");
        assertThat(problem.path("errors").path(0).path("parameter").asString()).isEqualTo("name");
    }

    @Test
    void anUnknownPathIsNotFound() throws Exception {
        JsonNode problem = problem(get("/nowhere/at-all?x=1"), 404, "not-found");
        assertThat(problem.path("instance").asString()).isEqualTo("/nowhere/at-all");
        problem(send(request("/nowhere").POST(BodyPublishers.ofString("x"))), 404, "not-found");
    }

    @Test
    void whatAServiceRaisesIsAnsweredAsItStands() throws Exception {
        JsonNode problem = problem(get("/echo/things/d%20%C3%A9"), 404, "not-found");
        assertThat(problem.path("detail").asString()).isEqualTo("There is no thing \"d é\".");
        assertThat(problem.path("instance").asString()).isEqualTo("/echo/things/d%20%C3%A9");
    }

    @Test
    void aMethodThatIsNotOfferedIsToldThoseThatAre() throws Exception {
        HttpResponse<String> answer = send(request("/echo").DELETE());
        problem(answer, 405, "method-not-allowed");
        // RFC 9110 clause 15.5.6: the origin server must generate Allow.
        assertThat(answer.headers().firstValue("Allow")).contains("GET, POST");
    }

    @Test
    void aBodyOfAnotherMediaTypeIsRefusedWithThoseAccepted() throws Exception {
        HttpResponse<String> answer =
                send(request("/echo").header("Content-Type", "text/plain").POST(BodyPublishers.ofString("{}")));
        problem(answer, 415, "unsupported-media-type");
        assertThat(answer.headers().firstValue("Accept")).contains("application/json");
    }

    @Test
    void aBodyWithoutMediaTypeIsRefused() throws Exception {
        problem(send(request("/echo").POST(BodyPublishers.ofString("{}"))), 415, "unsupported-media-type");
    }

    @ParameterizedTest
    @ValueSource(strings = {"json", "a/b/c", "*/*"})
    void aMediaTypeThatCannotBeReadIsRefused(String type) throws Exception {
        HttpResponse<String> answer =
                send(request("/echo").header("Content-Type", type).POST(BodyPublishers.ofString("{}")));
        assertThat(answer.statusCode()).isIn(400, 415);
        assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
    }

    @Test
    void anAnswerInNoAcceptedMediaTypeIsRefused() throws Exception {
        JsonNode problem = problem(send(request("/echo").header("Accept", "image/png")), 406, "not-acceptable");
        assertThat(problem.path("detail").asString()).contains("application/json");
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/html", "application/xml", "nonsense"})
    void anErrorIsAProblemWhateverIsAccepted(String accept) throws Exception {
        problem(send(request("/nowhere").header("Accept", accept)), 404, "not-found");
    }

    @Test
    void aDeclaredBodyOfOneMebibyteIsReadAndOneByteMoreIsNot() throws Exception {
        assertThat(postBytes(1_048_576, false).body()).isEqualTo("{\"bytes\":1048576}");
        JsonNode problem = problem(postBytes(1_048_577, false), 413, "content-too-large");
        assertThat(problem.path("errors").path(0).path("limit").asString()).isEqualTo("1048576");
    }

    @Test
    void aBodyOfUndeclaredLengthIsCutAtTheSameLimit() throws Exception {
        assertThat(postBytes(1_048_576, true).body()).isEqualTo("{\"bytes\":1048576}");
        problem(postBytes(1_048_577, true), 413, "content-too-large");
    }

    @Test
    void aJsonBodyThatIsTooLargeIsToldByItsSizeAndNotByItsForm() throws Exception {
        byte[] body =
                ("{\"text\":\"" + "a".repeat(1_100_000) + "\"}").getBytes(java.nio.charset.StandardCharsets.UTF_8);
        problem(
                send(request("/echo")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body)))),
                413,
                "content-too-large");
    }

    @Test
    void aBodyFarBeyondTheLimitStillGetsItsAnswer() throws Exception {
        problem(postBytes(8 << 20, false), 413, "content-too-large");
    }

    private HttpResponse<String> postBytes(int count, boolean chunked) throws Exception {
        byte[] body = new byte[count];
        return send(request("/echo/bytes")
                .header("Content-Type", "application/octet-stream")
                .POST(
                        chunked
                                ? BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body))
                                : BodyPublishers.ofByteArray(body)));
    }

    @Test
    void aDefectIsAnsweredWithNothingButTheIdUnderWhichItIsLogged(CapturedOutput log) throws Exception {
        HttpResponse<String> answer = get("/echo/defect");
        JsonNode problem = problem(answer, 500, "internal-error");
        String id = problem.path("requestId").asString();
        assertThat(answer.headers().firstValue("X-Request-Id")).contains(id);
        assertThat(answer.body()).doesNotContain("secret");
        assertThat(log.getOut()).contains(id).contains("secret of");
    }

    @Test
    void aBusyServiceSaysWhenToComeBack() throws Exception {
        HttpResponse<String> answer = get("/echo/busy");
        problem(answer, 503, "unavailable");
        assertThat(answer.headers().firstValue("Retry-After")).contains("2");
    }

    @Test
    void thePlainIdOfAClientIsKept() throws Exception {
        HttpResponse<String> answer = send(request("/echo").header("X-Request-Id", "abc-1.2:3/Z="));
        assertThat(answer.headers().firstValue("X-Request-Id")).contains("abc-1.2:3/Z=");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a b", "a\"b", "<a>", "a%0ab"})
    void anIdThatIsNotPlainIsReplaced(String id) throws Exception {
        HttpResponse<String> answer = send(request("/echo").header("X-Request-Id", id));
        assertThat(answer.headers().firstValue("X-Request-Id")).get().asString().matches("[0-9a-f-]{36}");
    }

    @Test
    void anIdOfMoreThan128CharactersIsReplaced() throws Exception {
        assertThat(send(request("/echo").header("X-Request-Id", "a".repeat(129)))
                        .headers()
                        .firstValue("X-Request-Id"))
                .get()
                .asString()
                .hasSize(36);
    }

    @Test
    void aLongAnswerIsCompressedForAClientThatAcceptsIt() throws Exception {
        HttpResponse<byte[]> answer = java.net.http.HttpClient.newHttpClient()
                .send(request("/echo/long").header("Accept-Encoding", "gzip").build(), BodyHandlers.ofByteArray());
        assertThat(answer.headers().firstValue("Content-Encoding")).contains("gzip");
        byte[] plain = new GZIPInputStream(new ByteArrayInputStream(answer.body())).readAllBytes();
        assertThat(new String(plain, java.nio.charset.StandardCharsets.UTF_8))
                .isEqualTo(get("/echo/long").body());
    }

    @Test
    void anErrorOnHeadHasTheHeadersAndNoBody() throws Exception {
        HttpResponse<String> answer = send(request("/nowhere").method("HEAD", BodyPublishers.noBody()));
        assertThat(answer.statusCode()).isEqualTo(404);
        assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
        assertThat(answer.body()).isEmpty();
    }
}
