package rasterfit.app.gear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Base64;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import rasterfit.edid.EdidBuilder;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Basis;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.LagReading;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Panel;
import rasterfit.gear.SinkLimits;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

class DisplayReaderTest {
    private static final String GRID =
            "\"panel\": {\"kind\": \"GRID\", \"pixels\": {\"columns\": 1920, \"rows\": 1080}}";
    private static final String TUBE = "\"panel\": {\"kind\": \"TUBE\"}";
    private static final String COMPONENT =
            "{\"connector\": \"RCA_3\", \"accepts\": [{\"format\": \"YPBPR\", \"syncs\": [\"SYNC_ON_LUMA\"]}],"
                    + " \"lineRateHz\": {\"min\": \"15600\", \"max\": \"15800\"}}";

    private static Display display(String panel, String... inputs) {
        return Bodies.display("{" + panel + ", \"inputs\": [" + String.join(",", inputs) + "]}");
    }

    @Test
    void menuStatesInheritTheirInputAndChangeSome() {
        Display display = display(GRID, """
                {"id": "digital-1", "connector": "HDMI", "timings": ["vic:16"], "overscanPercent": 1,
                 "aspectControls": ["FILL"], "lag": [{"ms": 9}],
                 "states": [{"id": "low-lag", "preset": "LOW_DELAY"},
                            {"id": "standard", "overscanPercent": 2.5, "lag": [{"ms": {"least": 40, "greatest": 70}}]}]}""");

        assertThat(display.inputs())
                .extracting(DisplayInput::path)
                .containsExactly("digital-1/low-lag", "digital-1/standard");
        DisplayInput low = display.inputs().get(0);
        DisplayInput standard = display.inputs().get(1);
        assertThat(low.overscanPercent()).isEqualTo(Fact.known(1));
        assertThat(low.lowDelay()).isTrue();
        assertThat(low.lag().get(0).ms().least()).isEqualTo(Rational.of(9));
        assertThat(standard.overscanPercent()).isEqualTo(Fact.known(Rational.of(5, 2)));
        assertThat(standard.lowDelay()).isNull();
        assertThat(standard.lag().get(0).ms().greatest()).isEqualTo(Rational.of(70));
        assertThat(standard.aspectControls()).isEqualTo(low.aspectControls()).containsExactly(AspectControl.FILL);
    }

    @Test
    void theLongestPathOfTheProvenanceDecidesTheBasisOfALag() {
        String inputs = """
                "inputs": [{"id": "a", "timings": ["vic:16"], "lag": [{"ms": 9}],
                            "states": [{"id": "x"}, {"id": "y", "lag": [{"ms": 8}]}]},
                           {"id": "ab", "timings": ["vic:16"], "lag": [{"ms": 9}]}]""";
        List<DisplayInput> read =
                Bodies.display("{" + GRID + "," + inputs + """
                , "provenance": [{"of": "", "basis": "PUBLISHED"}, {"of": "inputs/a", "basis": "ASSUMED"},
                                 {"of": "inputs/a/lag", "basis": "MEASURED"}]}""").inputs();

        assertThat(read)
                .extracting(input -> input.lag().get(0).basis())
                .containsExactly(Basis.MEASURED, Basis.ASSUMED, Basis.PUBLISHED);
        // Without provenance what a document says is declared.
        assertThat(Bodies.display("{" + GRID + "," + inputs + "}")
                        .inputs()
                        .get(0)
                        .lag()
                        .get(0)
                        .basis())
                .isEqualTo(Basis.DECLARED);
    }

    @Test
    void aLagKeepsItsMethodTimingAndRow() {
        LagReading lag = display(GRID, """
                        {"timings": ["vic:16"], "lag": [{"timing": "vic:16", "ms": {"least": 9.1, "typical": 9.6,
                         "greatest": 10.1}, "method": "SPLIT_SIGNAL", "referenceRow": 540}]}""").inputs().get(0).lag().get(0);
        assertThat(lag.timing()).isEqualTo("vic:16");
        assertThat(lag.referenceRow()).isEqualTo(540);
        assertThat(lag.method()).isEqualTo(LagReading.Method.SPLIT_SIGNAL);
        assertThat(lag.ms().typical()).isEqualTo(Rational.of(48, 5));
    }

    @Test
    void monitorTimingsAreListedAndMeasuredByTheirNumber() {
        DisplayInput input = display(GRID, """
                        {"connector": "HDMI", "timings": ["dmt:0x52", "vic:8", "dmt:0x04"],
                         "lag": [{"timing": "dmt:0x52", "ms": 9}]}""").inputs().get(0);
        assertThat(input.lag().get(0).timing()).isEqualTo("dmt:0x52");
        assertThat(Objects.requireNonNull(input.sink()).listed())
                .extracting(listed -> listed.label())
                .containsExactly("dmt:0x52", "vic:8", "vic:8", "dmt:0x04");
        // VESA DMT 1.13, 0x04: 640 × 480, 800 × 525 in all, 25.175 MHz.
        SinkLimits.ListedRaster last = input.sink().listed().get(3);
        assertThat(last.raster().horizontalTotal()).isEqualTo(Rational.of(800));
        assertThat(last.raster().pixelClock()).isEqualTo(Frequency.ofHz(25_175_000));
        assertThat(last.pictureAspect()).isNull();
    }

    @Test
    void aTimingThatNoStandardHasIsAFaultAtItsPlace() {
        for (String unknown : List.of("dmt:0x59", "dmt:0x00", "dmt:82", "dmt:0x052", "vic:0", "vic:0x10", "cvt:1")) {
            assertThat(Bodies.faultsOfDisplay(
                            "{" + GRID + ", \"inputs\": [{\"timings\": [\"vic:16\", \"" + unknown + "\"]}]}"))
                    .as(unknown)
                    .containsExactly("/inputs/0/timings/1");
        }
        assertThat(Bodies.faultsOfDisplay("{" + GRID + ", \"inputs\": [{\"timings\": [\"DMT:0x52\"]}]}"))
                .containsExactly("/inputs/0/timings/0");
        assertThat(Bodies.faultsOfDisplay("{" + GRID + ", \"inputs\": [{\"timings\": [\"dmt:0x52\", \"dmt:0x52\"]}]}"))
                .containsExactly("/inputs/0/timings");
    }

    @Test
    void aDigitalInputCanBeTypedIn() {
        DisplayInput input = display(GRID, """
                        {"connector": "HDMI", "timings": ["vic:8"], "lineRateHz": {"min": "15000", "max": "70000"},
                         "maxPixelClockHz": "150000000", "continuous": true}""").inputs().get(0);
        SinkLimits sink = Objects.requireNonNull(input.sink());
        assertThat(input.accepts()).extracting(taken -> taken.format()).containsExactly(Format.TMDS);
        assertThat(input.lineRate()).isNull();
        assertThat(Objects.requireNonNull(sink.lineRate()).max()).isEqualTo(Frequency.ofHz(70_000));
        assertThat(sink.continuous()).isTrue();
        assertThat(sink.link()).isEqualTo(LinkKind.HDMI);
        // HDMI 1.3a §8.3.
        assertThat(sink.maxTmdsClock()).isEqualTo(Frequency.ofHz(165_000_000));
        // CTA-861-I table 1: VIC 8 has 262 or 263 lines.
        assertThat(sink.listed()).hasSize(2).allMatch(listed -> listed.label().equals("vic:8"));
        assertThat(sink.listed().stream()
                        .map(listed -> listed.raster().verticalTotal())
                        .distinct())
                .containsExactly(Rational.of(262), Rational.of(263));
    }

    @Test
    void anAnalogInputKeepsItsScanRange() {
        DisplayInput input = display(TUBE, COMPONENT).inputs().get(0);
        assertThat(input.sink()).isNull();
        assertThat(Objects.requireNonNull(input.lineRate()).contains(Frequency.ofHz(15_800)))
                .isTrue();
        assertThat(input.aspectControls()).containsExactly(AspectControl.FILL);
    }

    @Test
    void theScanRangeOfAnAnalogEdidIsWidenedByItsRounding() {
        String edid = Base64.getEncoder()
                .encodeToString(
                        EdidBuilder.analog(3).rangeLimits(50, 90, 30, 70, 110).build());
        DisplayInput input = display(TUBE, "{\"connector\": \"VGA\", \"edidBase64\": \"" + edid + "\"}")
                .inputs()
                .get(0);
        // E-EDID table 3.26 rounds to whole kHz: ±0.5 kHz (assumption).
        assertThat(Objects.requireNonNull(input.lineRate()).min()).isEqualTo(Frequency.ofHz(29_500));
        assertThat(input.lineRate().max()).isEqualTo(Frequency.ofHz(70_500));
        assertThat(Objects.requireNonNull(input.fieldRate()).max()).isEqualTo(Frequency.ofHz(181, 2));
        assertThat(input.accepts().get(0).format()).isEqualTo(Format.RGB);
    }

    @Test
    void theClassIsTakenFromThePanelOrAssumed() {
        assertThat(display(TUBE, COMPONENT).displayClass()).isEqualTo(DisplayClass.TUBE);
        Display typedIn = display(GRID, COMPONENT);
        assertThat(typedIn.displayClass()).isEqualTo(DisplayClass.TELEVISION);
        assertThat(typedIn.assumptions()).anyMatch(text -> text.contains("television is assumed"));
        Display stated = display("\"class\": \"PROJECTOR\", " + GRID, COMPONENT);
        assertThat(stated.displayClass()).isEqualTo(DisplayClass.PROJECTOR);
        assertThat(stated.assumptions()).noneMatch(text -> text.contains("class"));
    }

    @Test
    void aTubeIsFourByThreeUnlessItSaysOtherwise() {
        assertThat(display(TUBE, COMPONENT).panel()).isEqualTo(new Panel.Tube(Rational.of(4, 3)));
        assertThat(display("\"panel\": {\"kind\": \"TUBE\", \"aspect\": \"16:9\"}", COMPONENT)
                        .panel())
                .isEqualTo(new Panel.Tube(Rational.of(16, 9)));
    }

    @Test
    void anEdidAndTypedInLimitsContradictEachOther() {
        String edid = Base64.getEncoder().encodeToString(EdidBuilder.digital(3).build());
        assertThat(Bodies.faultsOfDisplay("{" + GRID + ", \"inputs\": [{\"edidBase64\": \"" + edid
                        + "\", \"timings\": [\"vic:16\"], \"maxTmdsClockHz\": \"165000000\"}]}"))
                .containsExactly("/inputs/0/timings", "/inputs/0/maxTmdsClockHz");
    }

    @Test
    void aFaultOfAnInheritedMemberIsToldOnceAndAtTheInput() {
        assertThat(Bodies.faultsOfDisplay("{" + GRID + ", \"inputs\": [{\"timings\": [\"vic:999\"],"
                        + " \"states\": [{\"id\": \"a\"}, {\"id\": \"b\", \"overscanPercent\": 80}]}]}"))
                .containsExactly("/inputs/0/timings/0", "/inputs/0/states/1/overscanPercent");
    }

    @Test
    void anAnalogInputSaysWhatItTakes() {
        assertThat(Bodies.faultsOfDisplay("{" + GRID + ", \"inputs\": [{\"connector\": \"SCART\"}]}"))
                .containsExactly("/inputs/0/accepts");
    }

    @Test
    void timingsOfOtherStandardsAreNotKnownYet() {
        assertThat(Bodies.faultsOfDisplay("{" + GRID + ", \"inputs\": [{\"timings\": [\"dmt:82\", \"sixteen\"]}]}"))
                .containsExactly("/inputs/0/timings/0", "/inputs/0/timings/1");
    }
}
