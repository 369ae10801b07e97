package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Connector;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Mode;
import rasterfit.gear.Plug;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Window;
import rasterfit.match.Measures;
import rasterfit.match.Modes;
import rasterfit.match.Workbench;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.LinkClockRules;
import rasterfit.sim.LineRepeatSim;
import rasterfit.timing.Scan;

/** Sampling against hand calculation, and the start of line repetition against the sample-by-sample simulation. */
class SamplingTest {
    /** 10 MHz, 1000 dots a line of 100 µs. */
    private static final Mode ROUND =
            Modes.of("10000000", "1000", "262", Scan.PROGRESSIVE, new Window(500, 200, 100, 20));

    private static SignalChain chain(SyncKind sync, Fact bandwidthHz) {
        SourceOutput output = new SourceOutput(
                "rgb", new Plug(new Connector("SCART"), null), Format.RGB, sync, null, Level.VIDEO_75_OHM, bandwidthHz);
        Digitiser digitiser =
                new Digitiser(Frequency.ofHz(100_000_000), Workbench.samples(1000), 32, List.of(), Fact.known(3));
        return new SignalChain(output, null, digitiser);
    }

    private static Measures.Sampling sampling(int samples) {
        return Sampling.measure(
                ROUND, samples, chain(SyncKind.COMPOSITE_SYNC, Fact.known(35_000_000)), 1, Steps.SILENT);
    }

    @Test
    void softnessFollowsRiseTimeAndJitter() {
        // 35 MHz: 10 ns; 100 MHz (assumption): 3.5 ns; together √112.25 = 10.594810 ns; jitter 3 ns: 10 MHz · 13.594810
        // ns.
        assertThat(sampling(1000).edgeSoftness()).isCloseTo(0.13594810, within(1e-8));
        // Sync inside of a video signal costs a separator's 2 ns (assumption).
        double riding = Sampling.edgeSoftness(ROUND, chain(SyncKind.SYNC_ON_GREEN, Fact.known(35_000_000)));
        assertThat(riding).isCloseTo(0.15594810, within(1e-8));
        // A console's bandwidth is assumed at 1.5 times the dot clock: 15 MHz, 23.333 ns.
        double assumed = Sampling.edgeSoftness(ROUND, chain(SyncKind.COMPOSITE_SYNC, Fact.unknown()));
        assertThat(assumed).isCloseTo((Math.sqrt(23.3333333 * 23.3333333 + 12.25) + 3) / 100, within(1e-8));
    }

    @Test
    void oneSamplePerDotLeavesAPartOfThePhases() {
        Measures.Sampling one = sampling(1000);
        assertThat(one.dotLocked()).isTrue();
        assertThat(Objects.requireNonNull(one.usablePhaseShare())).isCloseTo(0.86405190, within(1e-8));
        // 32 steps · 0.864 = 27.6.
        assertThat(one.usablePhaseSteps()).isEqualTo(27);
        assertThat(one.softSamplesPerDot()).isNull();
    }

    @Test
    void wholeNumbersOfSamplesCountTheSoftOnes() {
        Measures.Sampling eight = sampling(8000);
        // 80 MHz · 13.59 ns = 1.09.
        assertThat(eight.softSamplesPerDot()).isEqualTo(2);
        assertThat(eight.usablePhaseShare()).isNull();
        assertThat(eight.beatPeriodDots()).isNull();
        assertThat(eight.sampleRate()).isEqualTo(Frequency.ofHz(80_000_000));
    }

    @Test
    void brokenNumbersOfSamplesBeatAlongTheLine() {
        Measures.Sampling broken = sampling(2400);
        // 2.4 = 12/5: two samples for 3 of 5 dots, three for 2, repeating every 5 dots.
        assertThat(broken.samplesPerDot()).isEqualTo(Rational.of(12, 5));
        assertThat(broken.leastSamplesPerDot()).isEqualTo(2);
        assertThat(broken.greatestSamplesPerDot()).isEqualTo(3);
        assertThat(broken.leastShare()).isEqualTo(Rational.of(3, 5));
        assertThat(broken.beatPeriodDots()).isEqualTo(Rational.of(5));
        assertThat(broken.alias()).isNull();
    }

    /** Sampling theorem: 5 MHz of finest detail sampled at 8 MHz lands at 3 MHz; at 4 MHz at 1 MHz. */
    @Test
    void tooFewSamplesFoldTheFinestDetail() {
        assertThat(sampling(800).alias()).isEqualTo(Frequency.ofHz(3_000_000));
        assertThat(sampling(400).alias()).isEqualTo(Frequency.ofHz(1_000_000));
        assertThat(sampling(800).leastSamplesPerDot()).isZero();
    }

    /** A copy can begin once 1 − 1/m of the line has arrived; the simulation adds the time of one sample sent. */
    @Test
    void theFirstCopyBeginsWhenTheSimulationSays() {
        for (int m = 1; m <= 6; m++) {
            int samples = 600;
            BigFraction start = LineRepeatSim.repeat(new LineRepeatSim.Repeat(samples, 0, samples, m))
                    .start();
            BigFraction ours = BigFraction.of(1, 1).subtract(BigFraction.of(1, m));
            assertThat(start).isEqualTo(ours.add(BigFraction.of(1, samples * m)));
        }
    }

    /** HDMI 1.3a §8.3: 165 MHz where the sink declares no more; §6.4: at least 25 Mpixel/s. */
    @Test
    void linksRefuseBeyondTheirClocks() {
        Frequency greatest = LinkClockRules.UNDECLARED_MAXIMUM;
        assertThat(greatest).isEqualTo(Frequency.ofHz(165_000_000));
        assertThat(LinkClockRules.display(greatest, greatest)).isEmpty();
        assertThat(LinkClockRules.display(Frequency.ofHz(165_000_001), greatest))
                .isPresent();
        assertThat(LinkClockRules.converter(Frequency.ofHz(165_000_001), greatest))
                .isPresent();
        assertThat(LinkClockRules.least(Frequency.ofHz(25_000_000))).isEmpty();
        assertThat(LinkClockRules.least(Frequency.ofHz(24_999_999))).isPresent();
    }
}
