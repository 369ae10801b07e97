package rasterfit.app.match;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.boot.info.BuildProperties;
import rasterfit.app.access.Caller;
import rasterfit.app.answer.EngineVersion;
import rasterfit.app.belongings.Belongings;
import rasterfit.app.belongings.Owned;
import rasterfit.app.belongings.Owned.OwnedDisplay;
import rasterfit.app.belongings.Owned.OwnedSource;
import rasterfit.app.fuzz.RequestSeeds;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.gear.GearReader;
import rasterfit.app.problem.FuzzJson;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.LagReading;
import rasterfit.gear.Link;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.RasterTiming;
import rasterfit.upkeep.InputReading;
import rasterfit.upkeep.InputTest;
import rasterfit.upkeep.LagMeasurement;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A match with what somebody owns, against the demo catalogue: ../shared/API.md and section 9 of DOMAIN.md. */
class OwnedMatchTest {
    private static final Catalogue DEMO = GearReader.catalogue(
            FuzzJson.read(RequestSeeds.demo().toString().getBytes(UTF_8), CatalogueBody.class), 17);
    private static final LocalDate DAY = LocalDate.of(2026, 3, 9);
    private static final RasterTiming FULL_HD = Cta861.find(16).orElseThrow().timing();

    private final Map<String, OwnedSource> sources = new LinkedHashMap<>();
    private final Map<String, OwnedDisplay> displays = new LinkedHashMap<>();
    private final Map<String, Converter> converters = new LinkedHashMap<>();
    private final Map<String, Link> links = new LinkedHashMap<>();
    private final List<String> missing = new ArrayList<>();

    OwnedMatchTest() {
        converters.put("my-tarn", converter("tarn-b"));
        links.put("my-hdmi-lead", link("hdmi-lead"));
        links.put("my-av-lead", link("quillon-av-scart"));
    }

    private static Converter converter(String id) {
        return present(DEMO.converters().get(id));
    }

    private static Link link(String id) {
        return present(DEMO.links().get(id));
    }

    private static <T> T present(@Nullable T value) {
        assertThat(value).isNotNull();
        return value;
    }

    /** The display of the demo with one digital input in two menu states. */
    private void owned(String item, List<InputReading> readings, List<InputTest> tests) {
        Display display = present(DEMO.displays().get("kyloe-55"));
        displays.put(item, new OwnedDisplay("kyloe-55", display, "2.1", readings, tests));
    }

    private static InputTest tested(DisplayTest.Outcome outcome, String firmware) {
        return new InputTest("digital-1", null, new DisplayTest(FULL_HD, outcome, firmware, DAY));
    }

    private static InputReading read(Integer... counts) {
        return new InputReading(
                "digital-1",
                "low-lag",
                DAY,
                new LagMeasurement(null, LagReading.Method.SPLIT_SIGNAL, null, Rational.of(1000), List.of(counts)));
    }

    private static ObjectNode request() {
        return (ObjectNode) MatchRequests.JSON.readTree("""
                { "source": {"catalogueId": "quillon-16"},
                  "display": {"catalogueId": "kyloe-55", "input": "digital-1/low-lag"},
                  "equipment": {"collectionId": "shelf"}, "top": 1000 }
                """);
    }

    private static ObjectNode request(boolean fromCatalogue) {
        ObjectNode request = request();
        MatchRequests.object(request, "/equipment").put("fromCatalogue", fromCatalogue);
        return request;
    }

    private MatchAnswer answer(ObjectNode request) {
        StaticListableBeanFactory beans = new StaticListableBeanFactory();
        Belongings belongings = (owner, id, catalogue) -> owner.equals("local") && id.equals("shelf")
                ? Optional.of(new Owned(id, 7, sources, displays, converters, links, missing))
                : Optional.empty();
        beans.addBean("belongings", belongings);
        MatchService service = new MatchService(
                revision -> DEMO,
                beans.getBeanProvider(Belongings.class),
                () -> Caller.LOCAL,
                new MatchProperties(2_000_000, Duration.ofMinutes(1)),
                new EngineVersion(beans.getBeanProvider(BuildProperties.class)));
        return service.match(FuzzJson.read(request.toString().getBytes(UTF_8), MatchRequestBody.class), 0);
    }

    private JsonNode json(ObjectNode request) {
        return MatchRequests.JSON.readTree(FuzzJson.written(answer(request)));
    }

    private ProblemException refused(ObjectNode request) {
        return catchThrowableOfType(ProblemException.class, () -> answer(request));
    }

    private static List<String> pointers(ProblemException problem) {
        return problem.errors().stream().map(ProblemError::pointer).toList();
    }

    /** {@code my-tarn (owned)}, {@code tarn-b}: all converters and links in some chain. */
    private static Set<String> parts(JsonNode answer) {
        Set<String> parts = new TreeSet<>();
        answer.path("ranked")
                .forEach(setup -> setup.path("route").forEach(step -> {
                    String stage = step.path("stage").asString();
                    if (stage.equals("CABLE") || stage.equals("CONVERTER")) {
                        parts.add(
                                step.path("id").asString() + (step.path("owned").asBoolean(false) ? " (owned)" : ""));
                    }
                }));
        return parts;
    }

    private static List<String> messages(JsonNode answer, String rule) {
        List<String> messages = new ArrayList<>();
        answer.path("ranked")
                .forEach(setup -> setup.path("findings").forEach(finding -> {
                    if (finding.path("rule").asString().equals(rule)) {
                        messages.add(finding.path("message").asString());
                    }
                }));
        return messages;
    }

    private static List<String> acceptances(JsonNode answer, String listedAs) {
        List<String> all = new ArrayList<>();
        answer.path("ranked")
                .forEach(setup -> setup.path("modeSettings").forEach(setting -> {
                    if (setting.at("/measures/listedAs").asString("").equals(listedAs)) {
                        all.add(setting.at("/measures/acceptance").asString());
                    }
                }));
        return all;
    }

    @Test
    void withACollectionOnlyWhatIsOwnedTakesPartAndCostsNothing() {
        JsonNode answer = json(request());

        assertThat(parts(answer)).containsExactly("my-av-lead (owned)", "my-hdmi-lead (owned)", "my-tarn (owned)");
        answer.path("ranked").forEach(setup -> {
            assertThat(setup.at("/price/amount").asString()).isEqualTo("0");
            assertThat(setup.at("/price/unpriced").size()).isZero();
        });
        assertThat(answer.path("catalogueRevision").asLong()).isEqualTo(17);
        assertThat(answer.path("collectionRevision").asLong()).isEqualTo(7);
    }

    @Test
    void withoutACollectionNothingIsToldOfOne() {
        ObjectNode request = request();
        request.remove("equipment");
        assertThat(FuzzJson.written(answer(request)))
                .doesNotContain("collectionRevision")
                .doesNotContain("\"owned\"");
    }

    @Test
    void fromTheCatalogueTheRestCanBeBought() {
        JsonNode answer = json(request(true));

        assertThat(parts(answer)).contains("my-tarn (owned)", "my-hdmi-lead (owned)", "tarn-b", "hdmi-lead", "pikelaw");
        // The demo's prices in EUR: the second lead is 8.00, the converter 95.00 to 120.00, so 115.50 for both and
        // nothing
        // where both are owned.
        Map<String, String> prices = new LinkedHashMap<>();
        answer.path("ranked").forEach(setup -> {
            List<String> ids = new ArrayList<>();
            setup.path("route").forEach(step -> ids.add(step.path("id").asString()));
            prices.put(
                    String.join(" ", ids.subList(1, ids.size() - 1)),
                    setup.at("/price/amount").asString());
        });
        assertThat(prices)
                .containsEntry("my-av-lead my-tarn my-hdmi-lead", "0")
                .containsEntry("my-av-lead my-tarn hdmi-lead", "8.00")
                .containsEntry("my-av-lead tarn-b my-hdmi-lead", "107.50")
                .containsEntry("my-av-lead tarn-b hdmi-lead", "115.50");
    }

    @Test
    void anItemWithTheIdOfACataloguedThingStandsBesideIt() {
        converters.clear();
        converters.put("tarn-b", converter("tarn-b"));

        assertThat(parts(json(request(true)))).contains("tarn-b", "tarn-b (owned)");
    }

    @Test
    void aChainThatNothingMendsNamesItsOwnedParts() {
        ObjectNode request = request();
        request.set("limits", MatchRequests.JSON.readTree("[{\"measure\": \"totalLatencyMs\", \"atMost\": 0.001}]"));
        List<String> routes = json(request)
                .path("refused")
                .valueStream()
                .filter(refusal -> refusal.path("rule").asString().equals("limit.totalLatencyMs"))
                .map(refusal -> refusal.at("/nearest/route").toString())
                .toList();
        assertThat(routes).singleElement().asString().contains("owned:my-av-lead", "owned:my-tarn:");
    }

    @Test
    void twoPiecesOfOneModelStayTwo() {
        converters.put("spare-tarn", converter("tarn-b"));

        assertThat(parts(json(request()))).contains("my-tarn (owned)", "spare-tarn (owned)");
    }

    @Test
    void describedGearStandsInThePlaceOfAnItemWithItsId() {
        ObjectNode request = request();
        ArrayNode described = MatchRequests.object(request, "/equipment").putArray("converters");
        described.add(converterOfTheDemo("tarn-b").put("id", "my-tarn"));

        JsonNode answer = json(request);
        assertThat(parts(answer)).containsExactly("my-av-lead (owned)", "my-hdmi-lead (owned)", "my-tarn");
        assertThat(answer.at("/ranked/0/price/amount").asString()).isEqualTo("107.50");
    }

    private static ObjectNode converterOfTheDemo(String id) {
        for (JsonNode converter : RequestSeeds.demo().path("converters")) {
            if (converter.path("id").asString().equals(id)) {
                return (ObjectNode) converter.deepCopy();
            }
        }
        throw new AssertionError(id);
    }

    @Test
    void aDisplayIsNamedByItsItemAndToldByIt() {
        owned("my-kyloe", List.of(), List.of());
        sources.put("my-quillon", new OwnedSource(present(DEMO.sources().get("quillon-16")), null));
        ObjectNode request = request();
        MatchRequests.object(request, "/display").remove("catalogueId");
        MatchRequests.object(request, "/display").put("itemId", "my-kyloe");
        MatchRequests.object(request, "/source").remove("catalogueId");
        MatchRequests.object(request, "/source").put("itemId", "my-quillon");

        JsonNode route = json(request).at("/ranked/0/route");
        route.forEach(step -> assertThat(step.path("owned").asBoolean(false)).isTrue());
        assertThat(route.path(route.size() - 1).path("id").asString()).isEqualTo("my-kyloe");
        assertThat(route.path(0).path("name").asString()).isEqualTo("Quillon 16");
    }

    @Test
    void theOnlyOwnedDisplayOfAModelBringsWhatItsOwnerFoundOut() {
        owned("my-kyloe", List.of(read(9, 9, 9, 9)), List.of(tested(DisplayTest.Outcome.SHOWN, "2.1")));
        ObjectNode request = request();
        MatchRequests.object(request, "/equipment").putArray("converters").add(converterOfTheDemo("pikelaw"));

        JsonNode answer = json(request);
        assertThat(acceptances(answer, "vic:16")).isNotEmpty().containsOnly("TESTED");
        JsonNode best = answer.at("/ranked/0");
        JsonNode route = best.path("route");
        assertThat(route.path(route.size() - 1).path("id").asString()).isEqualTo("kyloe-55");
        assertThat(route.path(route.size() - 1).path("owned").asBoolean(false)).isTrue();
        // Four equal counts of a camera of 1000 frames a second: 9 ms, and one frame open on either side.
        JsonNode lag = best.at("/modeSettings/0/measures/displayLagMs");
        assertThat(lag.path("typical").asInt()).isEqualTo(9);
        assertThat(lag.path("least").asInt()).isEqualTo(8);
        assertThat(lag.path("greatest").asInt()).isEqualTo(10);
        assertThat(lag.path("basis").asString()).isEqualTo("MEASURED");
        assertThat(messages(answer, "display.lag-measured-by-owner"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("2026-03-09", "in place of"));
        assertThat(messages(answer, "display.own-test-shown"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("2026-03-09 with firmware 2.1"));
        JsonNode tested =
                MatchRequests.JSON.readTree(FuzzJson.written(answer(request))).findValue("tested");
        assertThat(tested.path("outcome").asString()).isEqualTo("SHOWN");
        assertThat(tested.path("on").asString()).isEqualTo("2026-03-09");
        assertThat(tested.path("firmware").asString()).isEqualTo("2.1");
    }

    @Test
    void whatStayedBlankIsRefusedAndWhatAnotherFirmwareDidIsOnlyTold() {
        ObjectNode request = request();
        MatchRequests.object(request, "/equipment").putArray("converters").add(converterOfTheDemo("pikelaw"));

        owned("my-kyloe", List.of(), List.of(tested(DisplayTest.Outcome.BLANK, "2.1")));
        JsonNode blank = json(request);
        assertThat(acceptances(blank, "vic:16")).isEmpty();
        assertThat(blank.path("refused")
                        .valueStream()
                        .map(refusal -> refusal.path("rule").asString()))
                .contains("display.own-test-blank");

        owned("my-kyloe", List.of(), List.of(tested(DisplayTest.Outcome.BLANK, "1.0")));
        JsonNode outdated = json(request);
        assertThat(acceptances(outdated, "vic:16")).isNotEmpty().doesNotContain("TESTED");
        assertThat(messages(outdated, "display.own-test-outdated")).isNotEmpty();
    }

    @Test
    void ofTwoDisplaysOfAModelOneHasToBeNamedByItsItem() {
        owned("in-the-parlour", List.of(), List.of(tested(DisplayTest.Outcome.BLANK, "2.1")));
        owned("in-the-attic", List.of(), List.of());

        JsonNode answer = json(request());
        assertThat(messages(answer, "collection.which-display"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("in-the-parlour", "in-the-attic", "itemId"));
        assertThat(messages(answer, "display.own-test-shown")).isEmpty();
    }

    @Test
    void evidenceThatFindsNoInputIsTold() {
        InputTest elsewhere =
                new InputTest("digital-9", null, new DisplayTest(FULL_HD, DisplayTest.Outcome.SHOWN, null, DAY));
        owned("my-kyloe", List.of(), List.of(elsewhere));
        missing.add("old-box");

        JsonNode answer = json(request());
        assertThat(messages(answer, "collection.evidence-without-input"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("input digital-9"));
        assertThat(messages(answer, "collection.item-without-gear"))
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message).contains("old-box"));
    }

    @Test
    void aCollectionThatIsNotThereIsToldAtItsPlaceAlone() {
        ObjectNode request = request();
        MatchRequests.object(request, "/equipment").put("collectionId", "somebody-elses");
        MatchRequests.object(request, "/display").remove("catalogueId");
        MatchRequests.object(request, "/display").put("itemId", "my-kyloe");

        ProblemException problem = refused(request);
        assertThat(problem.type()).isEqualTo(ProblemType.INVALID_VALUE);
        assertThat(pointers(problem)).containsExactly("/equipment/collectionId");
    }

    @Test
    void anItemThatIsNotThereOrHasNoCollectionIsToldAtItsPlace() {
        missing.add("old-console");
        ObjectNode request = request();
        MatchRequests.object(request, "/display").remove("catalogueId");
        MatchRequests.object(request, "/display").put("itemId", "my-tarn");
        MatchRequests.object(request, "/source").remove("catalogueId");
        MatchRequests.object(request, "/source").put("itemId", "old-console");
        ProblemException unknown = refused(request);
        assertThat(unknown.type()).isEqualTo(ProblemType.INVALID_VALUE);
        assertThat(pointers(unknown)).containsExactly("/source/itemId", "/display/itemId");
        assertThat(unknown.errors().stream().map(ProblemError::message).collect(Collectors.joining()))
                .contains("gone", "no display with this id");

        request.remove("equipment");
        assertThat(pointers(refused(request))).containsExactly("/source/itemId", "/display/itemId");
    }

    @Test
    void aDisplayIsNamedInOneWayOnly() {
        owned("my-kyloe", List.of(), List.of());
        ObjectNode request = request();
        MatchRequests.object(request, "/display").put("itemId", "my-kyloe");
        ProblemException problem = refused(request);
        assertThat(problem.type()).isEqualTo(ProblemType.WRONG_TYPE);
        assertThat(pointers(problem)).containsExactly("/display");
    }

    @Test
    void anItemThatIsOneVariantIsNoOther() {
        sources.put("my-wendrel", new OwnedSource(present(DEMO.sources().get("wendrel")), "625-rev1"));
        ObjectNode request = request(true);
        request.set("source", MatchRequests.JSON.readTree("{\"itemId\": \"my-wendrel\"}"));
        JsonNode answer = json(request);
        // The variant for 625 lines has about 50 fields a second, the other about 60 (CTA-861-I §4).
        String fieldRate =
                answer.at("/ranked/0/modeSettings/0/outputTiming/fieldRateHz").asString();
        assertThat(Rational.parse(fieldRate).toDouble()).isBetween(49.5, 50.5);

        MatchRequests.object(request, "/source").put("variantId", "525-rev1");
        assertThat(pointers(refused(request))).containsExactly("/source/variantId");
        MatchRequests.object(request, "/source").put("variantId", "625-rev1");
        assertThat(json(request)).isEqualTo(answer);
    }
}
