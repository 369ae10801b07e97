package rasterfit.app.collection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

/** Readings, tests, notes and due work over HTTP. */
class UpkeepCallTest extends CollectionsServed {
    private static final String READING = """
            {"item": "set", "input": "digital-1", "timing": "vic:16", "cameraFramesPerSecond": "240",
             "framesCounted": [4, 5, 4, 6, 5], "method": "SPLIT_SIGNAL", "referenceRow": 540, "on": "2026-05-01"}""";

    @Test
    void aReadingIsToldWhatItsCountsSayTogether() throws Exception {
        String path = shelf("reading");
        HttpResponse<String> created = created(post(path + "/lag-readings", READING));
        JsonNode statistics = JSON.readTree(created.body()).path("statistics");
        // By hand, in frames of 1000/240 ms: mean 24/5; s² = Σ(c − 4.8)²/4 = 2.8/4; t(0.975; 4) = 2.776 (table, from
        // memory).
        double frame = 1000 / 240.0;
        double half = 2.776445 * Math.sqrt(0.7 / 5) * frame;
        assertThat(statistics.path("meanMs").asDouble()).isCloseTo(4.8 * frame, within(1e-4));
        assertThat(statistics.path("deviationMs").asDouble()).isCloseTo(Math.sqrt(0.7) * frame, within(1e-4));
        assertThat(statistics.at("/confidenceMs/least").asDouble()).isCloseTo(4.8 * frame - half, within(1e-3));
        assertThat(statistics.at("/togetherMs/greatest").asDouble())
                .isCloseTo(4.8 * frame + half + frame, within(1e-3));
        // What was answered can be sent back.
        String location = created.headers().firstValue("Location").orElseThrow();
        ok(put(location, created.body(), tag(created)));
        assertThat(read(path + "/lag-readings").at("/items/0/statistics/meanMs").asDouble())
                .isEqualTo(20);
    }

    @Test
    void ofTwoReadingsOfADayTheOneWrittenLastCounts() throws Exception {
        String both = shelf("same-day");
        created(put(both + "/lag-readings/zz-first", READING.replace("[4, 5, 4, 6, 5]", "[10, 10]"), null));
        created(put(both + "/lag-readings/aa-second", READING.replace("[4, 5, 4, 6, 5]", "[2, 2]"), null));
        String second = shelf("same-day-second");
        created(put(second + "/lag-readings/only", READING.replace("[4, 5, 4, 6, 5]", "[2, 2]"), null));
        JsonNode lag = JSON.readTree(match("same-day").body()).findValue("displayLagMs");
        assertThat(lag)
                .isNotNull()
                .isEqualTo(JSON.readTree(match("same-day-second").body()).findValue("displayLagMs"));
    }

    @Test
    void aReadingTakesThePlaceOfWhatTheCatalogueSays() throws Exception {
        String path = shelf("measured");
        assertThat(match("measured").body()).doesNotContain("display.lag-measured-by-owner");
        created(post(path + "/lag-readings", READING.replace("\"timing\": \"vic:16\", ", "")));
        String answer = match("measured").body();
        assertThat(answer).contains("display.lag-measured-by-owner").contains("\"basis\":\"MEASURED\"");
    }

    @Test
    void aTestThatStayedBlankRefusesItsRaster() throws Exception {
        String path = shelf("tested");
        JsonNode raster = best("tested").at("/modeSettings/0/outputTiming");
        assertThat(raster.has("pixelClockHz")).isTrue();
        String result = "{\"item\": \"set\", \"input\": \"digital-1\", \"raster\": " + raster
                + ", \"outcome\": \"BLANK\", \"firmware\": \"1.2\", \"on\": \"2026-05-02\"}";
        created(post(path + "/test-results", result));
        JsonNode after = JSON.readTree(match("tested").body());
        assertThat(after.path("refused").toString()).contains("display.own-test-blank");
        after.path("ranked")
                .forEach(setup ->
                        assertThat(setup.at("/modeSettings/0/outputTiming")).isNotEqualTo(raster));
        // With newer firmware the test does not decide any more.
        HttpResponse<String> set = get(path + "/items/set");
        ok(patch(path + "/items/set", "{\"firmware\": \"1.3\"}", tag(set)));
        assertThat(match("tested").body())
                .doesNotContain("\"rule\":\"display.own-test-blank\"")
                .contains("display.own-test-outdated");
    }

    private JsonNode best(String collection) throws Exception {
        return JSON.readTree(ok(match(collection)).body()).at("/ranked/0");
    }

    private HttpResponse<String> match(String collection) throws Exception {
        return post("/v1/matches", """
                {"display": {"itemId": "set"}, "source": {"itemId": "console"}, "top": 20,
                 "equipment": {"collectionId": "%s"}}""".formatted(collection));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"item\": \"set\"         | \"item\": \"box\"        | 422 | /item",
                "\"digital-1\"             | \"digital-9\"            | 422 | /input",
                "\"vic:16\"                | \"vic:999\"              | 422 | /timing",
                "\"240\"                   | \"0\"                    | 422 | /cameraFramesPerSecond",
                "\"240\"                   | 240                      | 400 | /cameraFramesPerSecond",
                "[4, 5, 4, 6, 5]           | []                       | 422 | /framesCounted",
                "[4, 5, 4, 6, 5]           | [4, -1]                  | 422 | /framesCounted/1",
                "[4, 5, 4, 6, 5]           | [4, 0.5]                 | 400 | /framesCounted/1",
                "\"SPLIT_SIGNAL\"          | \"GUESS\"                | 400 | /method",
                "\"2026-05-01\"            | \"May\"                  | 400 | /on",
            })
    void aBadReadingIsToldItsPlace(String good, String bad, int status, String pointer) throws Exception {
        String path = "/v1/collections/bad-readings";
        if (get(path).statusCode() == 404) {
            shelf("bad-readings");
        }
        assertThat(READING).contains(good);
        HttpResponse<String> answer = post(path + "/lag-readings", READING.replace(good, bad));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        assertThat(JSON.readTree(answer.body()).at("/errors/0/pointer").asString())
                .isEqualTo(pointer);
    }

    @Test
    void dueWorkComesByDayWithItsCautions() throws Exception {
        String path = shelf("due");
        // java.time: a month after 31 January is the last day of February, in a leap year the 29th.
        created(put(
                path + "/due/contacts",
                "{\"item\":\"console\",\"work\":\"CLEAN_CONTACTS\",\"everyMonths\":1,\"lastDoneOn\":\"2028-01-31\"}",
                null));
        created(put(
                path + "/due/battery",
                "{\"item\":\"console\",\"work\":\"CHECK_SAVE_BATTERY\",\"lastDoneOn\":\"2026-06-15\"}",
                null));
        created(put(
                path + "/due/dust",
                "{\"item\":\"box\",\"work\":\"OTHER\",\"text\":\"Dust it\",\"dueOn\":\"2027-01-01\"}",
                null));
        JsonNode due = read(path + "/due?asOf=2027-06-15").path("items");
        assertThat(due.valueStream().map(one -> one.path("id").asString()))
                .containsExactly("dust", "battery", "contacts");
        assertThat(due.valueStream().map(one -> one.path("nextOn").asString()))
                .containsExactly("2027-01-01", "2027-06-15", "2028-02-29");
        assertThat(due.valueStream().map(one -> one.path("overdue").asBoolean()))
                .containsExactly(true, false, false);
        assertThat(due.at("/1/cautions").toString()).contains("Batteries").contains("local rules");
        // Nobody knows what work that is told in words can do.
        assertThat(due.at("/0/cautions").toString()).contains("not known").contains("qualified");

        created(post(
                path + "/service-notes",
                "{\"item\":\"console\",\"work\":\"CHECK_SAVE_BATTERY\",\"on\":\"2027-03-01\"}"));
        created(post(
                path + "/service-notes",
                "{\"item\":\"box\",\"work\":\"OTHER\",\"text\":\"Dusted\",\"on\":\"2026-12-30\",\"done\":\"dust\"}"));
        JsonNode after = read(path + "/due?asOf=2027-06-15").path("items");
        assertThat(after.valueStream().map(one -> one.path("id").asString()))
                .as("what was due once is done, what recurs begins anew")
                .containsExactly("contacts", "battery");
        assertThat(after.valueStream().map(one -> one.path("nextOn").asString()))
                .isEqualTo(List.of("2028-02-29", "2028-03-01"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"item\": \"console\", \"work\": \"CLEAN_LENS\"}                                     | 400 | ''",
                "{\"item\": \"console\", \"work\": \"CLEAN_LENS\", \"everyMonths\": 3}                 | 400 | /lastDoneOn",
                "{\"item\": \"console\", \"work\": \"ADJUST_TUBE\", \"lastDoneOn\": \"2026-01-01\"}    | 400 | /everyMonths",
                "{\"item\": \"console\", \"work\": \"OTHER\", \"dueOn\": \"2026-01-01\"}               | 400 | /text",
                "{\"item\": \"ghost\", \"work\": \"CLEAN_LENS\", \"dueOn\": \"2026-01-01\"}            | 422 | /item",
                "{\"item\": \"console\", \"work\": \"CLEAN_LENS\", \"everyMonths\": 0, \"lastDoneOn\": \"2026-01-01\"} | 422 | /everyMonths",
            })
    void badDueWorkIsToldItsPlace(String body, int status, String pointer) throws Exception {
        String path = "/v1/collections/bad-due";
        if (get(path).statusCode() == 404) {
            shelf("bad-due");
        }
        HttpResponse<String> answer = post(path + "/due", body);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        assertThat(JSON.readTree(answer.body()).at("/errors/0/pointer").asString())
                .isEqualTo(pointer);
    }

    private static String once(String id, String dueOn) {
        return "{\"id\":\"" + id + "\",\"item\":\"box\",\"work\":\"CHECK_SUPPLY\",\"dueOn\":\"" + dueOn + "\"}";
    }

    private static String note(String on, String done) {
        return "{\"item\":\"box\",\"work\":\"CHECK_SUPPLY\",\"on\":\"" + on + "\"" + done + "}";
    }

    @Test
    void whatIsDueOnceIsDoneByTheNoteThatSaysSo() throws Exception {
        String path = shelf("due-once");
        created(post(path + "/service-notes", note("2024-03-01", "")));
        created(post(path + "/due", once("check", "2027-01-01")));
        assertThat(ids(read(path + "/due")))
                .as("the work of years ago was another")
                .containsExactly("check");
        assertThat(pointer(problem(
                        post(path + "/service-notes", note("2026-12-01", ",\"done\":\"other\"")),
                        422,
                        "invalid-value")))
                .isEqualTo("/done");
        assertThat(pointer(problem(
                        post(
                                path + "/service-notes",
                                note("2026-12-01", ",\"done\":\"check\"").replace("\"box\"", "\"set\"")),
                        422,
                        "invalid-value")))
                .isEqualTo("/done");
        String done = created(post(path + "/service-notes", note("2026-12-01", ",\"done\":\"check\"")))
                .headers()
                .firstValue("Location")
                .orElseThrow();
        assertThat(ids(read(path + "/due"))).isEmpty();
        assertThat(read(path + "/due/check").has("nextOn")).isFalse();
        // What a note names is kept, as it is of the same item.
        JsonNode kept = problem(delete(path + "/due/check"), 409, "conflict");
        assertThat(kept.path("detail").asString()).contains("service note");
        problem(patch(path + "/due/check", "{\"item\":\"set\"}", tag(get(path + "/due/check"))), 409, "conflict");
        assertThat(delete(done).statusCode()).isEqualTo(204);
        assertThat(ids(read(path + "/due"))).containsExactly("check");
    }

    @Test
    void dueWorkComesInPagesByDay() throws Exception {
        String path = shelf("due-paged");
        created(post(path + "/due", once("a", "2027-03-01")));
        created(post(path + "/due", once("b", "2027-01-01")));
        created(post(path + "/due", once("c", "2027-02-01")));
        created(post(path + "/due", once("d", "2027-02-01")));
        JsonNode first = read(path + "/due?size=2&asOf=2027-02-02");
        assertThat(ids(first)).containsExactly("b", "c");
        JsonNode rest = read(path + "/due?size=2&asOf=2027-02-02&cursor="
                + first.path("next").asString());
        assertThat(ids(rest)).containsExactly("d", "a");
        assertThat(rest.has("next")).isFalse();
        problem(
                get(path + "/due?cursor="
                        + read(path + "/items?size=1").path("next").asString()),
                400,
                "invalid-parameter");
    }

    @Test
    void onlyDueWorkIsLookedAtOnADay() throws Exception {
        String path = shelf("as-of");
        problem(get(path + "/items?asOf=2027-02-02"), 400, "invalid-parameter");
        problem(get(path + "/due?asOf=2027-02-30"), 400, "invalid-parameter");
        problem(get(path + "/due?asOf=%2B999999999-01-01"), 400, "invalid-parameter");
    }

    /** RFC 3339 writes years with four digits; java.time takes more, and fails where months go beyond its last day. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "due           | {\"item\":\"box\",\"work\":\"CHECK_SUPPLY\",\"lastDoneOn\":\"+999999999-12-31\"}                          | /lastDoneOn",
                "due           | {\"item\":\"box\",\"work\":\"CHECK_SUPPLY\",\"dueOn\":\"+12000-01-01\"}                                   | /dueOn",
                "due           | {\"item\":\"box\",\"work\":\"CHECK_SUPPLY\",\"dueOn\":\"-0044-03-15\"}                                    | /dueOn",
                "service-notes | {\"item\":\"box\",\"work\":\"CHECK_SUPPLY\",\"on\":\"+999999999-12-31\"}                                  | /on",
                "items         | {\"kind\":\"LINK\",\"catalogueId\":\"hdmi-lead\",\"acquiredOn\":\"1066-10-14\"}                            | /acquiredOn",
                "test-results  | {\"item\":\"set\",\"input\":\"digital-1\",\"timing\":\"vic:16\",\"outcome\":\"SHOWN\",\"on\":\"9999-01-01\"} | /on",
                "lag-readings  | {\"item\":\"set\",\"input\":\"digital-1\",\"cameraFramesPerSecond\":\"240\",\"framesCounted\":[1],\"method\":\"SPLIT_SIGNAL\",\"on\":\"1500-01-01\"} | /on",
            })
    void aDayLiesWhereGearCanBe(String section, String body, String pointer) throws Exception {
        String path = "/v1/collections/far-days";
        if (get(path).statusCode() == 404) {
            shelf("far-days");
        }
        assertThat(pointer(problem(post(path + "/" + section, body), 422, "invalid-value")))
                .isEqualTo(pointer);
    }

    @Test
    void aMemberThatAnswersAddIsKnownWhereItIsAddedOnly() throws Exception {
        String path = shelf("read-only");
        String body = named("LINK", "hdmi-lead", "\"statistics\": {}");
        assertThat(pointer(problem(post(path + "/items", body), 400, "unknown-member")))
                .isEqualTo("/statistics");
    }

    /** The last days of months, and leap years by the Gregorian rule: 2000 is one, 2100 is not. */
    @ParameterizedTest
    @CsvSource({
        "2026-01-31, 1, 2026-02-28",
        "2028-01-31, 1, 2028-02-29",
        "2026-08-31, 6, 2027-02-28",
        "2026-03-31, 1, 2026-04-30",
        "2028-02-29, 12, 2029-02-28",
        "2028-02-29, 48, 2032-02-29",
        "1999-11-30, 3, 2000-02-29",
        "2099-12-31, 2, 2100-02-28",
        "2026-12-15, 1, 2027-01-15",
    })
    void monthsAreThoseOfTheCalendar(String lastDoneOn, int months, String nextOn) throws Exception {
        String path = "/v1/collections/months";
        if (get(path).statusCode() == 404) {
            shelf("months");
        }
        HttpResponse<String> created = created(post(
                path + "/due",
                "{\"item\":\"box\",\"work\":\"CHECK_SUPPLY\",\"everyMonths\":" + months + ",\"lastDoneOn\":\""
                        + lastDoneOn + "\"}"));
        assertThat(JSON.readTree(created.body()).path("nextOn").asString()).isEqualTo(nextOn);
    }

    /** RFC 9110 §8.8.1: a strong tag changes whenever the answer does, whatever changed it. */
    @Test
    void theTagOfDueWorkChangesWithTheAnswerAndAnyOfThemMayWrite() throws Exception {
        String path = shelf("due-tag");
        HttpResponse<String> created = created(post(path + "/due", once("check", "2020-01-01")));
        HttpResponse<String> due = ok(get(path + "/due/check"));
        assertThat(tag(due)).isEqualTo(tag(created));
        assertThat(send(request(path + "/due/check").header("If-None-Match", tag(due)))
                        .statusCode())
                .isEqualTo(304);
        created(post(path + "/service-notes", note("2020-02-01", ",\"done\":\"check\"")));
        HttpResponse<String> done = ok(send(request(path + "/due/check").header("If-None-Match", tag(due))));
        assertThat(done.body()).isNotEqualTo(due.body());
        assertThat(tag(done)).isNotEqualTo(tag(due));
        // Nobody wrote to it, so whoever read it before may.
        HttpResponse<String> written = ok(patch(path + "/due/check", "{\"text\": \"Both of them\"}", tag(due)));
        problem(patch(path + "/due/check", "{\"text\": \"Late\"}", tag(done)), 412, "precondition-failed");
        ok(put(path + "/due/check", written.body(), tag(written)));
    }
}
