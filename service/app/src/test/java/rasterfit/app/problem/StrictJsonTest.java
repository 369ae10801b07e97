package rasterfit.app.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Bodies that are refused, and how they are refused. What JSON is, RFC 8259 says; pointers follow RFC 6901. */
class StrictJsonTest extends ServedTest {

    @Test
    void aGoodBodyComesBackInDeclaredOrderWithEnumNamesAndWithoutNulls() throws Exception {
        HttpResponse<String> answer = post("""
                {"scan":"INTERLACED","text":"\\u00e9","count":2147483647,"amount":0.10,"weights":{"PROGRESSIVE":1},
                 "rate":{"hertz":60,"kind":"FIXED"},"source":{"modes":[{"lines":262}]}}""");
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(answer.body())
                .isEqualTo("{\"text\":\"é\",\"count\":2147483647,\"amount\":0.10,\"scan\":\"INTERLACED\","
                        + "\"rate\":{\"kind\":\"FIXED\",\"hertz\":60},\"weights\":{\"PROGRESSIVE\":1.0},"
                        + "\"source\":{\"modes\":[{\"lines\":262}]}}");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{",
                "{\"text\":}",
                "{'text':'a'}",
                "{\"text\":\"a\",}",
                "{\"text\":tru}",
                "{\"count\":01}",
                "{\"share\":NaN}",
                "{\"text\":\"a\nb\"}",
                "// comment\n{}",
                "{} {}",
                "{} 1",
                "{} ]",
                "{}x"
            })
    void aBodyThatIsNotOneWellFormedJsonTextIsMalformed(String body) throws Exception {
        problem(post(body), 400, "malformed-json");
    }

    @Test
    void aBodyThatIsNotUtf8IsMalformed() throws Exception {
        // RFC 8259 clause 8.1; the octet 0xFF occurs in no UTF-8 text (RFC 3629 clause 1).
        byte[] body = {'{', '"', 't', 'e', 'x', 't', '"', ':', '"', (byte) 0xff, '"', '}'};
        problem(
                send(request("/echo")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofByteArray(body))),
                400,
                "malformed-json");
    }

    @Test
    void aBodyThatLooksLikeUtf32AndIsNotIsRefused() throws Exception {
        // Three zero octets in front of a brace are taken for UTF-32, whose greatest value is 10FFFFh (Unicode, D90).
        byte[] body = {0, 0, 0, '{', 'i', 'c', '"', 0};
        problem(
                send(request("/echo")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofByteArray(body))),
                400,
                "bad-request");
    }

    @Test
    void aMalformedBodyIsToldByLineAndColumn() throws Exception {
        JsonNode problem = problem(post("{\n  \"text\": ?}"), 400, "malformed-json");
        assertThat(problem.path("detail").asString()).contains("line 2, column 11");
        assertThat(problem.path("instance").asString()).isEqualTo("/echo");
    }

    @Test
    void anEmptyBodyIsMissing() throws Exception {
        problem(post(""), 400, "missing-body");
    }

    @Test
    void anUnknownMemberIsNamedWithThoseKnown() throws Exception {
        JsonNode problem = problem(
                post("{\"source\":{\"modes\":[{\"lines\":1},{\"lines\":1,\"a/b~c\":0}]}}"), 400, "unknown-member");
        assertThat(pointer(problem)).isEqualTo("/source/modes/1/a~1b~0c");
        assertThat(message(problem)).contains("\"a/b~c\"").contains("lines, name, ratio, scan");
    }

    @Test
    void aRepeatedMemberIsRefusedAtItsPlace() throws Exception {
        JsonNode problem =
                problem(post("{\"source\":{\"modes\":[{\"lines\":1,\"lines\":2}]}}"), 400, "duplicate-member");
        assertThat(pointer(problem)).isEqualTo("/source/modes/0/lines");
    }

    @Test
    void anUnknownEnumValueIsNamedWithThoseAllowed() throws Exception {
        JsonNode problem = problem(post("{\"scan\":\"SIDEWAYS\"}"), 400, "unknown-value");
        assertThat(pointer(problem)).isEqualTo("/scan");
        assertThat(message(problem)).contains("\"SIDEWAYS\"").contains("PROGRESSIVE, INTERLACED");
    }

    @Test
    void anUnknownEnumValueAsAMembersNameIsNamedToo() throws Exception {
        JsonNode problem = problem(post("{\"weights\":{\"SIDEWAYS\":1}}"), 400, "unknown-value");
        assertThat(pointer(problem)).isEqualTo("/weights/SIDEWAYS");
    }

    @ParameterizedTest
    @ValueSource(strings = {"progressive", "for people only", ""})
    void anEnumValueIsReadByItsExactNameOnly(String value) throws Exception {
        problem(post("{\"scan\":\"" + value + "\"}"), 400, "unknown-value");
    }

    @Test
    void anUnknownKindIsNamedWithThoseKnown() throws Exception {
        JsonNode problem = problem(post("{\"rate\":{\"kind\":\"WILD\"}}"), 400, "unknown-value");
        assertThat(pointer(problem)).startsWith("/rate");
        assertThat(message(problem)).contains("\"WILD\"").contains("FIXED, FREE");
    }

    @Test
    void aMissingKindIsAskedFor() throws Exception {
        assertThat(message(problem(post("{\"rate\":{\"hertz\":60}}"), 400, "missing-member")))
                .contains("FIXED, FREE");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "text    | true        | /text",
                "text    | 1           | /text",
                "text    | 1.5         | /text",
                "text    | {}          | /text",
                "text    | []          | /text",
                "on      | \"true\"    | /on",
                "on      | 1           | /on",
                "on      | \"\"        | /on",
                "count   | \"1\"       | /count",
                "count   | \"\"        | /count",
                "count   | 1.0         | /count",
                "count   | true        | /count",
                "count   | [1]         | /count",
                "total   | 1e3         | /total",
                "share   | \"0.5\"     | /share",
                "share   | \"NaN\"     | /share",
                "share   | true        | /share",
                "amount  | \"0.5\"     | /amount",
                "amount  | \"\"        | /amount",
                "amount  | false       | /amount",
                "scan    | 0           | /scan",
                "scan    | true        | /scan",
                "tags    | \"a\"       | /tags",
                "tags    | {}          | /tags",
                "tags    | [\"a\",1]   | /tags/1",
                "weights | []          | /weights",
                "weights | \"\"        | /weights",
                "source  | []          | /source",
                "source  | \"\"        | /source",
                "source  | \"a\"       | /source",
                "source  | 7           | /source",
            })
    void aValueOfAnotherJsonTypeIsNeverConverted(String member, String value, String pointer) throws Exception {
        JsonNode problem = problem(post("{\"" + member + "\":" + value + "}"), 400, "wrong-type");
        assertThat(pointer(problem)).isEqualTo(pointer);
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "7", "\"a\"", "true"})
    void aBodyOfAnotherJsonTypeIsRefusedAsAWhole(String body) throws Exception {
        assertThat(pointer(problem(post(body), 400, "wrong-type"))).isEmpty();
    }

    @Test
    void aBodyOfNullIsMissing() throws Exception {
        problem(post("null"), 400, "missing-body");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // Two's complement of 32 and 64 bits; the greatest finite binary64 is (2 − 2^−52)·2^1023 (IEEE 754).
                "count | 2147483648           | -2147483648..2147483647",
                "count | -2147483649          | -2147483648..2147483647",
                "count | 99999999999999999999 | -2147483648..2147483647",
                "total | 9223372036854775808  | -9223372036854775808..9223372036854775807",
                "share | 1e309                | 1.7976931348623157E308",
                "share | -1e309               | 1.7976931348623157E308",
            })
    void aNumberBeyondItsTypeIsOutOfRangeWithTheLimit(String member, String value, String limit) throws Exception {
        JsonNode problem = problem(post("{\"" + member + "\":" + value + "}"), 422, "invalid-value");
        assertThat(pointer(problem)).isEqualTo("/" + member);
        assertThat(problem.path("errors").path(0).path("limit").asString()).isEqualTo(limit);
    }

    @Test
    void anExponentBeyondAllReasonIsOutOfRange() throws Exception {
        assertThat(pointer(problem(post("{\"amount\":1e9999999999999}"), 422, "invalid-value")))
                .isEqualTo("/amount");
    }

    @Test
    void aNullInsideAListIsRefusedAtItsPlace() throws Exception {
        assertThat(pointer(problem(post("{\"tags\":[\"a\",null]}"), 400, "missing-member")))
                .startsWith("/tags");
    }

    @ParameterizedTest
    @ValueSource(strings = {"{\"rate\":{\"kind\":\"FIXED\"}}", "{\"rate\":{\"kind\":\"FIXED\",\"hertz\":null}}"})
    void aPrimitiveIsNeitherAbsentNorNull(String body) throws Exception {
        assertThat(pointer(problem(post(body), 400, "missing-member"))).isEqualTo("/rate/hertz");
    }

    @Test
    void whatAValueRefusesInItsConstructorIsToldInItsWords() throws Exception {
        JsonNode problem = problem(
                post("{\"source\":{\"modes\":[{\"lines\":1,\"ratio\":{\"numerator\":1,\"denominator\":0}}]}}"),
                422,
                "invalid-value");
        assertThat(pointer(problem)).isEqualTo("/source/modes/0/ratio");
        assertThat(message(problem)).isEqualTo("the denominator must not be zero");
    }

    @Test
    void whatAConstructorRequiresIsAskedFor() throws Exception {
        JsonNode problem = problem(post("{\"named\":{}}"), 422, "invalid-value");
        assertThat(pointer(problem)).isEqualTo("/named");
        assertThat(message(problem)).contains("name");
    }

    @Test
    void aDefectInAConstructorIsNotBlamedOnTheClient() throws Exception {
        problem(post("{\"careless\":{}}"), 500, "internal-error");
    }

    @Test
    void nestingIsReadToItsStatedDepthAndNoFurther() throws Exception {
        assertThat(postTree("[".repeat(64) + "]".repeat(64)).statusCode()).isEqualTo(200);
        JsonNode problem = problem(postTree("[".repeat(65) + "]".repeat(65)), 400, "json-too-complex");
        assertThat(problem.path("errors").path(0).path("limit").asString()).isEqualTo("64");
    }

    private HttpResponse<String> postTree(String json) throws Exception {
        return send(
                request("/echo/tree").header("Content-Type", "application/json").POST(BodyPublishers.ofString(json)));
    }

    @Test
    void aNumberOfAbsurdLengthIsRefused() throws Exception {
        problem(post("{\"amount\":1" + "0".repeat(100) + "}"), 400, "json-too-complex");
    }

    @Test
    void everyBrokenConstraintIsToldWithPointerAndLimitInFixedOrder() throws Exception {
        JsonNode problem = problem(
                post("{\"source\":{\"modes\":[{\"lines\":0},{\"lines\":1001},{\"lines\":1},{\"lines\":1}]}}"),
                422,
                "invalid-value");
        assertThat(problem.path("errors").toString())
                .isEqualTo("[{\"pointer\":\"/source/modes\",\"message\":\"size must be between 1 and 3\","
                        + "\"limit\":\"1..3\"},"
                        + "{\"pointer\":\"/source/modes/0/lines\",\"message\":\"must be greater than or equal to 1\","
                        + "\"limit\":\"1\"},"
                        + "{\"pointer\":\"/source/modes/1/lines\",\"message\":\"must be less than or equal to 1000\","
                        + "\"limit\":\"1000\"}]");
    }

    @Test
    void messagesDoNotChangeWithTheClientsLanguage() throws Exception {
        HttpResponse<String> answer = send(request("/echo")
                .header("Content-Type", "application/json")
                .header("Accept-Language", "de")
                .POST(BodyPublishers.ofString("{\"source\":{\"modes\":[{\"lines\":0}]}}")));
        assertThat(message(problem(answer, 422, "invalid-value"))).isEqualTo("must be greater than or equal to 1");
    }

    @Test
    void membersOfABodyThatIsAListArePointedAtByIndex() throws Exception {
        HttpResponse<String> answer = send(request("/echo/list")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("[{\"lines\":1},{\"lines\":0}]")));
        assertThat(pointer(problem(answer, 422, "invalid-value"))).isEqualTo("/1/lines");
    }
}
