package rasterfit.app.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The running service with {@link EchoController}, called over real connections; one context for all subclasses. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT)
@Import(EchoController.class)
public abstract class ServedTest {

    private static final JsonMapper JSON = JsonMapper.shared();

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(10)).build();

    @LocalServerPort
    int port;

    protected final HttpRequest.Builder request(String pathAndQuery) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + pathAndQuery))
                .timeout(Duration.ofSeconds(30));
    }

    protected final HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), BodyHandlers.ofString());
    }

    protected final HttpResponse<String> get(String pathAndQuery) throws IOException, InterruptedException {
        return send(request(pathAndQuery));
    }

    protected final HttpResponse<String> post(String json) throws IOException, InterruptedException {
        return send(request("/echo").header("Content-Type", "application/json").POST(BodyPublishers.ofString(json)));
    }

    /** Sends bytes as they are and reads until the server closes; for what no HTTP client would send. */
    protected final String sendRaw(String text) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(30_000);
            OutputStream out = socket.getOutputStream();
            out.write(text.getBytes(StandardCharsets.ISO_8859_1));
            out.flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Checks what RFC 9457 and our own contract ask of every error and returns its body. */
    protected static JsonNode problem(HttpResponse<String> answer, int status, String code) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
        assertThat(answer.headers().firstValue("X-Request-Id")).isPresent();
        assertThat(answer.headers().firstValue("Cache-Control")).contains("no-store");
        return problem(answer.body(), status, code);
    }

    protected static JsonNode problem(String body, int status, String code) {
        JsonNode problem = JSON.readTree(body);
        assertThat(problem.path("type").asString()).isEqualTo("urn:rasterfit:problem:" + code);
        assertThat(problem.path("code").asString()).isEqualTo(code);
        assertThat(problem.path("status").asInt()).isEqualTo(status);
        assertThat(problem.path("title").asString()).isNotBlank();
        assertThat(problem.path("detail").asString()).isNotBlank();
        assertThat(body)
                .doesNotContain("Exception")
                .doesNotContain("rasterfit.app")
                .doesNotContain("jackson")
                .doesNotContain("springframework")
                .doesNotContain("java.")
                .doesNotContain("\tat ")
                .doesNotContain(":null");
        return problem;
    }

    /** The pointer of the only error. */
    protected static String pointer(JsonNode problem) {
        assertThat(problem.path("errors").size()).as(problem.toString()).isEqualTo(1);
        return problem.path("errors").path(0).path("pointer").asString();
    }

    /** The message of the only error. */
    protected static String message(JsonNode problem) {
        assertThat(problem.path("errors").size()).as(problem.toString()).isEqualTo(1);
        return problem.path("errors").path(0).path("message").asString();
    }
}
