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
import rasterfit.gear.Converter;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.LagReading;
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
 * 240 lines scaled to 1080 in step with the source: all lines on all rows with four taps on a 2160p television, and 216
 * lines at five rows each without a filter on a 1080p one.
 *
 * <p>Both leave as VIC 16 (2200 × 1125) at 60.098 478 Hz: clock 2200 · 1125 · 29 531 250/491 381 Hz = 148.743 732 MHz,
 * which is 29 531 250/(491 381 · 60) − 1 = 806.5/491 381 = 0.164 129 % (1641.29 ppm) above 148.5 MHz. A row takes
 * T/1125 = 14.790 539 µs; the first is row 4 + 5 + 36 − 4 = 41 from the leading edge of sync. Source lines are numbered
 * likewise.
 */
class LockedScaleWorkedTest {
    private static final Rational CLOCK_PERCENT = Rational.of(80_650, 491_381);
    private static final Frequency FIELD_RATE = Frequency.ofHz(29_531_250, 491_381);

    private static Converter scaler(int taps, int pipelineUs, int toTune, String price) {
        Processing scale = new Processing.RasterScale(
                "scale",
                List.of(Gear.offered(16)),
                new ScaleAxis(ScaleAxis.Factors.ANY, taps, 48),
                new ScaleAxis(ScaleAxis.Factors.ANY, taps, 0),
                List.of(),
                List.of(new RateLock.SourceLocked(Rational.of(3000), null, 48)),
                Fact.known(pipelineUs));
        return Gear.converter(
                Gear.digitiser(110_000_000, 1364), scale, Gear.digitalOut(LinkKind.HDMI, true), toTune, price, price);
    }

    private static void fourSamplesPerDot(Measures.Sampling sampling) {
        // 1364 = 4 · 341; 1364 · 15 745.801 Hz = 236.25/11 MHz; 1.344 of 4 samples are soft: 2.
        assertThat(sampling.samplesPerDot()).isEqualTo(Rational.of(4));
        assertThat(sampling.sampleRate()).isEqualTo(Frequency.ofHz(236_250_000, 11));
        assertThat(sampling.dotLocked()).isTrue();
        assertThat(sampling.edgeSoftness()).isCloseTo(Gear.SOFTNESS, within(1e-9));
        assertThat(sampling.softSamplesPerDot()).isEqualTo(2);
        assertThat(sampling.considered()).isEqualTo(1);
    }

    private static Settings settings(int width, int left, int firstLine, int lines, AspectControl control) {
        return new Settings(
                Settings.Kind.RASTER_SCALE,
                "scale",
                "vic:16",
                1080,
                null,
                1364,
                null,
                Rational.of(65),
                Rational.of(256),
                width,
                1080,
                left,
                0,
                firstLine,
                lines,
                "SOURCE_LOCKED",
                FIELD_RATE,
                null,
                control);
    }

    private static void vic16(ModeSetting setting) {
        assertThat(setting.outputTiming())
                .isEqualTo(new Raster(
                        Frequency.ofHz(6_644_531_250_000L, 44_671),
                        1920,
                        Rational.of(2200),
                        1080,
                        Rational.of(1125),
                        Scan.PROGRESSIVE));
        Measures.Acceptance acceptance = setting.measures().acceptance();
        assertThat(acceptance.grade()).isEqualTo(AcceptanceGrade.LISTED);
        Answers.sameCountsAs(acceptance, "vic:16", CLOCK_PERCENT);
        assertThat(acceptance.fallback()).isNull();
    }

    @Test
    void allLinesOnAllRowsWithFourTaps() {
        MatchResult result = Gear.match(
                Gear.half525(new Window(256, 240, 65, 18)),
                scaler(4, 12, 7, "110"),
                Gear.screen(
                        DisplayClass.TELEVISION,
                        3840,
                        2160,
                        AspectControl.FILL,
                        Fact.known(0),
                        Gear.television(16),
                        List.of(),
                        true),
                Intent.LEAST_DELAY,
                Limit.atMost(LimitedMeasure.CROPPED_LINES, Rational.ZERO),
                Limit.atLeast(LimitedMeasure.COVERAGE_HEIGHT_PERCENT, Rational.of(100)),
                Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.ONE));
        RankedSetup setup = result.ranked().get(0);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        Answers.route(setup, "rgb", "lead", "box", "screen");
        vic16(setting);
        fourSamplesPerDot(measures.sampling());

        // First stage: 1080/240 = 4.5 rows a line; 4.5 · 256 · 8/7 = 1316.57 columns, drawn on 1317 from ⌊603/2⌋ = 301.
        assertThat(setting.settings()).isEqualTo(settings(1317, 301, 18, 240, AspectControl.FILL));
        // Second stage: 2 × 2 panel pixels each. 9 rows a line, 1317/128 = 10.289 columns a dot.
        Measures.Shape shape = measures.shape();
        assertThat(measures.pixelAspectRatio()).isEqualTo(Rational.of(8, 7));
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(9));
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(1317, 128));
        // 1317/1152 · 7/8 = 9219/9216: 3/9216.
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(25, 768));
        // 5.14 columns a dot: 5 or 6, doubled; 4.5 rows a line: 4 or 5, doubled.
        assertThat(shape.leastDotWidth()).isEqualTo(10);
        assertThat(shape.greatestDotWidth()).isEqualTo(12);
        assertThat(shape.leastLineHeight()).isEqualTo(8);
        assertThat(shape.greatestLineHeight()).isEqualTo(10);
        // Column c is centred on sample (c + 1/2) · 1024/1317 − 1/2, never a whole one (an even number would be an odd
        // one), and mixes samples s − 1 to s + 2. Those are of one dot only where s is the second of its four. One in
        // four of the 1024 samples, 256, owns the 1317/1024 = 1.286 columns from there on: 330 columns in all (counted
        // one by one), so 987 of 1317 mix dots.
        assertThat(shape.blendedColumnsPercent()).isEqualTo(Rational.of(98_700, 1317));
        // 2634 of 3840 columns, all rows.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(2195, 32));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));
        assertThat(shape.croppedLines()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedDots()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedLines()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedDots()).isEqualTo(Rational.ZERO);

        // Latency (DOMAIN §8 gives D = 0.6977, greatest 0.9456, 17 lines). Row j is centred on line (j + 1/2)/4.5 − 1/2
        // and needs two lines beyond its whole part. 9 rows take 9/1125 = 0.008 T and 2 lines 2/262 = 0.007 634 T:
        // writing is the slower, so the first rows decide. Row 2 (2.5/4.5 − 0.5 = 0.056) needs line 2: it has arrived
        // at
        // (18 + 3)/262 T, and 43/1125 T of the frame have passed: D = 21/262 − 43/1125 = 12 359/294 750 T = 0.697 696.
        // (Row 0 at −0.39 needs line 1: 20/262 − 41/1125 = 0.039 892 T is less.)
        // Top: D + 41/1125 − 18/262 = 0.009 673 T. Middle, line 120 from row 540: D + 581/1125 − 138/262 = 0.031 657 T.
        // Bottom, line 239 from row ⌈1075.5⌉ = 1076: D + 1117/1125 − 257/262 = 0.053 903 T. Greatest: row 1075 still
        // shows line 238: D + 1116/1125 − 256/262 = 0.056 831 T = 0.945 635 ms. And 12 µs each.
        Answers.latency(
                measures.addedLatencyMs(),
                Basis.COMPUTED,
                "0.172946",
                "0.538758",
                "0.908916",
                "0.172946",
                "0.538758",
                "0.957635");
        // A television's low-delay preset of unknown lag: 8 [3–25] ms.
        Answers.flatLatency(measures.displayLagMs(), Basis.ASSUMED, "3.000000", "8.000000", "25.000000");
        Answers.latency(
                measures.totalLatencyMs(),
                Basis.ASSUMED,
                "8.172946",
                "8.538758",
                "8.908916",
                "3.172946",
                "8.538758",
                "25.957635");
        assertThat(printed(measures.addedLatencyFields(), 9)).isEqualTo("0.057552395");
        // (0.056 831 + 1/1125) · 262 = 15.12: 16 lines, and one behind for the fourth tap.
        assertThat(measures.bufferedLines()).isEqualTo(17);
        assertThat(measures.fieldStores()).isNull();
        assertThat(measures.dropOrRepeatEverySeconds()).isNull();

        // Criteria with the weights of least delay, 16 without the mode switch. Uniformity: dots 2 · 10/12 − 1 = 2/3 of
        // 0.663 898 = 0.442 599, less than the lines' 2 · 8/10 − 1 = 0.6. Coverage 2634 of 2633.14 columns: 1. Latency
        // 2^(−8.538 758/16.7) = 0.701 589. Effort 1/(1 + 7/4) = 4/11. Cost 2^(−128/150) = 0.553 504. Sum: 0.442 599 + 1
        // + 0.5 + 2 + 6 · 0.701 589 + 3 + 1 + 0.181 818 + 0.553 504 = 12.887 453.
        Answers.price(setup, "128", "128", "128");
        Answers.criteria(
                setup,
                0.805465785830,
                told(Criterion.DOT_UNIFORMITY, 0.8, (1 - Gear.SOFTNESS) * 2 / 3, 1),
                told(Criterion.ASPECT, 0.032552, 1, 1),
                told(Criterion.COVERAGE, 68.59375, 1, 0.5),
                told(Criterion.MOTION, 0, 1, 2),
                told(Criterion.LATENCY, 8.538758, halfPerFrame(8.538757715226), 6),
                told(Criterion.ACCEPTANCE, Double.NaN, 1, 3),
                told(Criterion.LINK_DETAIL, 1, 1, 1),
                told(Criterion.EFFORT, 7, 4.0 / 11, 0.5),
                told(Criterion.COST, 128, 0.5535043907977, 1));
        assertThat(setup.paretoOptimal()).isTrue();
        Answers.findings(setup, "assumed.plain-lead", "assumed.display-lag");

        // Counts. Rows a line: 1, 2, 3, 4 up to fit, 5 and 6 with crop, 4.5: seven. Across, each has the exact width
        // and
        // the whole numbers of columns below and above 8/7 of it: 3 · 7 = 21 settings.
        // Memory is asked before crop and limits. As above, by ⌈(greatest + 1/1125) · 262⌉ + 1, 1, 2, 3, 4, 4.5, 5 and
        // 6
        // rows a line need 187, 131, 76, 21, 17, 41 and 76 lines: far from 4.5, writing 240 lines over 240/262 of T and
        // reading them over much less (or 180 over more) keeps many waiting. 48 are there: 4 · 3 = 12 go, nearest 76.
        // Of 4, 4.5 and 5 rows, the whole numbers err: 6; nearest is 5 columns by 4.5 rows, 35/36. Exact at 4 rows
        // leaves height free, 960 of 1080: 1. Exact at 5 rows loses 24 lines: 1.
        Answers.counts(result, 21, 20);
        Answers.refused(
                result,
                "buffer.lines-exceed-memory × 12: 76 against 48",
                "limit.aspectErrorPercent × 6: 25/9 against 1",
                "limit.coverageHeightPercent × 1: 800/9 against 100",
                "limit.croppedLines × 1: 24 against 0");
    }

    @Test
    void fiveRowsToALineWithCrop() {
        LagReading lag = new LagReading(
                null,
                new Fact.Within(Rational.of(9), Rational.of(10), Rational.of(12)),
                LagReading.Method.SPLIT_SIGNAL,
                null,
                Basis.PUBLISHED);
        // 224 lines are drawn, lines 12 to 235 of the 240 (from line 18 + 12 = 30).
        MatchResult result = Gear.match(
                Gear.half525(new Window(256, 224, 65, 30)),
                scaler(1, 10, 4, "90"),
                Gear.screen(
                        DisplayClass.TELEVISION,
                        1920,
                        1080,
                        AspectControl.ONE_TO_ONE,
                        Fact.unknown(),
                        Gear.television(16),
                        List.of(lag),
                        null),
                Intent.TRUEST_PICTURE,
                Limit.atLeast(LimitedMeasure.VERTICAL_SCALE, Rational.of(5)));
        RankedSetup setup = result.ranked().get(0);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        vic16(setting);
        fourSamplesPerDot(measures.sampling());

        // 1080/5 = 216 lines: of 12–235 the first and the last 4 go (DOMAIN §7), so lines 16–231, from line 34 of the
        // field. 5 · 256 · 8/7 = 1462.86, drawn on 1463 columns from ⌊457/2⌋ = 228.
        assertThat(setting.settings()).isEqualTo(settings(1463, 228, 34, 216, AspectControl.ONE_TO_ONE));
        Measures.Shape shape = measures.shape();
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(5));
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(1463, 256));
        // 1463/1280 · 7/8 = 10241/10240.
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(5, 512));
        assertThat(shape.leastDotWidth()).isEqualTo(5);
        assertThat(shape.greatestDotWidth()).isEqualTo(6);
        assertThat(shape.leastLineHeight()).isEqualTo(5);
        assertThat(shape.greatestLineHeight()).isEqualTo(5);
        assertThat(shape.blendedColumnsPercent()).isEqualTo(Rational.ZERO);
        // 1463 of 1920 columns.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(7315, 96));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));
        assertThat(shape.croppedLines()).isEqualTo(Rational.of(24));
        assertThat(shape.croppedUsedLines()).isEqualTo(Rational.of(8));
        assertThat(shape.croppedUsedLinesPercent()).isEqualTo(Rational.of(25, 7));
        assertThat(shape.croppedDots()).isEqualTo(Rational.ZERO);

        // Latency (DOMAIN §8 has greatest 2.3681 and 38 lines for the same 216 lines). Row j shows line ⌊j/5⌋. 5 rows
        // take
        // 5/1125 = 0.004 444 T, a line 0.003 817 T: the first row decides, D = 35/262 − 41/1125 = 28 633/294 750 T =
        // 1.616 403 ms. Row j of line i: T/262 + (j/1125 − i/262) · T. Top T/262 = 0.063 509. Middle, line 108 from row
        // 540: 1/262 + 0.48 − 0.412 214 = 0.071 603 T = 1.191 429. Bottom, line 215 from row 1075: 0.138 762 T =
        // 2.308 905. Greatest, row 1079: 0.142 317 T = 2.368 067 ms. And 10 µs each.
        Answers.latency(
                measures.addedLatencyMs(),
                Basis.COMPUTED,
                "0.073509",
                "1.201429",
                "2.318905",
                "0.073509",
                "1.201429",
                "2.378067");
        Answers.flatLatency(measures.displayLagMs(), Basis.PUBLISHED, "9.000000", "10.000000", "12.000000");
        Answers.latency(
                measures.totalLatencyMs(),
                Basis.COMPUTED,
                "10.073509",
                "11.201429",
                "12.318905",
                "9.073509",
                "11.201429",
                "14.378067");
        assertThat(printed(measures.addedLatencyFields(), 9)).isEqualTo("0.142918203");
        // (0.142 317 + 0.000 889) · 262 = 37.52.
        assertThat(measures.bufferedLines()).isEqualTo(38);

        // Criteria with the weights of the truest picture, 19 without the mode switch. Uniformity 2/3 · 0.663 898;
        // coverage 216/224; latency 2^(−11.201 429/16.7) = 0.628 183; effort 1/2; cost 2^(−108/150) = 0.607 097. Sum:
        // 1.770 394 + 3 + 1.928 571 + 3 + 0.628 183 + 2 + 3 + 0.25 + 0.303 549 = 15.880 697.
        Answers.price(setup, "108", "108", "108");
        Answers.criteria(
                setup,
                0.835826162849,
                told(Criterion.DOT_UNIFORMITY, 5.0 / 6, (1 - Gear.SOFTNESS) * 2 / 3, 4),
                told(Criterion.ASPECT, 0.009766, 1, 3),
                told(Criterion.COVERAGE, 76.197917, 27.0 / 28, 2),
                told(Criterion.MOTION, 0, 1, 3),
                told(Criterion.LATENCY, 11.201429, halfPerFrame(11.201428740741), 1),
                told(Criterion.ACCEPTANCE, Double.NaN, 1, 2),
                told(Criterion.LINK_DETAIL, 1, 1, 3),
                told(Criterion.EFFORT, 4, 0.5, 0.5),
                told(Criterion.COST, 108, 0.6070974421975, 0.5));
        Answers.findings(setup, "assumed.plain-lead");

        // Counts. The seven heights of above and the 224 drawn lines on 1080 rows (4.82): 8 · 3 = 24 settings.
        // Without a filter they need 185, 130, 74, 19, 14, 38 and 74 lines, the 224 of 240 at 4.82 rows 30: 1, 2, 3 and
        // 6 rows go for memory, 12, nearest 74 of 48. The intent allows 3 % of aspect error: at 4, 4.82 and 5 rows both
        // whole numbers err by more, at 4.5 rows one (5 columns err by 2.78 %): 7, nearest 6 columns by 5 rows, 6/5 ·
        // 7/8 = 1.05. Fewer than 5 rows: the exact widths at 4, 4.5 and 4.82 and the 5 columns at 4.5: 4, nearest
        // 1080/224 = 135/28.
        Answers.counts(result, 24, 23);
        Answers.refused(
                result,
                "buffer.lines-exceed-memory × 12: 74 against 48",
                "limit.aspectErrorPercent × 7: 5 against 3",
                "limit.verticalScale × 4: 135/28 against 5");
    }
}
