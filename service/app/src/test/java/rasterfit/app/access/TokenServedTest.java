package rasterfit.app.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The running service as it is where it asks for tokens; one more context, for all subclasses. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"rasterfit.access.tokens=required", "rasterfit.access.admin-token=" + TokenServedTest.ADMIN})
@Import({WithoutRuleController.class, OwnedController.class})
public abstract class TokenServedTest extends ServedTest {
    /** The one of the configuration. */
    protected static final String ADMIN = "Zk3.v9~Qe_0b-Lt8+Wm1/Rx5Yc7Ju2Hs4Dn6Pg";

    protected static final JsonMapper JSON = JsonMapper.shared();

    /** A new token for an owner. */
    protected final Given give(String owner, Scope... scopes) throws Exception {
        String names =
                Arrays.stream(scopes).map(scope -> '"' + scope.name() + '"').collect(Collectors.joining(","));
        HttpResponse<String> answer = postAs(
                ADMIN, "/v1/tokens", "{\"owner\":\"" + owner + "\",\"name\":\"test\",\"scopes\":[" + names + "]}");
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
        JsonNode given = JSON.readTree(answer.body());
        return new Given(given.at("/token/id").asString(), given.path("secret").asString());
    }

    protected record Given(String id, String secret) {}

    protected final HttpRequest.Builder as(String secret, String path) {
        return request(path).header("Authorization", "Bearer " + secret);
    }

    protected final HttpResponse<String> getAs(String secret, String path) throws Exception {
        return send(as(secret, path));
    }

    protected final HttpResponse<String> postAs(String secret, String path, String json) throws Exception {
        return send(as(secret, path).header("Content-Type", "application/json").POST(BodyPublishers.ofString(json)));
    }

    protected final HttpResponse<String> deleteAs(String secret, String path) throws Exception {
        return send(as(secret, path).DELETE());
    }

    /** RFC 6750 §3: every refusal of a token comes with a challenge. */
    protected static JsonNode refusedToken(HttpResponse<String> answer) {
        JsonNode problem = problem(answer, 401, "unauthenticated");
        assertThat(challenge(answer)).startsWith("Bearer realm=");
        return problem;
    }

    protected static String challenge(HttpResponse<String> answer) {
        return answer.headers().firstValue("WWW-Authenticate").orElse("");
    }
}
