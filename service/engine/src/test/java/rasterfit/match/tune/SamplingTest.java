package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Connector;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.Mode;
import rasterfit.gear.Plug;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Window;
import rasterfit.match.Measures;
import rasterfit.match.Modes;
import rasterfit.match.route.Run;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.Signal;
import rasterfit.timing.Scan;

/**
 * What sampling does to dots, against hand calculation. Rise times: 0.35/B for a first-order low-pass (common practice);
 * bandwidths are chosen so that 30 ns and 40 ns add up to 50 ns.
 */
class SamplingTest {
    private static final Plug PLUG = new Plug(new Connector("SCART"), null);
    private static final Fact THIRTY_NS = Fact.known(Rational.of(35_000_000, 3));
    private static final Fact FORTY_NS = Fact.known(Rational.of(35_000_000, 4));
    private static final double TINY = 1e-9;

    /** 5 MHz: a dot lasts 200 ns; 320 dots make the line of 64 µs. */
    private static final Mode FIVE_MHZ =
            Modes.of("5000000", "320", "312", Scan.PROGRESSIVE, new Window(240, 240, 50, 20));

    private static SignalChain chain(Format format, SyncKind sync, Fact jitterNs, Frequency... lowPass) {
        SourceOutput output = new SourceOutput("out", PLUG, format, sync, null, Level.VIDEO_75_OHM, THIRTY_NS);
        Link cable = Link.cable("cable", "Cable", PLUG, PLUG, List.of(), null, FORTY_NS);
        Digitiser digitiser = new Digitiser(
                Frequency.ofHz(100_000_000), new SamplesPerLine.FreeRange(1, 4000), 32, List.of(lowPass), jitterNs);
        Signal arriving = new Signal(format, sync, Level.VIDEO_75_OHM, PLUG);
        return new SignalChain(output, new Run(List.of(cable), arriving, null), null, digitiser);
    }

    private static SignalChain chain() {
        return chain(Format.RGB, SyncKind.COMPOSITE_SYNC, Fact.known(2));
    }

    private static Measures.Sampling sample(Mode mode, int samplesPerLine) {
        return Sampling.measure(mode, samplesPerLine, chain(), 1, Steps.SILENT);
    }

    private static Rational inLineRates(@Nullable Frequency frequency, Mode mode) {
        assertThat(frequency).isNotNull();
        return frequency.ratioTo(mode.lineRate());
    }

    @Test
    void fourSamplesForEachOf341DotsAreDotLocked() {
        Measures.Sampling sampling = sample(Modes.half525(), 1364);

        assertThat(sampling.dotLocked()).isTrue();
        assertThat(sampling.samplesPerDot()).isEqualTo(Rational.of(4));
        assertThat(sampling.leastSamplesPerDot()).isEqualTo(4);
        assertThat(sampling.greatestSamplesPerDot()).isEqualTo(4);
        assertThat(sampling.leastShare()).isEqualTo(Rational.ONE);
        assertThat(sampling.beatPeriodDots()).isNull();
        assertThat(sampling.alias()).isNull();
        // 1364 · 59.0625 MHz / (11 · 341) = 4 · 5.369318 MHz.
        assertThat(sampling.sampleRate()).isEqualTo(Frequency.parseHz("236250000/11"));
    }

    @Test
    void otherCountsMakeDotsOfTwoWidthsInTheSharesThatCountingGives() {
        Measures.Sampling sampling = sample(Modes.half525(), 858);
        // Counted: dot d of 341 takes the samples whose centres lie in it.
        int[] widths = new int[341];
        for (int s = 0; s < 858; s++) {
            widths[(2 * s + 1) * 341 / (2 * 858)]++;
        }
        int two = 0;
        for (int width : widths) {
            assertThat(width).isBetween(2, 3);
            two += width == 2 ? 1 : 0;
        }

        assertThat(sampling.dotLocked()).isFalse();
        assertThat(sampling.leastSamplesPerDot()).isEqualTo(2);
        assertThat(sampling.greatestSamplesPerDot()).isEqualTo(3);
        assertThat(sampling.leastShare()).isEqualTo(Rational.of(two, 341));
        // 858 and 341 share the factor 11: the pattern repeats after 31 dots.
        assertThat(sampling.beatPeriodDots()).isEqualTo(Rational.of(31));
    }

    @Test
    void underSampledDetailFoldsToTheNearestMultipleOfTheSampleRate() {
        // The finest detail, one dot on and one off, is at 170.5 line rates. 320: 320 − 170.5; 150: 170.5 − 150;
        // 100: 2 · 100 − 170.5 (sampling theorem).
        Mode mode = Modes.half525();
        assertThat(inLineRates(sample(mode, 320).alias(), mode)).isEqualTo(Rational.of(299, 2));
        assertThat(inLineRates(sample(mode, 150).alias(), mode)).isEqualTo(Rational.of(41, 2));
        assertThat(inLineRates(sample(mode, 100).alias(), mode)).isEqualTo(Rational.of(59, 2));
    }

    @Test
    void softnessIsTheShareOfADotThatItsEdgeTakes() {
        // √(30² + 40²) = 50 ns, and 2 ns of jitter, of 200 ns.
        assertThat(Sampling.edgeSoftness(FIVE_MHZ, chain())).isCloseTo(0.26, within(TINY));
    }

    @Test
    void softnessDoesNotDependOnTheSampleCount() {
        assertThat(sample(FIVE_MHZ, 320).edgeSoftness())
                .isEqualTo(sample(FIVE_MHZ, 858).edgeSoftness());
    }

    @Test
    void aFilterAddsItsRiseTimeInSquares() {
        // 35/12 MHz: 120 ns; √(50² + 120²) = 130 ns, and 2 ns.
        SignalChain filtered =
                chain(Format.RGB, SyncKind.COMPOSITE_SYNC, Fact.known(2), Frequency.ofHz(35_000_000, 12));

        assertThat(Sampling.edgeSoftness(FIVE_MHZ, filtered)).isCloseTo(132.0 / 200, within(TINY));
    }

    @Test
    void syncThatRidesOnVideoAddsTheSeparatorsJitter() {
        // 2 ns more (assumption).
        SignalChain riding = chain(Format.YPBPR, SyncKind.SYNC_ON_LUMA, Fact.known(2));

        assertThat(Sampling.edgeSoftness(FIVE_MHZ, riding)).isCloseTo(54.0 / 200, within(TINY));
    }

    @Test
    void aConsoleIsTakenToPassOneAndAHalfTimesItsDotClock() {
        // 7.5 MHz (assumption): 46.667 ns, beside 100 MHz of a plain lead (assumption): 3.5 ns.
        SourceOutput unknown =
                new SourceOutput("out", PLUG, Format.RGB, null, null, Level.VIDEO_75_OHM, Fact.unknown());

        Run plain = new Run(List.of(), new Signal(Format.RGB, null, Level.VIDEO_75_OHM, PLUG), null);
        assertThat(new SignalChain(unknown, plain, null, null).riseTimeSeconds(FIVE_MHZ))
                .isCloseTo(Math.sqrt(0.35 / 7.5 * 0.35 / 7.5 + 0.0035 * 0.0035) * 1e-6, within(1e-15));
    }

    @Test
    void jitterThatIsNotStatedIsTwoNanoseconds() {
        SignalChain unknown = chain(Format.RGB, SyncKind.COMPOSITE_SYNC, Fact.unknown());

        assertThat(unknown.jitterSeconds()).isCloseTo(2e-9, within(1e-18));
    }

    @Test
    void softnessIsAtMostOne() {
        // 350 kHz: 1 µs for a dot of 0.2 µs.
        SignalChain narrow = chain(Format.RGB, SyncKind.COMPOSITE_SYNC, Fact.known(2), Frequency.ofHz(350_000));

        assertThat(Sampling.edgeSoftness(FIVE_MHZ, narrow)).isEqualTo(1);
    }

    @Test
    void oneSamplePerDotLeavesTheRestOfTheDotForThePhase() {
        Measures.Sampling single = sample(FIVE_MHZ, 320);

        assertThat(single.usablePhaseShare()).isCloseTo(0.74, within(TINY));
        // 0.74 · 32 = 23.68.
        assertThat(single.usablePhaseSteps()).isEqualTo(23);
        assertThat(single.softSamplesPerDot()).isNull();
    }

    @Test
    void severalSamplesPerDotTellHowManyAreSoft() {
        // 52 ns at 10 MHz are 0.52 samples, at 40 MHz 2.08.
        assertThat(sample(FIVE_MHZ, 640).softSamplesPerDot()).isEqualTo(1);
        assertThat(sample(FIVE_MHZ, 8 * 320).softSamplesPerDot()).isEqualTo(3);
        assertThat(sample(FIVE_MHZ, 640).usablePhaseShare()).isNull();
        assertThat(sample(FIVE_MHZ, 858).softSamplesPerDot()).isNull();
    }

    @Test
    void detailIsTwiceTheBandwidthAgainstTheDotClock() {
        // 0.35 / 50 ns = 7 MHz: all of a 5 MHz dot clock, 14/20 of a 20 MHz one.
        Mode fast = Modes.of("20000000", "1280", "312", Scan.PROGRESSIVE, new Window(900, 240, 200, 20));
        Measures.Detail slow = chain().detail(FIVE_MHZ, Steps.SILENT);
        Measures.Detail rgb = chain().detail(fast, Steps.SILENT);
        Measures.Detail component =
                chain(Format.YPBPR, SyncKind.SYNC_ON_LUMA, Fact.known(2)).detail(fast, Steps.SILENT);

        assertThat(slow.combined()).isEqualTo(Rational.ONE);
        assertThat(rgb.bandwidth()).isEqualTo(Frequency.ofHz(7_000_000));
        assertThat(rgb.luma()).isEqualTo(Rational.of(7, 10));
        assertThat(rgb.combined()).isEqualTo(Rational.of(7, 10));
        // Chroma at half: 0.6 · 0.7 + 0.4 · 0.35 = 0.56.
        assertThat(component.chroma()).isEqualTo(Rational.of(35, 100));
        assertThat(component.combined()).isEqualTo(Rational.of(56, 100));
    }
}
