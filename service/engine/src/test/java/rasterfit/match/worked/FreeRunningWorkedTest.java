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
 * 240 lines scaled to 720 from two field stores, at 60 Hz or at 60/1.001 Hz, on a 1080p television of unknown overscan:
 * two answers that differ only in what the rate decides.
 */
class FreeRunningWorkedTest {
    private static final Frequency SIXTY = Frequency.ofHz(60);
    private static final Frequency SLOWER = Frequency.ofHz(60_000, 1001);

    private static MatchResult match() {
        Processing scale = new Processing.RasterScale(
                "scale",
                List.of(Gear.offered(4)),
                new ScaleAxis(ScaleAxis.Factors.ANY, 2, 0),
                new ScaleAxis(ScaleAxis.Factors.ANY, 2, 48),
                List.of(),
                List.of(new RateLock.FreeRunning(List.of(SLOWER, SIXTY), 2)),
                Fact.known(15));
        return Gear.match(
                Gear.half525(new Window(256, 240, 65, 18)),
                List.of(Gear.converter(
                        Gear.digitiser(110_000_000, 1364),
                        scale,
                        Gear.digitalOut(LinkKind.HDMI, true),
                        5,
                        "80",
                        "120")),
                Gear.screen(
                        DisplayClass.TELEVISION,
                        1920,
                        1080,
                        AspectControl.FILL,
                        Fact.unknown(),
                        Gear.television(4, 16),
                        List.of(),
                        null),
                Intent.EVEN_WEIGHTS,
                Map.of(),
                2,
                Limit.atLeast(LimitedMeasure.COVERAGE_HEIGHT_PERCENT, Rational.of(100)),
                Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.ONE));
    }

    /** What both answers share: sampling and shape. */
    private static void sameDots(ModeSetting setting, Frequency fieldRate, Frequency clock) {
        // VIC 4: 1650 × 750. 240 lines by 3 rows; 3 · 256 · 8/7 = 877.71, drawn on 878 columns from ⌊402/2⌋ = 201.
        assertThat(setting.outputTiming())
                .isEqualTo(new Raster(clock, 1280, Rational.of(1650), 720, Rational.of(750), Scan.PROGRESSIVE));
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
                        878,
                        720,
                        201,
                        0,
                        18,
                        240,
                        "FREE_RUNNING",
                        fieldRate,
                        null,
                        AspectControl.FILL));
        Measures measures = setting.measures();
        assertThat(measures.sampling().samplesPerDot()).isEqualTo(Rational.of(4));
        assertThat(measures.sampling().softSamplesPerDot()).isEqualTo(2);
        assertThat(measures.sampling().edgeSoftness()).isCloseTo(Gear.SOFTNESS, within(1e-9));

        // A television of unknown overscan hides 3 % of an HD raster at each edge: 21.6 of 720 rows, 38.4 of 1280
        // columns. 676.8 rows on 1080 and 1203.2 columns on 1920: both 75/47 = 1.596.
        Measures.Shape shape = measures.shape();
        assertThat(measures.pixelAspectRatio()).isEqualTo(Rational.of(8, 7));
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(225, 47));
        // 878/256 · 75/47 = 32 925/6016 = 5.473; 439/128 / 3 · 7/8 = 3073/3072.
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(32_925, 6016));
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(25, 768));
        // Both stages: a dot has 3 or 4 raster columns, 3 get 4 or 5 panel columns (4.79), 4 get 6 or 7 (6.38). A line
        // has 3 raster rows: 4 or 5 panel rows.
        assertThat(shape.leastDotWidth()).isEqualTo(4);
        assertThat(shape.greatestDotWidth()).isEqualTo(7);
        assertThat(shape.leastLineHeight()).isEqualTo(4);
        assertThat(shape.greatestLineHeight()).isEqualTo(5);
        // Two taps, samples s and s + 1 with s = ⌊(c + 1/2) · 1024/878 − 1/2⌋, are of two dots where s is the last of
        // four: 218 of 878 raster columns; traced back from the panel (counted one by one) 348 of 1402 panel columns.
        assertThat(shape.blendedColumnsPercent()).isEqualTo(Rational.of(34_800, 1402));
        // 21.6 rows are 7.2 lines, at the top and at the bottom; 201 columns are free at the left.
        assertThat(shape.croppedLines()).isEqualTo(Rational.of(72, 5));
        assertThat(shape.croppedUsedLines()).isEqualTo(Rational.of(72, 5));
        assertThat(shape.croppedUsedLinesPercent()).isEqualTo(Rational.of(6));
        assertThat(shape.croppedDots()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedDots()).isEqualTo(Rational.ZERO);
        // 256 · 5.473 = 1401.06 of 1920 columns; 225.6 lines by 4.787 are all 1080 rows.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(54_875, 752));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));
        assertThat(measures.acceptance().grade()).isEqualTo(AcceptanceGrade.LISTED);
        assertThat(measures.fieldStores()).isEqualTo(2);
        assertThat(measures.bufferedLines()).isNull();
        assertThat(measures.tearDriftPicturesPerSecond()).isNull();
        // A television with an ordinary preset: 60 [30–120] ms.
        Answers.flatLatency(measures.displayLagMs(), Basis.ASSUMED, "30.000000", "60.000000", "120.000000");
    }

    @Test
    void atSixtyHertz() {
        RankedSetup setup = match().ranked().get(0);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        Answers.route(setup, "rgb", "lead", "box", "screen");
        sameDots(setting, SIXTY, Frequency.ofHz(74_250_000));
        Answers.sameCountsAs(measures.acceptance(), "vic:4", Rational.ZERO);

        // 29 531 250/491 381 − 60 = 48 390/491 381 Hz: one field is dropped every 10.154 598 s.
        assertThat(measures.dropOrRepeatEverySeconds()).isEqualTo(Rational.of(491_381, 48_390));

        // Latency. Line i waits (240 − i) · 63.508 995 µs for the last line of its field, 0 to min(T, To) = T = 16.639
        // 357
        // ms for a frame to begin, and row j takes j · To/750 = j · 22.222 222 µs. At age 0: top 15.242 159 ms; middle,
        // line 120 in row 360: 7.621 079 + 8 = 15.621 079; bottom, line 239 in row 717: 0.063 509 + 15.933 333 =
        // 15.996 842. Three rows, 66.667 µs, outlast a line, so row 719 is the latest: 0.063 509 + 15.977 778 = 16.041
        // 287.
        // Half of T, 8.319 678, at mean age; all of it at the greatest; 15 µs of electronics.
        Answers.latency(
                measures.addedLatencyMs(),
                Basis.COMPUTED,
                "23.576837",
                "23.955758",
                "24.331521",
                "15.257159",
                "23.955758",
                "32.695643");
        Answers.latency(
                measures.totalLatencyMs(),
                Basis.ASSUMED,
                "83.576837",
                "83.955758",
                "84.331521",
                "45.257159",
                "83.955758",
                "152.695643");
        // 32.695 643/16.639 357.
        assertThat(printed(measures.addedLatencyFields(), 9)).isEqualTo("1.964958390");

        // Criteria. Uniformity: dots 2 · 4/7 − 1 = 1/7 of 0.663 898 = 0.094 843, the lines' 2 · 4/5 − 1 = 0.6.
        // Coverage:
        // 1401.06 is more than 1316.57, so 1, times 225.6/240. Motion 1/(1 + 4 · 0.098 478) = 0.717 406. Latency
        // 2^(−83.955 758/16.7) = 0.030 664. Effort 1/(1 + 5/4) = 4/9. Cost 18 + 100: 2^(−118/150) = 0.579 682. Sum
        // 5.807 040 of 9.
        Answers.price(setup, "118", "98", "138");
        Answers.criteria(
                setup,
                0.645226625132,
                told(Criterion.DOT_UNIFORMITY, 4.0 / 7, (1 - Gear.SOFTNESS) / 7, 1),
                told(Criterion.ASPECT, 0.032552, 1, 1),
                told(Criterion.COVERAGE, 72.972074, 0.94, 1),
                told(Criterion.MOTION, 0.098478, 0.717406316748, 1),
                told(Criterion.LATENCY, 83.955758, halfPerFrame(83.955757671958), 1),
                told(Criterion.ACCEPTANCE, Double.NaN, 1, 1),
                told(Criterion.LINK_DETAIL, 1, 1, 1),
                told(Criterion.EFFORT, 5, 4.0 / 9, 1),
                told(Criterion.COST, 118, 0.579681895438, 1));
        assertThat(setup.paretoOptimal()).isTrue();
        Answers.findings(
                setup,
                "assumed.plain-lead",
                "motion.fields-dropped-or-repeated",
                "assumed.display-lag",
                "assumed.overscan");
    }

    @Test
    void atSixtyHertzLessAThousandth() {
        MatchResult result = match();
        assertThat(result.ranked()).hasSize(2);
        RankedSetup setup = result.ranked().get(1);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        // 1650 · 750 · 60 000/1001 Hz = 74.175 824 MHz, 1/1001 below VIC 4's own rate.
        sameDots(setting, SLOWER, Frequency.ofHz(74_250_000_000L, 1001));
        Answers.sameCountsAs(measures.acceptance(), "vic:4", Rational.of(-100, 1001));

        // 60.098 478 − 59.940 060 = 7 083 750/44 715 671 = 0.158 418 Hz: a field dropped every 6.312 429 s (DOMAIN §8).
        assertThat(measures.dropOrRepeatEverySeconds()).isEqualTo(Rational.of(44_715_671, 7_083_750));
        // Rows of 22.244 444 µs, age as before: row 360 begins 8.008 ms into the frame, row 717 15.949 267, row 719
        // 15.993 756: at age 0 middle 15.629 079, bottom 16.012 776, greatest 16.057 265.
        Answers.latency(
                measures.addedLatencyMs(),
                Basis.COMPUTED,
                "23.576837",
                "23.963758",
                "24.347454",
                "15.257159",
                "23.963758",
                "32.711621");
        // Motion 1/(1 + 4 · 0.158 418) = 0.612 119; latency 2^(−83.963 758/16.7) = 0.030 654. Sum 5.701 742 of 9.
        Answers.criteria(
                setup,
                0.633526853526,
                told(Criterion.DOT_UNIFORMITY, 4.0 / 7, (1 - Gear.SOFTNESS) / 7, 1),
                told(Criterion.ASPECT, 0.032552, 1, 1),
                told(Criterion.COVERAGE, 72.972074, 0.94, 1),
                told(Criterion.MOTION, 0.158418, 0.612118552614, 1),
                told(Criterion.LATENCY, 83.963758, halfPerFrame(83.963757671958), 1),
                told(Criterion.ACCEPTANCE, Double.NaN, 1, 1),
                told(Criterion.LINK_DETAIL, 1, 1, 1),
                told(Criterion.EFFORT, 5, 4.0 / 9, 1),
                told(Criterion.COST, 118, 0.579681895438, 1));
        // Worse motion and latency, the same risk and cost.
        assertThat(setup.paretoOptimal()).isFalse();

        // Counts. 1, 2 and 3 rows a line (3 is the fit as well), 4 and 5 with crop: five by three widths by two rates:
        // 30.
        // 4 rows lose 60 lines, 5 lose 96, and none may go: 6 widths by 2 rates. Whole numbers of columns at 1, 2 and 3
        // rows: 6 by 2, nearest 1 by 1 and 2 by 2: −1/8. Exact at 1 and 2 rows: 2 by 2, nearest 480 rows · 75/47 of
        // 1080.
        // (5 rows would lose 32.02 or 42.67 of 256 dots; 48 may go.)
        Answers.counts(result, 30, 28);
        Answers.refused(
                result,
                "scale.lines-cropped-exceed-limit × 12: 60 against 0",
                "limit.aspectErrorPercent × 12: 25/2 against 1",
                "limit.coverageHeightPercent × 4: 10000/141 against 100");
    }
}
