package rasterfit.app.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import tools.jackson.databind.JsonNode;

/**
 * Every operation that the framework found, called with every wrong token and for another owner's things (OWASP API Security
 * Top 10 2023: API1 broken object level, API2 broken authentication, API5 broken function level authorisation). Statuses and
 * challenges: RFC 6750 §3, RFC 9110 §15.5.2 and §15.5.4.
 */
class EveryEndpointTest extends TokenServedTest {
    /** Lists whose elements belong to nobody; who may change them, their scopes say. */
    private static final Set<String> SHARED = Set.of("/v1/catalogue", "/v1/templates");

    /**
     * Lists whose elements belong to their owner, with a body that creates one. An operation on an element of a list that is in
     * neither fails the test: whoever adds one decides which it is.
     */
    private static final Map<String, String> PRIVATE = Map.of("/owned", "", "/v1/collections", "{\"name\": \"Mine\"}");

    /** Private too, but not created by a plain POST: an import that runs is another owner's in RunningImportTest. */
    private static final Set<String> PRIVATE_BESIDES = Set.of("/v1/catalogue/imports");

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mapping;

    @Autowired
    JdbcClient database;

    private List<Endpoint> endpoints;

    @BeforeEach
    void find() {
        endpoints = Endpoint.of(mapping);
        assertThat(endpoints).hasSizeGreaterThan(20);
    }

    @Test
    void everyOperationNamesItsScope() {
        assertThat(endpoints)
                .allSatisfy(endpoint -> assertThat(AccessInterceptor.scopeOf(endpoint.handler()))
                        .as(endpoint.toString())
                        .isNotNull());
        // What is not the service's own is the contract and nothing else.
        assertThat(mapping.getHandlerMethods().values().stream()
                        .map(HandlerMethod::getBeanType)
                        .filter(type -> !type.getPackageName().startsWith("rasterfit.app")))
                .isNotEmpty()
                .allSatisfy(type -> assertThat(type.getPackageName()).startsWith("org.springdoc"));
    }

    @Test
    void anOperationWithoutAScopeIsCalledForNobody() throws Exception {
        JsonNode problem = problem(getAs(ADMIN, WithoutRuleController.PATH), 403, "forbidden");
        assertThat(problem.path("detail").asString()).contains("Nobody");
        refusedToken(get(WithoutRuleController.PATH));
    }

    @Test
    void everyOperationRefusesEveryWrongToken() throws Exception {
        Map<String, UnaryOperator<HttpRequest.Builder>> wrong = wrongTokens();
        for (Endpoint endpoint : endpoints) {
            for (Map.Entry<String, UnaryOperator<HttpRequest.Builder>> one : wrong.entrySet()) {
                HttpResponse<String> answer = send(one.getValue().apply(endpoint.call(this::request, endpoint.path())));
                String name = endpoint + " with " + one.getKey();
                assertThat(answer.statusCode()).as(name).isEqualTo(401);
                refusedToken(answer);
                assertThat(challenge(answer)).as(name).contains("error=\"invalid_token\"");
            }
        }
    }

    @Test
    void everyOperationAsksForATokenThatIsNotSent() throws Exception {
        String good = give("asked", Scope.values()).secret();
        for (Endpoint endpoint : endpoints) {
            refusedToken(send(endpoint.call(this::request, endpoint.path())));
            // RFC 6750 §3.1: without authentication information no error code is told.
            HttpResponse<String> inQuery =
                    send(endpoint.call(this::request, endpoint.path() + "?access_token=" + good));
            refusedToken(inQuery);
            assertThat(challenge(inQuery)).as(endpoint.toString()).doesNotContain("error");
        }
        assertThat(getAs(good, "/v1/owner").statusCode()).isEqualTo(200);
    }

    @Test
    void everyOperationNeedsItsScopeAndNoOther() throws Exception {
        Map<Scope, String> without = new HashMap<>();
        Map<Scope, String> only = new HashMap<>();
        for (Scope scope : Scope.values()) {
            without.put(
                    scope,
                    give("scopes", EnumSet.complementOf(EnumSet.of(scope)).toArray(Scope[]::new))
                            .secret());
            only.put(scope, give("scopes", scope).secret());
        }
        for (Endpoint endpoint : endpoints) {
            Scope needed = endpoint.scope();
            HttpResponse<String> refused = send(endpoint.call(path -> as(without.get(needed), path), endpoint.path()));
            problem(refused, 403, "forbidden");
            assertThat(challenge(refused))
                    .as(endpoint.toString())
                    .startsWith("Bearer realm=")
                    .contains("error=\"insufficient_scope\"", "scope=\"" + needed + "\"");
            HttpResponse<String> let = send(endpoint.call(path -> as(only.get(needed), path), endpoint.path()));
            assertThat(let.statusCode()).as(endpoint + " " + let.body()).isNotIn(401, 403);
            assertThat(let.statusCode()).as(endpoint + " " + let.body()).isLessThan(500);
        }
    }

    @Test
    void everyListOfThingsIsEitherSharedOrPrivate() {
        List<Endpoint> undecided = endpoints.stream()
                .filter(Endpoint::namesAnElement)
                .filter(endpoint -> endpoint.scope() != Scope.ADMIN)
                .filter(endpoint -> !SHARED.contains(endpoint.root()) && !PRIVATE.containsKey(endpoint.root()))
                .filter(endpoint -> !PRIVATE_BESIDES.contains(endpoint.root()))
                .toList();
        assertThat(undecided)
                .as("in neither SHARED nor PRIVATE: " + Endpoint.words(undecided))
                .isEmpty();
    }

    @Test
    void anotherOwnersThingsAreAsIfTheyWereNotThere() throws Exception {
        String mine = give("first-owner", Scope.values()).secret();
        String others = give("second-owner", Scope.values()).secret();
        for (Map.Entry<String, String> list : PRIVATE.entrySet()) {
            HttpResponse<String> created = postAs(mine, list.getKey(), list.getValue());
            assertThat(created.statusCode()).as(created.body()).isEqualTo(201);
            String location = created.headers().firstValue("Location").orElseThrow();
            String id = location.substring(location.lastIndexOf('/') + 1);
            String before = getAs(mine, location).body();
            List<Endpoint> ofElements = endpoints.stream()
                    .filter(one -> one.namesAnElement() && one.root().equals(list.getKey()))
                    .toList();
            assertThat(ofElements).isNotEmpty();
            for (Endpoint endpoint : ofElements) {
                // The same as for an id that nobody has, which a body that is refused first need not come to.
                HttpResponse<String> absent = send(endpoint.call(path -> as(others, path), endpoint.path()));
                HttpResponse<String> answer = send(endpoint.call(path -> as(others, path), endpoint.path(id)));
                assertThat(answer.statusCode())
                        .as(endpoint + " " + answer.body())
                        .isEqualTo(absent.statusCode());
                assertThat(answer.body().replace(id, "no-such-thing")).isEqualTo(absent.body());
                if (endpoint.method().equals("GET") || endpoint.mediaType().isEmpty()) {
                    problem(answer, 404, "not-found");
                }
            }
            HttpResponse<String> after = getAs(mine, location);
            assertThat(after.statusCode()).isEqualTo(200);
            assertThat(after.body()).isEqualTo(before);
        }
    }

    @Test
    void theContractAndTheStateOfHealthAreForEverybody() throws Exception {
        assertThat(get("/v3/api-docs").statusCode()).isEqualTo(200);
        assertThat(get("/v3/api-docs.yaml").statusCode()).isEqualTo(200);
        // There is none yet; the rule is.
        problem(get("/actuator/health"), 404, "not-found");
        problem(get("/actuator/health/liveness"), 404, "not-found");
        refusedToken(get("/actuator/metrics"));
        problem(getAs(give("watch", Scope.READ).secret(), "/actuator/metrics"), 403, "forbidden");
        problem(getAs(give("watch", Scope.ADMIN).secret(), "/actuator/metrics"), 404, "not-found");
    }

    @Test
    void whatIsNotThereIsToldToCallersOnly() throws Exception {
        refusedToken(get("/nowhere"));
        refusedToken(get("/error"));
        refusedToken(get("/"));
        String any = give("looking", Scope.READ).secret();
        problem(getAs(any, "/nowhere"), 404, "not-found");
        problem(send(as(any, "/v1/rules").DELETE()), 405, "method-not-allowed");
        refusedToken(send(request("/v1/rules").DELETE()));
    }

    /** Every one of them is sent in Authorization. */
    private Map<String, UnaryOperator<HttpRequest.Builder>> wrongTokens() throws Exception {
        Given good = give("wrong", Scope.values());
        String secret = good.secret();
        Given revoked = give("wrong", Scope.values());
        assertThat(getAs(revoked.secret(), "/v1/owner").statusCode()).isEqualTo(200);
        assertThat(deleteAs(ADMIN, "/v1/tokens/" + revoked.id()).statusCode()).isEqualTo(204);
        Given expired = give("wrong", Scope.values());
        database.sql("update access_token set created_at = created_at - interval '1 hour',"
                        + " expires_at = created_at - interval '1 second' where id = ?")
                .param(expired.id())
                .update();
        char last = secret.charAt(secret.length() - 1);
        Map<String, UnaryOperator<HttpRequest.Builder>> wrong = new LinkedHashMap<>();
        put(wrong, "a random token", "Bearer " + Secret.random().text());
        put(wrong, "a known id and another secret", "Bearer " + sameId(good));
        put(wrong, "a revoked token", "Bearer " + revoked.secret());
        put(wrong, "an expired token", "Bearer " + expired.secret());
        put(wrong, "a truncated token", "Bearer " + secret.substring(0, secret.length() - 1));
        put(wrong, "a token with more behind it", "Bearer " + secret + "A");
        put(wrong, "a token with another end", "Bearer " + secret.substring(0, secret.length() - 1) + other(last));
        put(wrong, "a token in capitals", "Bearer " + secret.toUpperCase(java.util.Locale.ROOT));
        put(wrong, "what is stored of a token", "Bearer " + Secret.sha256(secret));
        put(wrong, "the id of a token", "Bearer " + good.id());
        put(wrong, "a truncated admin token", "Bearer " + ADMIN.substring(0, ADMIN.length() - 1));
        put(wrong, "the scheme alone", "Bearer");
        put(wrong, "no token behind the scheme", "Bearer  ");
        put(wrong, "two tokens in one field", "Bearer " + secret + " " + secret);
        put(wrong, "two tokens in a list", "Bearer " + secret + ", Bearer " + secret);
        put(wrong, "a token without a scheme", secret);
        put(wrong, "another scheme", "Basic d3Jvbmc6d3Jvbmc=");
        put(wrong, "a good token under another scheme", "Token " + secret);
        put(wrong, "quotes around a good token", "Bearer \"" + secret + "\"");
        wrong.put(
                "two fields",
                request -> request.header("Authorization", "Bearer " + secret)
                        .header("Authorization", "Bearer " + secret));
        // None of them is wrong for another reason.
        assertThat(getAs(secret, "/v1/owner").statusCode()).isEqualTo(200);
        assertThat(send(request("/v1/owner").header("Authorization", "bEARER   " + secret))
                        .statusCode())
                .as("the name of a scheme has no case (RFC 9110 §11.1)")
                .isEqualTo(200);
        return wrong;
    }

    private static void put(Map<String, UnaryOperator<HttpRequest.Builder>> wrong, String name, String authorization) {
        wrong.put(name, request -> request.header("Authorization", authorization));
    }

    private static String sameId(Given good) {
        String other = Secret.random().text();
        return "rft_" + good.id() + other.substring(other.indexOf('_', 4));
    }

    private static char other(char last) {
        return last == 'A' ? 'B' : 'A';
    }
}
