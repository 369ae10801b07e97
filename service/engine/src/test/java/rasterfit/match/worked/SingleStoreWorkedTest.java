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
 * A 50 Hz console at 60 Hz from a single field store: the picture tears. Every sample lies on one column, so the sample
 * count makes the shape.
 *
 * <p>The console: 6/5 · 4 433 618.75 Hz = 5 320 342.5 Hz, 341 dots, 312 lines: line rate 967 335/62 = 15 602.177 Hz
 * (64.093 618 µs), field rate 322 445/6448 = 50.006 979 Hz (T = 19.997 209 ms). A dot is 7 375 000/5 320 342.5 =
 * 2 950 000/2 128 137 = 1.386 189 wide.
 */
class SingleStoreWorkedTest {
    private static MatchResult match() {
        Processing scale = new Processing.RasterScale(
                "scale",
                List.of(Gear.offered(4)),
                new ScaleAxis(ScaleAxis.Factors.WHOLE, 1, 0),
                new ScaleAxis(ScaleAxis.Factors.WHOLE, 1, 0),
                List.of(),
                List.of(new RateLock.FreeRunning(List.of(), 1)),
                Fact.known(10));
        LagReading lag = new LagReading(
                null,
                new Fact.Within(Rational.of(10), Rational.of(14), Rational.of(20)),
                LagReading.Method.NOT_STATED,
                null,
                Basis.DECLARED);
        return Gear.match(
                // 200 of the 240 lines are drawn, from the twentieth on.
                Gear.mode(
                        LineStandard.L625_50,
                        "5320342.5",
                        "341",
                        "312",
                        new Window(256, 240, 65, 41),
                        new Window(256, 200, 65, 61)),
                Gear.converter(
                        Gear.digitiser(110_000_000, 1023, 1364, 1705),
                        scale,
                        Gear.digitalOut(LinkKind.HDMI, true),
                        2,
                        "30",
                        "60"),
                Gear.screen(
                        DisplayClass.TELEVISION,
                        1920,
                        1080,
                        AspectControl.FILL,
                        Fact.known(Rational.of(5, 2)),
                        Gear.television(4),
                        List.of(lag),
                        null),
                Intent.LEAST_DELAY,
                Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.of(5)));
    }

    @Test
    void everyFigureOfTheAnswer() {
        MatchResult result = match();
        RankedSetup setup = result.ranked().get(0);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        Answers.route(setup, "rgb", "lead", "box", "screen");

        // VIC 4 as it is printed. 1364 = 4 · 341 samples: 256 dots are 1024 samples, as many columns, from ⌊256/2⌋ =
        // 128.
        assertThat(setting.outputTiming())
                .isEqualTo(new Raster(
                        Frequency.ofHz(74_250_000), 1280, Rational.of(1650), 720, Rational.of(750), Scan.PROGRESSIVE));
        assertThat(setting.settings())
                .isEqualTo(new Settings(
                        Settings.Kind.RASTER_SCALE,
                        "scale",
                        "vic:4",
                        720,
                        null,
                        1364,
                        null,
                        Rational.of(65),
                        Rational.of(256),
                        1024,
                        720,
                        128,
                        0,
                        41,
                        240,
                        "FREE_RUNNING",
                        Frequency.ofHz(60),
                        null,
                        AspectControl.FILL));

        // 1364 · 967 335/62 = 21 281 370 Hz. Soft: 5.320 342 5 MHz · 62.596 793 ns = 0.333 036 of a dot, 1.33 samples:
        // 2.
        Measures.Sampling sampling = measures.sampling();
        assertThat(sampling.samplesPerDot()).isEqualTo(Rational.of(4));
        assertThat(sampling.sampleRate()).isEqualTo(Frequency.ofHz(21_281_370));
        assertThat(sampling.edgeSoftness()).isCloseTo(0.3330363800315, within(1e-9));
        assertThat(sampling.softSamplesPerDot()).isEqualTo(2);
        assertThat(sampling.considered()).isEqualTo(3);

        // 2.5 % at each edge: 18 rows and 32 columns. 684 rows on 1080, 1216 columns on 1920: both 30/19.
        Measures.Shape shape = measures.shape();
        assertThat(measures.pixelAspectRatio()).isEqualTo(Rational.of(2_950_000, 2_128_137));
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(90, 19));
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(120, 19));
        // 4/3 · 2 128 137/2 950 000 = 8 512 548/8 850 000: 337 452/8 850 000 too narrow, 3.813 %.
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(-28_121, 7375));
        // Edges 120/19 = 6.32 columns and 90/19 = 4.74 rows apart.
        assertThat(shape.leastDotWidth()).isEqualTo(6);
        assertThat(shape.greatestDotWidth()).isEqualTo(7);
        assertThat(shape.leastLineHeight()).isEqualTo(4);
        assertThat(shape.greatestLineHeight()).isEqualTo(5);
        assertThat(shape.blendedColumnsPercent()).isEqualTo(Rational.ZERO);
        // 18 rows are 6 lines at either end, where 20 are not drawn; 128 columns are free where 32 are hidden.
        assertThat(shape.croppedLines()).isEqualTo(Rational.of(12));
        assertThat(shape.croppedUsedLines()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedLinesPercent()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedDots()).isEqualTo(Rational.ZERO);
        // 256 · 120/19 = 1616.84 of 1920 columns: 1600/19 %.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(1600, 19));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));

        // Latency. A row shows what was written last: a line, 64.093 618 µs, to a line and min(T, To) = 16.666 667 ms;
        // at
        // mean age 8.397 427 ms at every line; 10 µs of electronics.
        Answers.flatLatency(measures.addedLatencyMs(), Basis.COMPUTED, "0.074094", "8.407427", "16.740760");
        Answers.flatLatency(measures.displayLagMs(), Basis.DECLARED, "10.000000", "14.000000", "20.000000");
        // The sum of a computed and a declared part is computed.
        Answers.flatLatency(measures.totalLatencyMs(), Basis.COMPUTED, "10.074094", "22.407427", "36.740760");
        // 16.740 760/19.997 209: within the one field of the intent.
        assertThat(printed(measures.addedLatencyFields(), 9)).isEqualTo("0.837154846");
        assertThat(measures.fieldStores()).isEqualTo(1);
        assertThat(measures.bufferedLines()).isNull();

        // Motion. 60 − 322 445/6448 = 64 435/6448 = 9.993 021 fields a second are shown twice, one every 0.100 070 s,
        // and as
        // often the tear passes the picture. 0.7/(1 + 4 · 9.993 021) = 0.017 085.
        assertThat(measures.dropOrRepeatEverySeconds()).isEqualTo(Rational.of(6448, 64_435));
        assertThat(measures.tearDriftPicturesPerSecond()).isEqualTo(Rational.of(64_435, 6448));

        assertThat(measures.acceptance().grade()).isEqualTo(AcceptanceGrade.LISTED);
        Answers.sameCountsAs(measures.acceptance(), "vic:4", Rational.ZERO);
        assertThat(measures.linkDetail().combined()).isEqualTo(Rational.ONE);

        // Criteria with the weights of least delay, 16 without the mode switch. Uniformity: dots 2 · 6/7 − 1 = 5/7 of
        // 0.666 964 = 0.476 403; lines 0.6. Aspect (15 − 3.813 017)/14 = 0.799 070. Coverage: 1616.84 of 1596.89
        // columns,
        // nothing drawn is lost: 1. Latency 2^(−22.407 427/16.7) = 0.394 538. Effort 1/(1 + 2/4) = 2/3. Cost 18 + 45:
        // 2^(−63/150) = 0.747 425. Sum 0.476 403 + 0.799 070 + 0.5 + 0.034 170 + 2.367 231 + 3 + 1 + 0.333 333 + 0.747
        // 425.
        Answers.price(setup, "63", "48", "78");
        Answers.criteria(
                setup,
                0.578601951592,
                told(Criterion.DOT_UNIFORMITY, 0.8, 0.476402585692, 1),
                told(Criterion.ASPECT, 3.813017, (15 - 28_121.0 / 7375) / 14, 1),
                told(Criterion.COVERAGE, 84.210526, 1, 0.5),
                told(Criterion.MOTION, 9.993021, 0.017084803246, 2),
                told(Criterion.LATENCY, 22.407427, halfPerFrame(22.407426951366), 6),
                told(Criterion.ACCEPTANCE, Double.NaN, 1, 3),
                told(Criterion.LINK_DETAIL, 1, 1, 1),
                told(Criterion.EFFORT, 2, 2.0 / 3, 0.5),
                told(Criterion.COST, 63, 0.747424624317, 1));
        assertThat(setup.paretoOptimal()).isTrue();
        Answers.findings(setup, "assumed.plain-lead", "motion.fields-dropped-or-repeated", "motion.picture-tears");

        // Counts. Across, each sample on 1, 2, ... columns, up to as many as make square dots of one sample: 1.386
        // times
        // the rows of a line, rounded up. 1 to 5 rows a line (4 and 5 with crop): 2 + 3 + 5 + 6 + 7 = 23, by three
        // sample counts: 69. Two columns a sample are 1536 or more, and no dot may go: 69 − 5 · 3 = 54, nearest 2
        // columns
        // of 1023 samples, of whose 256 dots 256 · 256/1536 = 42 2/3 go. 4 and 5 rows lose 60 and 96 lines: 2 · 3. Of
        // the other 9, the shape of 3, 4 or 5 columns by 1, 2 or 3 rows errs by more than 5 % but for 4 by 3; nearest
        // is 3
        // by 2: 3/2 · 2 128 137/2 950 000 = 1.082 104.
        Answers.counts(result, 69, 68);
        Answers.refused(
                result,
                "scale.dots-cropped-exceed-limit × 54: 128/3 against 0",
                "scale.lines-cropped-exceed-limit × 6: 60 against 0",
                "limit.aspectErrorPercent × 8: 484411/59000 against 5");
    }
}
