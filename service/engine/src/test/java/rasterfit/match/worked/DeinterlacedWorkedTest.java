package rasterfit.match.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rasterfit.Fractions.printed;
import static rasterfit.match.worked.Answers.halfPerFrame;
import static rasterfit.match.worked.Answers.told;

import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Basis;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.LagReading;
import rasterfit.gear.LineStandard;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.ScaleAxis;
import rasterfit.gear.Window;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.match.Settings;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/**
 * 480 interlaced lines, each field stretched over 720 rows with four taps in step with the source, on a 1080p television:
 * two uneven stages, 1.5 and 1.5.
 */
class DeinterlacedWorkedTest {
    private static final Frequency FIELD_RATE = Frequency.ofHz(60_000, 1001);

    private static MatchResult match() {
        Processing scale = new Processing.RasterScale(
                "scale",
                List.of(Gear.offered(4)),
                new ScaleAxis(ScaleAxis.Factors.ANY, 4, 0),
                new ScaleAxis(ScaleAxis.Factors.ANY, 4, 0),
                List.of(
                        new Deinterlacer(Deinterlacer.Kind.BOB, Fact.unknown(), false),
                        new Deinterlacer(Deinterlacer.Kind.MOTION_ADAPTIVE, Fact.unknown(), false)),
                List.of(new RateLock.SourceLocked(Rational.of(1500), null, 48)),
                Fact.known(20));
        LagReading lag = new LagReading(
                null,
                new Fact.Within(Rational.of(9), Rational.of(10), Rational.of(12)),
                LagReading.Method.SPLIT_SIGNAL,
                null,
                Basis.MEASURED);
        Window window = new Window(640, 240, 118, 18);
        return Gear.match(
                Gear.mode(LineStandard.L525_60, "135000000/11", "780", "525/2", window, window),
                Gear.converter(
                        Gear.digitiser(110_000_000, 780), scale, Gear.digitalOut(LinkKind.HDMI, true), 6, "140", "160"),
                Gear.screen(
                        DisplayClass.TELEVISION,
                        1920,
                        1080,
                        AspectControl.FILL,
                        Fact.known(0),
                        Gear.television(4, 16),
                        List.of(lag),
                        null),
                Intent.EVEN_WEIGHTS,
                Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.ONE));
    }

    @Test
    void everyFigureOfTheAnswer() {
        MatchResult result = match();
        RankedSetup setup = result.ranked().get(0);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        Answers.route(setup, "rgb", "lead", "box", "screen");

        // Rates. 135/11 MHz / 780 / 262.5 = 60/1.001 Hz, 999 ppm below the 60 Hz of VIC 4, which is followed up to
        // 1500.
        // T = 16.683 333 ms, a line T/262.5 = 63.555 556 µs, a row T/750 = 22.244 444 µs. Clock 1650 · 750 · 60
        // 000/1001.
        assertThat(setting.outputTiming())
                .isEqualTo(new Raster(
                        Frequency.ofHz(74_250_000_000L, 1001),
                        1280,
                        Rational.of(1650),
                        720,
                        Rational.of(750),
                        Scan.PROGRESSIVE));
        assertThat(measures.acceptance().grade()).isEqualTo(AcceptanceGrade.LISTED);
        Answers.sameCountsAs(measures.acceptance(), "vic:4", Rational.of(-100, 1001));

        // 720/480 = 1.5 rows a line of the frame; 1.5 · 640 square dots = 960 columns from (1280 − 960)/2 = 160.
        assertThat(setting.settings())
                .isEqualTo(new Settings(
                        Settings.Kind.RASTER_SCALE,
                        "scale",
                        "vic:4",
                        720,
                        null,
                        780,
                        null,
                        Rational.of(118),
                        Rational.of(640),
                        960,
                        720,
                        160,
                        0,
                        18,
                        240,
                        "SOURCE_LOCKED",
                        FIELD_RATE,
                        Deinterlacer.Kind.BOB,
                        AspectControl.FILL));

        // Samples. One for each dot. The edge takes 12.272 727 MHz · 62.596 793 ns = 0.768 233 of it: 0.231 767 are
        // left
        // for the phase, 7.4 of 32 steps.
        Measures.Sampling sampling = measures.sampling();
        assertThat(sampling.samplesPerDot()).isEqualTo(Rational.ONE);
        assertThat(sampling.sampleRate()).isEqualTo(Frequency.ofHz(135_000_000, 11));
        assertThat(sampling.dotLocked()).isTrue();
        assertThat(sampling.edgeSoftness()).isCloseTo(0.7682333729499, within(1e-9));
        assertThat(sampling.usablePhaseShare()).isCloseTo(0.2317666270501, within(1e-9));
        assertThat(sampling.usablePhaseSteps()).isEqualTo(7);
        assertThat(sampling.softSamplesPerDot()).isNull();

        // Panel. 1.5 again in both directions: 2.25. Raster row r shows line ⌊(r + 1/2)/1.5⌋: lines own rows {0}, {1,
        // 2},
        // {3}, {4, 5} and so on. Panel row p shows raster row ⌊(p + 1/2)/1.5⌋: those own 1, 2, 1, 2, ... of them.
        // Together
        // row 0 → 1; rows 1 and 2 → 2 + 1 = 3; row 3 → 2; rows 4 and 5 → 1 + 2 = 3: lines of 1, 3, 2, 3, ... rows.
        // Columns alike, since the 160 free raster columns are 240 of the panel.
        Measures.Shape shape = measures.shape();
        assertThat(measures.pixelAspectRatio()).isEqualTo(Rational.ONE);
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(9, 4));
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(9, 4));
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.ZERO);
        assertThat(shape.leastDotWidth()).isEqualTo(1);
        assertThat(shape.greatestDotWidth()).isEqualTo(3);
        assertThat(shape.leastLineHeight()).isEqualTo(1);
        assertThat(shape.greatestLineHeight()).isEqualTo(3);
        // Columns are centred 1/6, 1/2 or 5/6 between samples, never on one: each mixes four dots.
        assertThat(shape.blendedColumnsPercent()).isEqualTo(Rational.of(100));
        // 1440 of 1920 columns.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(75));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));
        assertThat(shape.croppedLines()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedDots()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedLines()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedDots()).isEqualTo(Rational.ZERO);

        // Latency. Row j looks at field line (j + 1/2)/3 − 1/4 in the top field, − 3/4 in the bottom one, which begins
        // half
        // a line later, and needs two lines beyond its whole part. The picture begins in row 5 + 20 = 25. Three rows,
        // 0.004 T, outlast a line, 0.003 810 T: writing is the slower, the first rows decide.
        //   Top field, row 1: 1/4, line 2: 21/262.5 − 26/750 = 0.045 333 T.
        //   Bottom field, row 2: 1/12, line 2: 21.5/262.5 − 27/750 = 241/5250 T = 0.045 905 T, the greater: D.
        // Shown line: ⌊j/3 + 1/4⌋ and ⌊j/3 − 1/4⌋. Top field:
        //   line 0, row 0: D + 25/750 − 18/262.5 = 0.010 667 T = 0.177 956 ms (bottom field 18.5: 0.146 178, the
        // least);
        //   line 120 from row 360: D + 385/750 − 138/262.5 = 0.033 524 T = 0.559 289 (bottom, row 361: 0.549 756);
        //   line 239 from row 717: D + 742/750 − 257/262.5 = 0.056 190 T = 0.937 444 (bottom, row 718: 0.927 911);
        //   and in row 719: D + 744/750 − 257/262.5 = 0.058 857 T = 0.981 933. And 20 µs each. Bob adds no field.
        Answers.latency(
                measures.addedLatencyMs(),
                Basis.COMPUTED,
                "0.197956",
                "0.579289",
                "0.957444",
                "0.166178",
                "0.579289",
                "1.001933");
        Answers.flatLatency(measures.displayLagMs(), Basis.MEASURED, "9.000000", "10.000000", "12.000000");
        Answers.latency(
                measures.totalLatencyMs(),
                Basis.COMPUTED,
                "10.197956",
                "10.579289",
                "10.957444",
                "9.166178",
                "10.579289",
                "13.001933");
        // 1.001 933/16.683 333.
        assertThat(printed(measures.addedLatencyFields(), 9)).isEqualTo("0.060055944");
        // (0.058 857 + 1/750) · 262.5 = 15.8: 16 lines, and one behind for the fourth tap.
        assertThat(measures.bufferedLines()).isEqualTo(17);
        assertThat(measures.fieldStores()).isNull();
        assertThat(measures.dropOrRepeatEverySeconds()).isNull();

        // Detail 2 · 5.872 799/12.272 727 = 0.957 049.
        assertThat(measures.linkDetail().combined()).isEqualTo(Rational.of(64_600_789, 67_500_000));

        // Criteria. Uniformity: 2 · 1/3 − 1 is below 0. Coverage: 1440 · 1080 is the greatest 4:3 area. Shown at field
        // rate:
        // motion 1. Latency 2^(−10.579 289/16.7) = 0.644 614. Effort 1/(1 + 6/4) = 0.4. Cost 18 + 150: 2^(−168/150) =
        // 0.460 094. Sum 6.461 756 of 9.
        Answers.price(setup, "168", "158", "178");
        Answers.criteria(
                setup,
                0.717973060374,
                told(Criterion.DOT_UNIFORMITY, 1.0 / 3, 0, 1),
                told(Criterion.ASPECT, 0, 1, 1),
                told(Criterion.COVERAGE, 75, 1, 1),
                told(Criterion.MOTION, 0, 1, 1),
                told(Criterion.LATENCY, 10.579289, halfPerFrame(10.579288888889), 1),
                told(Criterion.ACCEPTANCE, Double.NaN, 1, 1),
                told(Criterion.LINK_DETAIL, 0.957049, 64_600_789.0 / 67_500_000, 1),
                told(Criterion.EFFORT, 6, 0.4, 1),
                told(Criterion.COST, 168, 0.460093825312, 1));
        assertThat(setup.paretoOptimal()).isTrue();
        Answers.findings(setup, "assumed.plain-lead", "deinterlace.flicker");

        // Counts. 1 row a line (640 columns are the exact width and the whole one), 2 and 3 rows with crop (1280 and
        // 1920
        // columns), 1.5 rows (960, 640 and 1280): 6, by two deinterlacers: 12.
        // Motion adaptation keeps a field of ⌈262.5⌉ = 263 lines beside the others: 6 go for memory. Bob needs, by the
        // same
        // walk over both fields, 76 lines at 1 row a line (480 rows, written in 0.64 T, of lines read in 0.914 T), 77
        // at
        // 2 (180 lines of each field) and 137 at 3 (120 lines): 3 more, nearest 76. At 1.5 rows, 640 columns are a
        // third
        // too narrow and 1280 a third too wide.
        Answers.counts(result, 12, 11);
        Answers.refused(
                result,
                "buffer.lines-exceed-memory × 9: 76 against 48",
                "limit.aspectErrorPercent × 2: 100/3 against 1");
    }
}
