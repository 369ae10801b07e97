package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.Carried;
import rasterfit.gear.ColourEncoding;
import rasterfit.gear.Connector;
import rasterfit.gear.Estimate;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Mode;
import rasterfit.gear.Plug;
import rasterfit.gear.Separation;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.Window;
import rasterfit.match.Measures;
import rasterfit.match.Modes;
import rasterfit.match.route.Run;
import rasterfit.quantity.Rational;
import rasterfit.rule.Signal;
import rasterfit.timing.Scan;

/** What composite video, Y/C and RF lose on the way; figures from BT.1700, BT.470 and common practice. */
class DecodingTest {
    private static final Plug PLUG = new Plug(new Connector("RCA_1"), null);
    private static final Window WINDOW = new Window(240, 240, 50, 20);

    private static Mode mode(String dotClock, String dotsPerLine, String lines) {
        return Modes.of(dotClock, dotsPerLine, lines, Scan.PROGRESSIVE, WINDOW);
    }

    private static final Mode THREE_HALVES = mode("59062500/11", "341", "262");

    private static Decoding decoding(Format format, ColourEncoding encoding, @Nullable Separation separation) {
        return new Decoding(
                new Signal(format, null, Level.VIDEO_75_OHM, PLUG, encoding),
                new Carried(format, Set.of(), Set.of(encoding), separation));
    }

    @ParameterizedTest
    @CsvSource({
        // Subcarrier cycles per line: 341 dots at 3/2 of the subcarrier, 855/2 at 15/8, and the broadcast line of 910
        // at 4.
        "59062500/11, 341, 262, 682/3, 1",
        "295312500/44, 855/2, 262, 228, 1",
        "157500000/11, 910, 525/2, 455/2, 0",
    })
    void aCombNeedsAHalfCycleInTheLine(String clock, String dots, String lines, String cycles, int share) {
        Decoding comb = decoding(Format.CVBS, ColourEncoding.C525_358, Separation.COMB);
        Mode mode = mode(clock, dots, lines);
        assertThat(comb.cyclesPerLine(mode)).contains(Rational.parse(cycles));
        assertThat(comb.lumaBandwidthsHz(mode)).hasSize(share);
        assertThat(comb.flaws(mode)).isEqualTo(share * 2);
    }

    @Test
    void aNotchAlwaysTakesFineLumaAndLeavesColourInIt() {
        Decoding notch = decoding(Format.CVBS, ColourEncoding.C525_358, null);
        Mode broadcast = mode("157500000/11", "910", "525/2");
        assertThat(notch.lumaBandwidthsHz(broadcast))
                .extracting(Estimate::typical)
                .containsExactly(Rational.of(3_000_000));
        // 0.85 (assumption).
        assertThat(notch.factor(broadcast)).isEqualTo(Rational.of(85, 100));
    }

    @Test
    void lumaAndChromaOnTwoWiresNeedNoSeparation() {
        Decoding apart = decoding(Format.YC, ColourEncoding.C525_358, null);
        assertThat(apart.lumaBandwidthsHz(THREE_HALVES)).isEmpty();
        assertThat(apart.factor(THREE_HALVES)).isEqualTo(Rational.ONE);
    }

    @Test
    void anRfChannelIsAsWideAsItsSystem() {
        // BT.470: 4.2 MHz in M, 5.0 MHz in B and G.
        assertThat(decoding(Format.RF, ColourEncoding.C525_358, Separation.COMB)
                        .lumaBandwidthsHz(mode("157500000/11", "910", "525/2")))
                .extracting(Estimate::typical)
                .containsExactly(Rational.of(4_200_000));
        assertThat(decoding(Format.RF, ColourEncoding.C625_443, null).lumaBandwidthsHz(THREE_HALVES))
                .extracting(Estimate::typical)
                .containsExactly(Rational.of(5_000_000), Rational.of(3_000_000));
    }

    @Test
    void theChannelOfSystemMResolves332LinesOfThePictureHeight() {
        // 2 · 4.2 MHz · 52.7 µs of active line, over 4:3: handbook value 332; the line of 63.5 µs less 10.9 µs of
        // blanking.
        double activeSeconds = 910 / (157_500_000 / 11.0) - 10.9e-6;
        double bandwidth = decoding(Format.RF, ColourEncoding.C525_358, Separation.COMB)
                .lumaBandwidthsHz(mode("157500000/11", "910", "525/2"))
                .get(0)
                .typical()
                .toDouble();
        assertThat(2 * bandwidth * activeSeconds / (4 / 3.0)).isCloseTo(332, within(1.0));
    }

    @Test
    void detailOfCompositeVideoIsThatOfNotchAndChroma() {
        // By hand: 60 MHz of console and 100 MHz of lead hardly count beside the notch of 3 MHz: 1/√(1/60² + 1/100² +
        // 1/3²) =
        // 2.994913 MHz, so luma 2·B/dot clock is above 1, cut to 1; chroma 1.2/5.369318 = 0.223492; (0.6 +
        // 0.4·0.223492)·0.85.
        SourceOutput output = new SourceOutput(
                "cvbs", PLUG, Format.CVBS, null, ColourEncoding.C525_358, Level.VIDEO_75_OHM, Fact.known(60_000_000));
        Signal signal = new Signal(Format.CVBS, null, Level.VIDEO_75_OHM, PLUG, ColourEncoding.C525_358);
        Run lead = new Run(List.of(), signal, null);
        Measures.Detail detail = new SignalChain(output, lead, null, null).detail(THREE_HALVES, Steps.SILENT);
        assertThat(detail.bandwidth().hz().toDouble()).isCloseTo(2_994_913, within(1.0));
        assertThat(detail.luma()).isEqualTo(Rational.ONE);
        assertThat(detail.chroma().toDouble()).isCloseTo(0.223492, within(1e-6));
        assertThat(detail.combined().toDouble()).isCloseTo((0.6 + 0.4 * 0.223492) * 0.85, within(1e-6));
    }
}
