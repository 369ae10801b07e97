package rasterfit.app.draft;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rasterfit.app.gear.ConverterBody;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.ExactFact;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.LinkBody;
import rasterfit.app.gear.NumberFact;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.WrittenName;
import rasterfit.gear.Assumptions;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Estimate;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Every number that the engine would assume of a draft is told, with the engine's own value. */
class AssumedFactsTest {
    private static final JsonMapper JSON = JsonMapper.shared();

    /** Members that nothing computes with, or that matter only beside another which no template writes. */
    private static final Set<String> OF_NO_MATTER = Set.of("seriesCapacitorsUf", "halfHeightAddedFields");

    private static final Map<String, Type> BODIES =
            Map.of("converters", ConverterBody.class, "displays", DisplayBody.class, "links", LinkBody.class);

    record Asked(String template, String answers) {
        @Override
        public String toString() {
            return template + " " + answers;
        }
    }

    static Stream<Asked> asked() {
        String input = "\"name\": \"X\", \"inputConnector\": \"SCART\", ";
        return Stream.of(
                new Asked("digital-adapter", "{" + input + "\"inputFormat\": \"RGB\"}"),
                new Asked("digital-adapter", "{" + input + "\"inputFormat\": \"CVBS\", \"lines\": \"KEPT\"}"),
                new Asked("line-repeater", "{" + input + "\"inputFormats\": [\"RGB\", \"YC\"], \"multiples\": [4]}"),
                new Asked("raster-scaler", "{" + input + "\"inputFormats\": [\"RGB\"]}"),
                new Asked(
                        "raster-scaler",
                        "{" + input + "\"inputFormats\": [\"YPBPR\"], \"fieldRate\": \"FOLLOWS_SOURCE\"}"),
                new Asked("transcoder", """
                        {"name": "X", "fromConnector": "SCART", "fromFormat": "YC", "toConnector": "SCART", "toFormat": "CVBS"}"""),
                new Asked(
                        "switch", "{\"name\": \"X\", \"connector\": \"HDMI\", \"formats\": [\"TMDS\"], \"ports\": 2}"),
                new Asked("tube-set", "{\"name\": \"X\", \"connector\": \"SCART\", \"formats\": [\"RGB\"]}"),
                new Asked(
                        "tube-set",
                        "{\"name\": \"X\", \"connector\": \"SCART\", \"formats\": [\"RGB\"], \"standards\": \"L625_50\"}"),
                new Asked("television", "{\"name\": \"X\", \"preset\": \"LOW_DELAY\"}"),
                new Asked("television", "{\"name\": \"X\", \"columns\": 640, \"rows\": 480}"),
                new Asked("monitor", "{\"name\": \"X\", \"columns\": 320, \"rows\": 200, \"connector\": \"DVI\"}"),
                new Asked("monitor", "{\"name\": \"X\", \"columns\": 1280, \"rows\": 1024, \"connector\": \"VGA\"}"));
    }

    @ParameterizedTest
    @MethodSource("asked")
    void everyNumberLeftOutIsTold(Asked asked) throws Exception {
        Template template = Templates.find(asked.template()).orElseThrow();
        Draft draft = drafted(template, asked.answers());
        List<String> absent = new ArrayList<>();
        Class<?> type = (Class<?>) BODIES.get(template.kind().path());
        numbersLeftOut(JSON.treeToValue(draft.item(), type), draft.item(), "", absent);
        List<String> told = draft.assumed().stream()
                .filter(fact -> !fact.written())
                .map(AssumedFact::of)
                .toList();
        assertThat(absent).isNotEmpty();
        assertThat(told).containsAll(absent);
        assertThat(draft.assumed()).allSatisfy(fact -> {
            assertThat(fact.reason()).isNotBlank();
            assertThat(fact.written()).as(fact.of()).isEqualTo(isThere(draft.item(), fact.of()));
        });
    }

    @Test
    void theValuesAreThoseOfTheEngine() throws Exception {
        Draft television = drafted(new TelevisionTemplate(), "{\"name\": \"X\", \"preset\": \"LOW_DELAY\"}");
        assertThat(value(television, "inputs/digital-1/lag"))
                .isEqualTo(json(Assumptions.displayLagMs(DisplayClass.TELEVISION, true, false)));
        assertThat(value(television, "inputs/digital-1/overscanPercent"))
                .isEqualTo(json(Assumptions.overscanPercent(DisplayClass.TELEVISION, false)));
        Draft scaler = drafted(
                new RasterScalerTemplate(),
                "{\"name\": \"X\", \"inputConnector\": \"SCART\", \"inputFormats\": [\"RGB\"]}");
        assertThat(value(scaler, "inputs/in/digitiser/clockJitterNs")).isEqualTo(json(Assumptions.DIGITISER_JITTER_NS));
        assertThat(value(scaler, "resyncMs")).isEqualTo(json(Assumptions.CONVERTER_RESYNC_MS));
        assertThat(value(scaler, "processing/scale/rateLocks/0/fieldStores").intValue())
                .isEqualTo(Assumptions.FIELD_STORES);
        // The documented default of a converter is 0.5 [0.05–2] s (assumption).
        assertThat(value(scaler, "resyncMs"))
                .isEqualTo(JSON.readTree("{\"least\": 50.0, \"typical\": 500.0, \"greatest\": 2000.0}"));
    }

    private static JsonNode json(Estimate estimate) {
        return JSON.readTree("{\"least\": " + estimate.least().toDouble() + ", \"typical\": "
                + estimate.typical().toDouble() + ", \"greatest\": "
                + estimate.greatest().toDouble() + "}");
    }

    private static JsonNode value(Draft draft, String of) {
        JsonNode value = draft.assumed().stream()
                .filter(fact -> fact.of().equals(of))
                .findFirst()
                .orElseThrow()
                .value();
        if (!value.isObject()) {
            return value;
        }
        // Numbers compare by value, however many decimals they are written with.
        ObjectNode plain = JSON.createObjectNode();
        value.properties()
                .forEach(member -> plain.put(member.getKey(), member.getValue().doubleValue()));
        return JSON.readTree(JSON.writeValueAsString(plain));
    }

    private static Draft drafted(Template template, String answers) {
        DraftRequestBody body = new DraftRequestBody((ObjectNode) JSON.readTree(answers), null);
        Faults faults = new Faults();
        Answers read = Answers.read(Place.root(faults), CommonAsks.of(template), body);
        assertThat(faults.errors()).isEmpty();
        Draft draft = new Draft("x", "X", "test");
        template.fill(read, draft.root());
        draft.item();
        return draft;
    }

    /** Paths of the numbers of a device that the document does not have, by the types into which it is read. */
    private static void numbersLeftOut(Object read, JsonNode written, String path, List<String> absent)
            throws Exception {
        for (RecordComponent component : read.getClass().getRecordComponents()) {
            String name = WrittenName.of(component);
            String at = path.isEmpty() ? name : path + "/" + name;
            component.getAccessor().setAccessible(true);
            Object member = component.getAccessor().invoke(read);
            boolean isNumber = component.getType() == NumberFact.class || component.getType() == ExactFact.class;
            if (isNumber && member == null && !OF_NO_MATTER.contains(name)) {
                absent.add(at);
            } else if (member instanceof List<?> elements) {
                for (int i = 0; i < elements.size(); i++) {
                    JsonNode element = written.path(name).get(i);
                    if (elements.get(i) instanceof Record inner) {
                        String step = element.path("id").asString(Integer.toString(i));
                        numbersLeftOut(inner, element, at + "/" + step, absent);
                    }
                }
            } else if (member instanceof Record inner && !isNumber) {
                numbersLeftOut(inner, written.path(name), at, absent);
            }
        }
    }

    private static boolean isThere(JsonNode document, String of) {
        JsonNode at = document;
        for (String step : of.split("/", -1)) {
            JsonNode list = at;
            at = !list.isArray()
                    ? list.path(step)
                    : list.valueStream()
                            .filter(element -> element.path("id").asString("").equals(step))
                            .findFirst()
                            .orElse(step.matches("\\d+") ? list.path(Integer.parseInt(step)) : list.path(-1));
        }
        return !at.isMissingNode();
    }
}
