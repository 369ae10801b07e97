package rasterfit.app.gear;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.app.problem.ProblemError;
import rasterfit.gear.Basis;
import tools.jackson.databind.json.JsonMapper;

class ProvenancePathsTest {
    private static final JsonMapper JSON = JsonMapper.shared();

    private static final String CONVERTER = """
            {"name": "Tarn", "resyncMs": {"least": 1, "greatest": 2},
             "inputs": [{"id": "av", "connector": "SCART", "accepts": [{"format": "RGB", "syncs": ["COMPOSITE_SYNC"]}],
                         "lineRateHz": {"min": "15000", "max": "16500"},
                         "digitiser": {"maxSampleRateHz": "27000000", "samplesPerLine": [858, 864]}},
                        {"connector": "RCA_3", "accepts": [{"format": "YPBPR"}]}],
             "processing": [{"kind": "FORMAT_ONLY", "id": "pass"}],
             "outputs": [{"connector": "HDMI", "link": "HDMI"}],
             "provenance": [{"of": "%s", "basis": "PUBLISHED"}]}""";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "name",
                "inputs",
                "inputs/av",
                "inputs/av/lineRateHz",
                "inputs/av/lineRateHz/min",
                "inputs/av/accepts/0",
                "inputs/av/accepts/0/syncs/0",
                "inputs/av/digitiser/samplesPerLine",
                "inputs/av/digitiser/samplesPerLine/1",
                "inputs/1/connector",
                "processing/pass/kind",
                "outputs/0/link",
                "resyncMs",
                "resyncMs/least"
            })
    void aPathLeadsThroughMembersIdsAndIndexes(String of) {
        assertThat(faults(of)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "price",
                "firmware",
                "names",
                "inputs/component",
                "inputs/0",
                "inputs/2",
                "inputs/input-2",
                "inputs/av/lineRateHz/mid",
                "inputs/av/digitiser/samplesPerLine/2",
                "inputs/av/digitiser/clockJitterNs",
                "processing/pass/kind/x",
                "resyncMs/value",
                "resyncMs/bounds",
                "resyncMs/typical",
                "name/",
                "/name",
                "inputs//av"
            })
    void aPathToNothingIsAFaultAtItsPlace(String of) {
        assertThat(faults(of)).containsExactly("/provenance/0/of");
    }

    @Test
    void everyVariantOfAConsoleHasItsOwn() {
        SourceBody body = JSON.readValue("""
                {"name": "Quillon", "variants": [
                  {"outputs": [], "modes": [], "provenance": [{"of": "modes", "basis": "DECLARED"}]},
                  {"outputs": [], "modes": [], "provenance": [{"of": "", "basis": "DECLARED"},
                                                             {"of": "variants/1/modes", "basis": "DECLARED"}]}]}""", SourceBody.class);
        assertThat(faults(body)).containsExactly("/variants/1/provenance/1/of");
    }

    @Test
    void theDemoGearSpeaksOfItself() throws Exception {
        String demo = Files.readString(Path.of("..", "..", "db", "demo", "catalogue.json"));
        assertThat(demo).contains("\"provenance\"");
        assertThat(faults(JSON.readValue(demo, CatalogueBody.class))).isEmpty();
    }

    /** FORMAT.md: the longest prefix wins. */
    @ParameterizedTest
    @CsvSource({
        "'', DECLARED",
        "inputs/0, MEASURED",
        "inputs/0/lag, MEASURED",
        "inputs/0/lag/0, MEASURED",
        "inputs/0/lag/0/ms, MEASURED",
        "inputs/0/lag/1, DECLARED"
    })
    void aReadingHasTheBasisOfTheEntryThatLeadsToIt(String of, Basis expected) {
        Basis read = Bodies.display("""
                {"panel": {"kind": "TUBE"}, "inputs": [{"connector": "SCART", "accepts": [{"format": "RGB"}],
                 "lag": [{"ms": 1}, {"ms": 2}]}],
                 "provenance": [{"of": "", "basis": "DECLARED"}, {"of": "%s", "basis": "%s"}]}""".formatted(of, of.isEmpty() ? "DECLARED" : "MEASURED"))
                .inputs()
                .get(0)
                .lag()
                .get(0)
                .basis();
        assertThat(read).isEqualTo(expected);
    }

    @Test
    void aNoteHasItsLimits() {
        assertThat(noteFaults("two\\nlines")).isEmpty();
        assertThat(noteFaults("x".repeat(2000))).isEmpty();
        for (String bad : List.of("x".repeat(2001), "a\\tb", " ")) {
            assertThat(noteFaults(bad)).as(bad).containsExactly("/provenance/0/note");
        }
    }

    private static List<String> noteFaults(String note) {
        return Bodies.faultsOfDisplay("""
                {"panel": {"kind": "TUBE"}, "inputs": [{"connector": "SCART", "accepts": [{"format": "RGB"}]}],
                 "provenance": [{"of": "", "basis": "DECLARED", "note": "%s"}]}""".formatted(note));
    }

    private static List<String> faults(String of) {
        return faults(JSON.readValue(CONVERTER.formatted(of), ConverterBody.class));
    }

    private static List<String> faults(Record body) {
        Faults faults = new Faults();
        ProvenancePaths.check(Place.root(faults), body);
        return faults.errors().stream().map(ProblemError::pointer).toList();
    }
}
