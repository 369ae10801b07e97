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
import org.jspecify.annotations.Nullable;
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
import tools.jackson.databind.node.ObjectNode;

/** A collection of some things of the demo catalogue, and requests with it: what the tests of owned gear begin with. */
final class Shelf {
    static final Catalogue DEMO = GearReader.catalogue(
            FuzzJson.read(RequestSeeds.demo().toString().getBytes(UTF_8), CatalogueBody.class), 17);
    static final LocalDate DAY = LocalDate.of(2026, 3, 9);
    static final RasterTiming FULL_HD = Cta861.find(16).orElseThrow().timing();

    final Map<String, OwnedSource> sources = new LinkedHashMap<>();
    final Map<String, OwnedDisplay> displays = new LinkedHashMap<>();
    final Map<String, Converter> converters = new LinkedHashMap<>();
    final Map<String, Link> links = new LinkedHashMap<>();
    final List<String> missing = new ArrayList<>();

    Shelf() {
        converters.put("my-tarn", converter("tarn-b"));
        links.put("my-hdmi-lead", link("hdmi-lead"));
        links.put("my-av-lead", link("quillon-av-scart"));
    }

    static Converter converter(String id) {
        return present(DEMO.converters().get(id));
    }

    static Link link(String id) {
        return present(DEMO.links().get(id));
    }

    static <T> T present(@Nullable T value) {
        assertThat(value).isNotNull();
        return value;
    }

    /** The display of the demo with one digital input in two menu states. */
    void owned(String item, List<InputReading> readings, List<InputTest> tests) {
        Display display = present(DEMO.displays().get("kyloe-55"));
        displays.put(item, new OwnedDisplay("kyloe-55", display, "2.1", readings, tests));
    }

    static InputTest tested(DisplayTest.Outcome outcome, String firmware) {
        return new InputTest("digital-1", null, new DisplayTest(FULL_HD.raster(), outcome, firmware, DAY));
    }

    static InputReading read(Integer... counts) {
        return new InputReading(
                "digital-1",
                "low-lag",
                DAY,
                new LagMeasurement(null, LagReading.Method.SPLIT_SIGNAL, null, Rational.of(1000), List.of(counts)));
    }

    static ObjectNode request() {
        return (ObjectNode) MatchRequests.JSON.readTree("""
                { "source": {"catalogueId": "quillon-16"},
                  "display": {"catalogueId": "kyloe-55", "input": "digital-1/low-lag"},
                  "equipment": {"collectionId": "shelf"}, "top": 1000 }
                """);
    }

    static ObjectNode request(boolean fromCatalogue) {
        ObjectNode request = request();
        MatchRequests.object(request, "/equipment").put("fromCatalogue", fromCatalogue);
        return request;
    }

    MatchAnswer answer(ObjectNode request) {
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

    JsonNode json(ObjectNode request) {
        return MatchRequests.JSON.readTree(FuzzJson.written(answer(request)));
    }

    ProblemException refused(ObjectNode request) {
        return catchThrowableOfType(ProblemException.class, () -> answer(request));
    }

    static List<String> pointers(ProblemException problem) {
        return problem.errors().stream().map(ProblemError::pointer).toList();
    }

    /** {@code my-tarn (owned)}, {@code tarn-b}: all converters and links in some chain. */
    static Set<String> parts(JsonNode answer) {
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

    static List<String> messages(JsonNode answer, String rule) {
        List<String> messages = new ArrayList<>();
        answer.path("ranked")
                .forEach(setup -> setup.path("findings").forEach(finding -> {
                    if (finding.path("rule").asString().equals(rule)) {
                        messages.add(finding.path("message").asString());
                    }
                }));
        return messages;
    }

    static List<String> acceptances(JsonNode answer, String listedAs) {
        List<String> all = new ArrayList<>();
        answer.path("ranked")
                .forEach(setup -> setup.path("modeSettings").forEach(setting -> {
                    if (setting.at("/measures/listedAs").asString("").equals(listedAs)) {
                        all.add(setting.at("/measures/acceptance").asString());
                    }
                }));
        return all;
    }

    static ObjectNode converterOfTheDemo(String id) {
        for (JsonNode converter : RequestSeeds.demo().path("converters")) {
            if (converter.path("id").asString().equals(id)) {
                return (ObjectNode) converter.deepCopy();
            }
        }
        throw new AssertionError(id);
    }
}
