package rasterfit.app.gear;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Fact;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Link;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.SamplesPerLine;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

class ConverterReaderTest {
    private static final String INPUT =
            "{\"connector\": \"SCART\", \"accepts\": [{\"format\": \"RGB\"}], \"digitiser\":"
                    + " {\"maxSampleRateHz\": \"110000000\", \"samplesPerLine\": %s}}";
    private static final String SCALE = """
            {"kind": "RASTER_SCALE", "timings": ["vic:16"], "vertical": {"factors": "ANY", "taps": 4, "maxCropLines": 48},
             "horizontal": {"factors": "WHOLE", "taps": 1},
             "rateLocks": [{"kind": "SOURCE_LOCKED", "pullPpm": 6000, "nominalHz": "60000/1001", "bufferLines": 48},
                           {"kind": "FREE_RUNNING", "ratesHz": ["60", "60000/1001"]}, {"kind": "VARIABLE_REFRESH"}]}""";
    private static final String DIGITAL = "{\"connector\": \"HDMI\", \"link\": \"HDMI\"}";

    private static Converter converter(String samples, String processing, String output) {
        return Bodies.converter("{\"name\": \"Tarn\", \"inputs\": [" + INPUT.formatted(samples) + "], \"processing\": ["
                + processing + "], \"outputs\": [" + output + "], \"resyncMs\": {\"least\": 100, \"greatest\": 900}}");
    }

    @Test
    void whatIsAbsentTakesItsDocumentedDefault() {
        Converter converter = converter("{\"min\": 640, \"max\": 2047}", SCALE, DIGITAL);
        ConverterInput input = converter.inputs().get(0);
        assertThat(input.scans()).isEqualTo(Set.of(Scan.PROGRESSIVE, Scan.INTERLACED));
        assertThat(input.halfHeight()).isEqualTo(HalfHeight.SHOWN);
        assertThat(input.lineRateResolutionPpm()).isEqualTo(Rational.of(2000));
        // HDMI 1.3a §8.3.
        assertThat(converter.outputs().get(0))
                .isInstanceOfSatisfying(
                        ConverterOutput.Digital.class,
                        digital -> assertThat(digital.maxTmdsClock()).isEqualTo(Frequency.ofHz(165_000_000)));
        assertThat(converter.settingsToTune().isUnknown()).isTrue();
    }

    @Test
    void aRangeIsARangeAndANumberIsKnown() {
        Converter converter = converter("{\"min\": 640, \"max\": 2047}", SCALE, DIGITAL);
        assertThat(converter.resyncMs()).isEqualTo(new Fact.Within(Rational.of(100), null, Rational.of(900)));
        assertThat(Bodies.converter("{\"name\": \"T\", \"inputs\": [{\"connector\": \"HDMI\", \"accepts\":"
                                + " [{\"format\": \"TMDS\"}]}], \"processing\": [{\"kind\": \"FORMAT_ONLY\","
                                + " \"pipelineUs\": 0.1}], \"outputs\": [" + DIGITAL + "]}")
                        .processing()
                        .get(0)
                        .pipelineUs())
                .isEqualTo(Fact.known(Rational.of(1, 10)));
    }

    @Test
    void samplesPerLineAreARangeOrAList() {
        assertThat(samples("{\"min\": 640, \"max\": 2047}")).isEqualTo(new SamplesPerLine.FreeRange(640, 2047));
        assertThat(samples("[858, 780]")).isEqualTo(new SamplesPerLine.FixedList(List.of(780, 858)));
    }

    private static SamplesPerLine samples(String written) {
        return Objects.requireNonNull(
                        converter(written, SCALE, DIGITAL).inputs().get(0).digitiser())
                .samplesPerLine();
    }

    @Test
    void aScalerKeepsItsTimingsAxesAndLocks() {
        Processing.RasterScale scale = (Processing.RasterScale)
                converter("[858]", SCALE, DIGITAL).processing().get(0);
        assertThat(scale.timings()).extracting(timing -> timing.label()).containsExactly("vic:16");
        assertThat(scale.timings().get(0).pictureAspect()).isEqualTo(Rational.of(16, 9));
        assertThat(scale.vertical().maxCrop()).isEqualTo(48);
        assertThat(scale.horizontal().maxCrop()).isZero();
        assertThat(scale.rateLocks())
                .containsExactly(
                        new RateLock.SourceLocked(Rational.of(6000), Frequency.ofHz(60_000, 1001), 48),
                        new RateLock.FreeRunning(List.of(Frequency.ofHz(60), Frequency.ofHz(60_000, 1001)), 2),
                        new RateLock.VariableRefresh(null));
    }

    @Test
    void aScalerOffersMonitorTimingsByTheirNumberToo() {
        Processing.RasterScale scale = (Processing.RasterScale)
                converter("[858]", SCALE.replace("\"vic:16\"", "\"vic:16\", \"dmt:0x44\""), DIGITAL)
                        .processing()
                        .get(0);
        assertThat(scale.timings()).extracting(timing -> timing.label()).containsExactly("vic:16", "dmt:0x44");
        // VESA DMT 1.13, 0x44: 1920 × 1200, reduced blanking, 154 MHz. A link signals no aspect with it.
        assertThat(scale.timings().get(1).timing().verticalActive()).isEqualTo(1200);
        assertThat(scale.timings().get(1).timing().pixelClock()).isEqualTo(Frequency.ofHz(154_000_000));
        assertThat(scale.timings().get(1).pictureAspect()).isNull();
    }

    @Test
    void anOutputWithAnAnalogFormatIsAnalog() {
        ConverterOutput output = converter(
                        "[858]",
                        SCALE,
                        "{\"connector\": \"VGA\", \"format\": \"RGB\", \"sync\": \"SEPARATE_SYNC\","
                                + " \"level\": \"LOGIC_5V\", \"maxPixelClockHz\": \"110000000\"}")
                .outputs()
                .get(0);
        assertThat(output)
                .isInstanceOfSatisfying(
                        ConverterOutput.Analog.class,
                        analog -> assertThat(analog.maxPixelClock()).isEqualTo(Frequency.ofHz(110_000_000)));
    }

    @Test
    void aCableKeepsItsEndsAndItsPrice() {
        Link cable = Bodies.link("""
                {"kind": "CABLE", "name": "Quillon AV to SCART", "lengthMm": 1800, "from": {"connector": "own:quillon-av"},
                 "to": {"connector": "SCART", "wiring": "EN_50049"}, "carries": [{"format": "RGB"}],
                 "bandwidthHz": {"least": "50000000", "greatest": "90000000"},
                 "price": {"least": "12.50", "greatest": "18", "currency": "EUR", "asOf": "2025-10-01"}}""");
        assertThat(cable.to().wiring()).isEqualTo("EN_50049");
        assertThat(Objects.requireNonNull(cable.price()).least().amount()).isEqualTo(new BigDecimal("12.50"));
        assertThat(cable.bandwidthHz())
                .isEqualTo(new Fact.Within(Rational.of(50_000_000), null, Rational.of(90_000_000)));
    }
}
