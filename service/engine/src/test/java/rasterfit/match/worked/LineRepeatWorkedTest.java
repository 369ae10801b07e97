package rasterfit.match.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rasterfit.Fractions.printed;
import static rasterfit.match.worked.Answers.halfPerFrame;
import static rasterfit.match.worked.Answers.told;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Basis;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.LineStandard;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Processing;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.Window;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.match.Settings;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/** 240 → 960 lines with four samples to a dot, filling a 1600 × 1200 monitor over DVI. */
class LineRepeatWorkedTest {
    private static final double LATENCY_MS = 3.0575703703704;

    /** Promises any timing within 50–76 Hz, 30–95 kHz and 165 MHz; lists VESA DMT 0x33, 162 MHz, 2160 × 1250. */
    private static SinkLimits monitor() {
        Raster own = new Raster(
                Frequency.ofHz(162_000_000), 1600, Rational.of(2160), 1200, Rational.of(1250), Scan.PROGRESSIVE);
        return new SinkLimits(
                List.of(new SinkLimits.ListedRaster("detailed:1", own, null)),
                new FrequencyRange(Frequency.ofHz(50), Frequency.ofHz(76)),
                new FrequencyRange(Frequency.ofHz(30_000), Frequency.ofHz(95_000)),
                Frequency.ofHz(165_000_000),
                true,
                Frequency.ofHz(165_000_000),
                LinkKind.DVI);
    }

    private static MatchResult match() {
        Processing repeat = new Processing.LineRepeat(
                "repeat",
                List.of(new Processing.LineCounts(LineStandard.L525_60, 240, List.of(960))),
                null,
                Fact.unknown(),
                4,
                Processing.InterlacedFields.REFUSED,
                Fact.known(2));
        return Gear.match(
                Gear.half525(new Window(256, 240, 65, 18)),
                List.of(Gear.converter(
                        Gear.digitiser(25_000_000, 1364, 1705),
                        repeat,
                        Gear.digitalOut(LinkKind.DVI, false),
                        6,
                        "90",
                        "90")),
                Gear.screen(
                        DisplayClass.MONITOR,
                        1600,
                        1200,
                        AspectControl.FILL,
                        Fact.unknown(),
                        monitor(),
                        List.of(),
                        null),
                Intent.EVEN_WEIGHTS,
                Map.of(),
                2);
    }

    @Test
    void everyFigureOfTheAnswer() {
        MatchResult result = match();
        RankedSetup setup = result.ranked().get(0);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        Answers.route(setup, "rgb", "lead", "box", "screen");

        // Rates. N = 1364 = 4 · 341. Clock 4 · 1364 · 59 062 500/3751 = 945/11 MHz = 85.909 MHz; totals 1364 and
        // 4 · 262 = 1048; line rate 4 · 15 745.801 = 62.983 kHz; the field rate is the source's.
        // Window. 4:3 over 240 lines is 320 square dots, 320 · 7/8 = 280 dots of 8/7: 1120 samples (341 dots less the
        // blanking of 858 − 720 in 858 leave 286).
        Raster raster = setting.outputTiming();
        assertThat(raster)
                .isEqualTo(new Raster(
                        Frequency.ofHz(945_000_000, 11),
                        1120,
                        Rational.of(1364),
                        960,
                        Rational.of(1048),
                        Scan.PROGRESSIVE));
        assertThat(raster.lineRate()).isEqualTo(Frequency.ofHz(236_250_000, 3751));
        assertThat(raster.fieldRate()).isEqualTo(Frequency.ofHz(29_531_250, 491_381));
        // 280 − 256 = 24 dots to share: the window starts 12 dots before dot 65.
        assertThat(setting.settings())
                .isEqualTo(new Settings(
                        Settings.Kind.LINE_REPEAT,
                        "repeat",
                        null,
                        960,
                        4,
                        1364,
                        1,
                        Rational.of(53),
                        Rational.of(280),
                        1120,
                        960,
                        0,
                        0,
                        18,
                        240,
                        "SOURCE_LOCKED",
                        Frequency.ofHz(29_531_250, 491_381),
                        null,
                        AspectControl.FILL));

        // Samples. r = 4, 21.477 273 MHz = 236.25/11 MHz. The edge takes 21.477 273 MHz · 62.596 793 ns = 1.344
        // samples:
        // 2 of 4 are soft.
        Measures.Sampling sampling = measures.sampling();
        assertThat(sampling.samplesPerDot()).isEqualTo(Rational.of(4));
        assertThat(sampling.sampleRate()).isEqualTo(Frequency.ofHz(236_250_000, 11));
        assertThat(sampling.dotLocked()).isTrue();
        assertThat(sampling.leastSamplesPerDot()).isEqualTo(4);
        assertThat(sampling.greatestSamplesPerDot()).isEqualTo(4);
        assertThat(sampling.leastShare()).isEqualTo(Rational.ONE);
        assertThat(sampling.beatPeriodDots()).isNull();
        assertThat(sampling.edgeSoftness()).isCloseTo(Gear.SOFTNESS, within(1e-9));
        assertThat(sampling.usablePhaseShare()).isNull();
        assertThat(sampling.softSamplesPerDot()).isEqualTo(2);
        assertThat(sampling.considered()).isEqualTo(2);

        // Panel. A monitor hides nothing (assumption). 1120 samples fill 1600 columns: 4 · 10/7 = 40/7 = 5.71 a dot;
        // 960
        // lines fill 1200 rows: 4 · 5/4 = 5 a line. 40/7 / 5 = 8/7: exact.
        Measures.Shape shape = measures.shape();
        assertThat(measures.pixelAspectRatio()).isEqualTo(Rational.of(8, 7));
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(40, 7));
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(5));
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.ZERO);
        // The edges of the dots lie 40/7 columns apart, so dots get 5 or 6; those of the lines exactly 5 rows.
        assertThat(shape.leastDotWidth()).isEqualTo(5);
        assertThat(shape.greatestDotWidth()).isEqualTo(6);
        assertThat(shape.leastLineHeight()).isEqualTo(5);
        assertThat(shape.greatestLineHeight()).isEqualTo(5);
        assertThat(shape.blendedColumnsPercent()).isEqualTo(Rational.ZERO);
        // 256 of 280 dots: 64/70 of the panel.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(640, 7));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));
        assertThat(shape.croppedLines()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedDots()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedLines()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedDots()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedLinesPercent()).isEqualTo(Rational.ZERO);

        // Latency. Nothing is stated of its start: as early as 1 − 1/4 of the line has arrived, 47.631 746 µs, or at
        // the
        // latest with the whole line, 63.508 995 µs (assumption); half-way 55.570 370 µs; 2 µs of electronics each.
        Answers.latency(
                measures.addedLatencyMs(),
                Basis.COMPUTED,
                "0.057570",
                "0.057570",
                "0.057570",
                "0.049632",
                "0.057570",
                "0.065509");
        // A monitor of unknown lag: 3 [1–10] ms.
        Answers.flatLatency(measures.displayLagMs(), Basis.ASSUMED, "1.000000", "3.000000", "10.000000");
        Answers.latency(
                measures.totalLatencyMs(),
                Basis.ASSUMED,
                "3.057570",
                "3.057570",
                "3.057570",
                "1.049632",
                "3.057570",
                "10.065509");
        // 65.508 995 µs / 16.639 357 ms.
        assertThat(printed(measures.addedLatencyFields(), 9)).isEqualTo("0.003936991");
        // The line that is sent and the one that arrives: from its first sample to the end of its last copy a line is
        // held for at most two lines.
        assertThat(measures.bufferedLines()).isEqualTo(2);
        assertThat(measures.fieldStores()).isNull();
        assertThat(measures.dropOrRepeatEverySeconds()).isNull();

        // Acceptance. Nothing listed is 1120 × 960; 60.1 Hz, 62.98 kHz and 85.9 MHz lie within what is promised. There
        // is
        // no listed raster to fall back upon.
        assertThat(measures.acceptance())
                .isEqualTo(new Measures.Acceptance(AcceptanceGrade.WITHIN_LIMITS_CONTINUOUS, null, null, null, null));
        assertThat(measures.linkDetail().combined()).isEqualTo(Rational.ONE);

        // Criteria. Uniformity (2 · 5/6 − 1) · (1 − 0.336 102) = 0.442 599. Coverage: 256 · 40/7 by 1200 is exactly the
        // greatest area at 1.2190. Latency 2^(−3.057 570/16.7) = 0.880 816. Continuous 0.85. Effort 1/(1 + 6/4) = 0.4.
        // Cost 2^(−108/150) = 0.607 097. Sum 7.180 512 of 9.
        Answers.price(setup, "108", "108", "108");
        Answers.criteria(
                setup,
                0.797834628779,
                told(Criterion.DOT_UNIFORMITY, 5.0 / 6, (1 - Gear.SOFTNESS) * 2 / 3, 1),
                told(Criterion.ASPECT, 0, 1, 1),
                told(Criterion.COVERAGE, 91.428571, 1, 1),
                told(Criterion.MOTION, 0, 1, 1),
                told(Criterion.LATENCY, LATENCY_MS, halfPerFrame(LATENCY_MS), 1),
                told(Criterion.ACCEPTANCE, Double.NaN, 0.85, 1),
                told(Criterion.LINK_DETAIL, 1, 1, 1),
                told(Criterion.EFFORT, 6, 0.4, 1),
                told(Criterion.COST, 108, 0.6070974421975, 1));
        Answers.findings(
                setup,
                "assumed.plain-lead",
                "link.dvi-signals-nothing",
                "assumed.converter-delay",
                "acceptance.raster-not-listed",
                "assumed.display-lag");

        // Counts. Two sample counts by two windows. 1705 · 15 745.801 Hz = 295.3125/11 MHz = 26.85 MHz is more than the
        // digitiser's 25.
        Answers.counts(result, 4, 2);
        Answers.refused(result, "digitise.sample-rate-exceeds-converter × 2: 295312500/11 against 25000000");
    }

    /** The other window: 256 dots stretched over the same panel. DOMAIN: +9.4 %. */
    @Test
    void theWindowOfTheActiveDotsComesSecond() {
        MatchResult result = match();
        assertThat(result.ranked()).hasSize(2);
        RankedSetup setup = result.ranked().get(1);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures.Shape shape = setting.measures().shape();

        assertThat(setting.outputTiming().horizontalActive()).isEqualTo(1024);
        assertThat(setting.settings().captureFirstDot()).isEqualTo(Rational.of(65));
        // 1600/256 = 25/4 columns to 5 rows: 5/4 · 7/8 = 35/32, 3/32 too wide. Dots of 6 and 7 columns.
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(75, 8));
        assertThat(shape.dotWidthRatio()).isEqualTo(Rational.of(6, 7));
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(100));
        // Uniformity 5/7 · 0.663 898 = 0.474 213; aspect (15 − 9.375)/14 = 0.401 786; all else as before: 6.613 912/9.
        Answers.criteria(
                setup,
                0.734879062109,
                told(Criterion.DOT_UNIFORMITY, 6.0 / 7, (1 - Gear.SOFTNESS) * 5 / 7, 1),
                told(Criterion.ASPECT, 9.375, 5.625 / 14, 1),
                told(Criterion.COVERAGE, 100, 1, 1),
                told(Criterion.MOTION, 0, 1, 1),
                told(Criterion.LATENCY, LATENCY_MS, halfPerFrame(LATENCY_MS), 1),
                told(Criterion.ACCEPTANCE, Double.NaN, 0.85, 1),
                told(Criterion.LINK_DETAIL, 1, 1, 1),
                told(Criterion.EFFORT, 6, 0.4, 1),
                told(Criterion.COST, 108, 0.6070974421975, 1));
        // Picture: 0.474 + 0.402 against 0.443 + 1; latency, risk and cost equal: dominated.
        assertThat(setup.paretoOptimal()).isFalse();
        assertThat(result.ranked().get(0).paretoOptimal()).isTrue();
    }
}
