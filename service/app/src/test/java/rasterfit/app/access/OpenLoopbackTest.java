package rasterfit.app.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.ApplicationContext;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.json.JsonMapper;

/** The service on its loopback address without tokens: open to this machine, closed to pages from elsewhere. */
class OpenLoopbackTest extends ServedTest {
    @LocalServerPort
    int port;

    @Autowired
    Tokens tokens;

    @Autowired
    ApplicationContext context;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mapping;

    @Test
    void whoeverCallsMayDoEverything() throws Exception {
        for (Endpoint endpoint : Endpoint.of(mapping)) {
            HttpResponse<String> answer = send(endpoint.call(this::request, endpoint.path()));
            assertThat(answer.statusCode()).as(endpoint + " " + answer.body()).isNotIn(401, 403, 421);
        }
        assertThat(get("/v1/owner").body()).contains("\"owner\":\"local\"", "ADMIN");
    }

    @Test
    void aTokenThatIsSentIsLookedAt() throws Exception {
        IssuedToken given = tokens.issue("mira", "test", List.of(Scope.READ), null);
        assertThat(JsonMapper.shared()
                        .readTree(send(request("/v1/owner").header("Authorization", "Bearer " + given.secret()))
                                .body())
                        .path("owner")
                        .asString())
                .isEqualTo("mira");
        problem(send(request("/v1/tokens").header("Authorization", "Bearer " + given.secret())), 403, "forbidden");
        for (String wrong : List.of("Bearer " + Secret.random().text(), "Bearer", "Basic d3Jvbmc6d3Jvbmc=")) {
            problem(send(request("/v1/rules").header("Authorization", wrong)), 401, "unauthenticated");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rebound.example",
                "rebound.example:8080",
                "127.0.0.1.rebound.example",
                "localhost.rebound.example",
                "127.0.0.1.:80",
                "192.0.2.7",
                "0.0.0.0",
                "[2001:db8::1]",
                "2130706433",
                ""
            })
    void aNameThatWasMadeToPointHereIsRefused(String host) throws Exception {
        // A page of such a name is of the same origin to its browser; only Host gives it away.
        String answer = sendRaw("GET /v1/owner HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n");
        assertThat(answer).startsWith("HTTP/1.1 421").contains("application/problem+json", "misdirected-request");
        // What a page may add to its request does not help it.
        String forwarded = sendRaw("GET /v1/owner HTTP/1.1\r\nHost: " + host
                + "\r\nX-Forwarded-Host: localhost\r\nForwarded: host=localhost\r\nConnection: close\r\n\r\n");
        assertThat(forwarded).startsWith("HTTP/1.1 421");
    }

    @ParameterizedTest
    @ValueSource(strings = {"localhost", "LOCALHOST:1", "127.0.0.1", "127.9.9.9:8080", "[::1]", "[::1]:8080"})
    void theLoopbackAddressByAnyOfItsNamesIsAnswered(String host) throws Exception {
        assertThat(sendRaw("GET /v1/owner HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 200");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://pages.example",
                "null",
                "http://localhost:1",
                "https://127.0.0.1:PORT",
                "http://127.0.0.1"
            })
    void aPageOfAnotherOriginChangesNothing(String written) throws Exception {
        String origin = written.replace("PORT", Integer.toString(port));
        for (String method : List.of("POST", "PUT", "PATCH", "DELETE")) {
            problem(
                    send(request("/v1/catalogue/links/from-a-page")
                            .header("Origin", origin)
                            .method(method, BodyPublishers.ofString("{}"))),
                    403,
                    "forbidden");
        }
        // Fetch standard: a form is sent without asking first, as text/plain.
        problem(
                send(request("/v1/matches")
                        .header("Origin", origin)
                        .header("Content-Type", "text/plain")
                        .POST(BodyPublishers.ofString("{}"))),
                403,
                "forbidden");
        // What a browser asks first is not granted: no Access-Control-Allow-Origin.
        HttpResponse<String> preflight = send(request("/v1/matches")
                .header("Origin", origin)
                .header("Access-Control-Request-Method", "POST")
                .method("OPTIONS", BodyPublishers.noBody()));
        assertThat(preflight.headers().map().keySet()).noneMatch(name -> name.startsWith("access-control"));
        HttpResponse<String> read = send(request("/v1/owner").header("Origin", origin));
        assertThat(read.headers().map().keySet()).noneMatch(name -> name.startsWith("access-control"));
        assertThat(read.headers().firstValue("Cross-Origin-Resource-Policy")).contains("same-origin");
    }

    @Test
    void aPageOfTheServiceItselfMayChangeThings() throws Exception {
        HttpResponse<String> answer = send(request("/v1/displays/decode")
                .header("Origin", "http://127.0.0.1:" + port)
                .header("Content-Type", "text/plain")
                .POST(BodyPublishers.ofString("")));
        assertThat(answer.statusCode()).as(answer.body()).isNotIn(401, 403, 421);
    }

    @Test
    void answersCarryTheHeadersOfAnInterfaceForPrograms() throws Exception {
        // OWASP cheat sheet "REST security", security headers; the last is RFC 9111 §5.2.2.4.
        HttpResponse<String> answer = get("/v1/rules");
        assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
        assertThat(answer.headers().firstValue("X-Frame-Options")).contains("DENY");
        assertThat(answer.headers().firstValue("Content-Security-Policy"))
                .contains("default-src 'none'; frame-ancestors 'none'");
        assertThat(answer.headers().firstValue("Referrer-Policy")).contains("no-referrer");
        assertThat(answer.headers().firstValue("Cache-Control")).contains("private, no-cache");
        assertThat(answer.headers().firstValue("Set-Cookie")).isEmpty();
    }

    @Test
    void nobodyHasAPassword() {
        assertThat(context.getBeanNamesForType(UserDetailsService.class)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "GET //v1/rules HTTP/1.1\r\nHost: localhost\r\n",
                "GET /v1/rules;x=1 HTTP/1.1\r\nHost: localhost\r\n",
                "GET /v1/./rules HTTP/1.1\r\nHost: localhost\r\n",
                // NEXT LINE, a control character that the container lets pass.
                "GET /v1/catalogue/links/x HTTP/1.1\r\nHost: localhost\r\nIf-None-Match: \u0085\r\n",
            })
    void whatCouldBeReadInTwoWaysIsABadRequest(String head) throws Exception {
        String answer = sendRaw(head + "Connection: close\r\n\r\n");
        assertThat(answer).startsWith("HTTP/1.1 400").contains("application/problem+json", "bad-request");
    }
}
