package rasterfit.app.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** What the container refuses before the framework sees it, sent as raw octets (message syntax: RFC 9112). */
class ContainerProblemsTest extends ServedTest {

    private static final String END = " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/echo/%00",
                "/echo%2Fthings",
                "/echo/%5C..",
                "/echo/%zz",
                "/echo/%",
                "/echo/%ff",
                "/../../etc",
                "/echo/%2e%2e/%2e%2e/%2e%2e/x",
                "/a|b",
                "/a<b>",
                "/a\"b",
                "/{id}",
                "/a\\b",
                "/é",
                "noslash",
                "http://[::1/x",
            })
    void aTargetThatCannotBeReadIsABadRequest(String target) throws Exception {
        Answer answer = answer(sendRaw("GET " + target + END));
        assertThat(answer.status()).isEqualTo(400);
        answer.checkProblem();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "nonsense\r\n\r\n",
                "GET\r\n\r\n",
                "GET /echo HTTP/1.1\r\n\r\n",
                "GET /echo HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n",
                "GET /echo HTTP/1.1\r\nHost: a b\r\n\r\n",
                "GET /echo HTTP/1.1\r\nHost: localhost\r\nbad header: x\r\nConnection: close\r\n\r\n",
                "GET /echo HTTP/1.1\r\nHost: localhost\r\n: x\r\nConnection: close\r\n\r\n",
                "G<T /echo HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /echo HTTP/x\r\nHost: localhost\r\n\r\n",
                "POST /echo HTTP/1.1\r\nHost: localhost\r\nContent-Length: x\r\n\r\n",
                "POST /echo HTTP/1.1\r\nHost: localhost\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n",
            })
    void aHeadThatIsMalformedIsABadRequest(String head) throws Exception {
        Answer answer = answer(sendRaw(head));
        assertThat(answer.status()).isEqualTo(400);
        answer.checkProblem();
    }

    @ParameterizedTest
    @CsvSource({
        "'GET /echo HTTP/3.7\r\nHost: localhost\r\n\r\n', 505",
        "'POST /echo HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: odd\r\n\r\n', 501",
        "'TRACE /echo HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n', 405",
        "'BREW /echo HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n', 405",
        "'GET /echo HTTP/1.1\r\nHost: localhost\r\nExpect: 200-maybe\r\nConnection: close\r\n\r\n', 417",
    })
    void whatTheContainerDoesNotOfferHasItsOwnStatus(String head, int status) throws Exception {
        Answer answer = answer(sendRaw(head));
        assertThat(answer.status()).isEqualTo(status);
        answer.checkProblem();
    }

    @ParameterizedTest
    @CsvSource({
        "/echo?top=%zz, invalid-parameter",
        "/echo?top=%, invalid-parameter",
        "/echo/needed?name=%f, invalid-parameter",
        "/echo?%ff%fe=1, unknown-parameter",
    })
    void aQueryThatCannotBeDecodedIsRefused(String target, String code) throws Exception {
        Answer answer = answer(sendRaw("GET " + target + END));
        assertThat(answer.status()).isEqualTo(400);
        problem(answer.body(), 400, code);
    }

    @Test
    void headerFieldsBeyondTheLimitAreRefused() throws Exception {
        String head = "GET /echo HTTP/1.1\r\nHost: localhost\r\nX-Long: " + "a".repeat(20_000) + "\r\n\r\n";
        Answer answer = answer(sendRaw(head));
        assertThat(answer.status()).isEqualTo(400);
        answer.checkProblem();
    }

    @Test
    void aRequestLineBeyondTheLimitIsRefused() throws Exception {
        Answer answer = answer(sendRaw("GET /" + "a".repeat(20_000) + END));
        assertThat(answer.status()).isEqualTo(400);
        answer.checkProblem();
    }

    @Test
    void aBrokenChunkIsABadRequest() throws Exception {
        Answer answer = answer(sendRaw("POST /echo HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                + "Transfer-Encoding: chunked\r\n\r\nzz\r\n{}\r\n0\r\n\r\n"));
        assertThat(answer.status()).isEqualTo(400);
        answer.checkProblem();
    }

    @ParameterizedTest
    @CsvSource({"/echo, application/json", "/echo/bytes, application/octet-stream"})
    void aBodyThatIsCutShortIsABadRequest(String path, String type) throws Exception {
        String head = "POST " + path + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: " + type
                + "\r\nContent-Length: 10\r\n\r\n";
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(30_000);
            socket.getOutputStream().write((head + "{").getBytes(StandardCharsets.US_ASCII));
            socket.shutdownOutput();
            Answer answer = answer(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
            assertThat(answer.status()).isEqualTo(400);
            answer.checkProblem();
        }
    }

    @Test
    void theRefusedPathIsToldWhereItIsKnown() throws Exception {
        JsonNode problem = answer(sendRaw("GET /echo/%00" + END)).checkProblem();
        assertThat(problem.path("instance").asString()).isEqualTo("/echo/%00");
    }

    @Test
    void theServiceListensOnTheLoopbackAddressOnly() throws Exception {
        List<InetAddress> others = Collections.list(NetworkInterface.getNetworkInterfaces()).stream()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(address -> !address.isLoopbackAddress() && !address.isLinkLocalAddress())
                .toList();
        for (InetAddress other : others) {
            assertThat(org.assertj.core.api.Assertions.catchThrowable(() -> new Socket(other, port).close()))
                    .as(other.toString())
                    .isInstanceOf(java.net.ConnectException.class);
        }
        new Socket(InetAddress.getLoopbackAddress(), port).close();
    }

    private static Answer answer(String raw) {
        int blank = raw.indexOf("\r\n\r\n");
        assertThat(blank).as("an answer with head and body: " + raw).isPositive();
        return new Answer(Integer.parseInt(raw.substring(9, 12)), raw.substring(0, blank), raw.substring(blank + 4));
    }

    private record Answer(int status, String head, String body) {

        JsonNode checkProblem() {
            assertThat(head).containsIgnoringCase("\r\nContent-Type: application/problem+json");
            assertThat(head).containsIgnoringCase("\r\nX-Request-Id: ");
            assertThat(body).startsWith("{").doesNotContain("<html");
            return problem(body, status, ProblemType.ofStatus(status).code());
        }
    }
}
