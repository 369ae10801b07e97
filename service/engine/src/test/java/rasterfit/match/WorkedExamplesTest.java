package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rasterfit.Fractions.printed;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * One example per way of processing, worked by hand from first principles; every figure of the answer is derived in the
 * comments before it is asked.
 *
 * <p>What all share. Console: dot clock 3/2 · 315/88 MHz = 59.0625/11 MHz = 5.369318 MHz, 341 dots, 262 lines: line rate
 * 15 745.801 Hz (63.508995 µs), field rate 60.098478 Hz (T = 16.639357 ms); a dot is (135/11)/2 / (59.0625/11) = 8/7 wide.
 * Link: 6 MHz amplifier, plain lead of 100 MHz (assumption), 35 MHz input filter: rise time 0.35 · √(1/36 + 1/10 000 +
 * 1/1225) µs = 0.35 · 0.1693933 µs = 59.28767 ns, jitter 1 ns: softness 5.369318 MHz · 60.28767 ns = 0.3237037; bandwidth
 * 0.35/59.28767 ns = 5.90342 MHz, more than half of the dot clock: detail 1. Converter 100 EUR: 2^(−100/150) = 0.6299605;
 * 4 settings: 1/(1 + 4/4) = 0.5. Display lag 10 ms. Even weights over nine criteria, the mode switch dropping out.
 */
class WorkedExamplesTest {
    private static final double COST = 0.6299605249;
    private static final double EFFORT = 0.5;
    private static final double SHARP = 1 - 0.3237036810;
    private static final double DIGITS = 1e-7;

    private static RankedSetup first(MatchResult result) {
        assertThat(result.ranked()).isNotEmpty();
        return result.ranked().get(0);
    }

    private static void utilities(RankedSetup setup, double... expected) {
        Map<Criterion, Double> told = setup.criteria().stream()
                .collect(Collectors.toMap(MatchResult.CriterionValue::criterion, MatchResult.CriterionValue::utility));
        Criterion[] order = {
            Criterion.DOT_UNIFORMITY,
            Criterion.ASPECT,
            Criterion.COVERAGE,
            Criterion.MOTION,
            Criterion.LATENCY,
            Criterion.ACCEPTANCE,
            Criterion.LINK_DETAIL,
            Criterion.EFFORT,
            Criterion.COST
        };
        double sum = 0;
        for (int i = 0; i < order.length; i++) {
            assertThat(told.get(order[i])).as(order[i].id()).isCloseTo(expected[i], within(DIGITS));
            sum += expected[i];
        }
        assertThat(told).hasSize(order.length);
        assertThat(setup.score()).isCloseTo(sum / order.length, within(DIGITS));
    }

    /** 240 → 960 lines with four samples to a dot, each sample one pixel of a 1080p panel. */
    @Test
    void lineRepetition() {
        RankedSetup setup = first(new Workbench()
                .modes(Modes.half525())
                .display(Workbench.only(AspectControl.ONE_TO_ONE, Workbench.television(0, 16)))
                .converters(Workbench.converter("repeater", Workbench.samples(1364), Workbench.repeat(4)))
                .match());
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();

        // N = 1364 = 4 · 341: r = 4. Clock 4 · 4 · 59.0625/11 MHz = 945/11 MHz; totals 1364 and 4 · 262 = 1048.
        assertThat(setting.outputTiming().pixelClock()).isEqualTo(Frequency.ofHz(945_000_000, 11));
        assertThat(setting.outputTiming().horizontalTotal()).isEqualTo(Rational.of(1364));
        assertThat(setting.outputTiming().verticalTotal()).isEqualTo(Rational.of(1048));
        assertThat(setting.outputTiming().verticalActive()).isEqualTo(960);
        // The window of 256 dots: 1024 samples. (4:3 would take 280 dots; the picture on the panel is the same.)
        assertThat(setting.outputTiming().horizontalActive()).isEqualTo(1024);
        Measures.Sampling sampling = measures.sampling();
        assertThat(sampling).isNotNull();
        assertThat(sampling.samplesPerDot()).isEqualTo(Rational.of(4));
        assertThat(sampling.edgeSoftness()).isCloseTo(0.3237036810, within(1e-9));
        // 4 · 5.369318 MHz · 60.28767 ns = 1.29: 2 of 4 samples are soft.
        assertThat(sampling.softSamplesPerDot()).isEqualTo(2);
        // One to one: 4 columns by 4 rows; 4/4 against 8/7: −12.5 %.
        Measures.Shape shape = measures.shape();
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(4));
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(4));
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(-25, 2));
        assertThat(shape.dotWidthRatio()).isEqualTo(Rational.ONE);
        assertThat(shape.lineHeightRatio()).isEqualTo(Rational.ONE);
        // 1024 · 960 of 1920 · 1080 pixels = 983040/2073600.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(98_304_000, 2_073_600));
        assertThat(shape.croppedLines()).isEqualTo(Rational.ZERO);
        assertThat(shape.blendedColumnsPercent()).isEqualTo(Rational.ZERO);
        // The first copy begins after one line: 63.508995 + 2 µs; the memory holds that line and the one arriving.
        assertThat(printed(measures.addedLatencyMs().greatest(), 6)).isEqualTo("0.065509");
        assertThat(measures.bufferedLines()).isEqualTo(2);
        // 62.98 kHz, 60.1 Hz, 85.9 MHz lie within the limits; nothing listed has 1024 × 960.
        assertThat(measures.acceptance().grade()).isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
        assertThat(measures.acceptance().deviations()).isNull();
        // The picture is 256 · 8/7 : 240 = 1.219 wide; the greatest such area is 1316.57 · 1080.
        double coverage = 1024.0 * 960 / (1080.0 * 1080 * 256 * 8 / 7 / 240);
        // Latency: 2^(−10.065509/16.7) = 0.6585089.
        utilities(setup, SHARP, 2.5 / 14, coverage, 1, 0.6585089302, 0.5, 1, EFFORT, COST);
    }

    /** Digitised at 858 samples and sent on with every sample twice: kin of VIC 8. */
    @Test
    void changeOfFormatAlone() {
        RankedSetup setup = first(new Workbench()
                .modes(Modes.half525())
                .display(Workbench.only(AspectControl.SIGNALLED, Workbench.television(0, 8, 16)))
                .converters(Workbench.converter("digitiser", Workbench.samples(858), Workbench.formatOnly()))
                .limits(Limit.atLeast(LimitedMeasure.ACCEPTANCE, AcceptanceGrade.LISTED.rankFromWorst()))
                .match());
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();

        // 858 · 15 745.8 Hz = 13.51 MHz is below 25 MHz: every sample twice, 27.019795 MHz, 1716 in all.
        assertThat(setting.settings().horizontalRepetition()).isEqualTo(2);
        assertThat(printed(setting.outputTiming().pixelClock().hz(), 0)).isEqualTo("27019795");
        assertThat(setting.outputTiming().horizontalTotal()).isEqualTo(Rational.of(1716));
        assertThat(setting.outputTiming().horizontalActive()).isEqualTo(1440);
        // VIC 8: 1440 × 240 of 1716 × 262 at 27 MHz (CTA-861-I table 1); the clock is 0.0733 % above it.
        assertThat(measures.acceptance().listedAs()).isEqualTo("vic:8");
        assertThat(measures.acceptance().grade()).isEqualTo(AcceptanceGrade.LISTED);
        // 4:3 on 1080 rows is 1440 columns, as many as the raster has: r · 2 = 2 · 78/31 columns per dot, 4.5 rows a
        // line.
        Measures.Shape shape = measures.shape();
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(156, 31));
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(9, 2));
        // 156/31 / (9/2) / (8/7) = 2184/2232 = 91/93: −2/93.
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(-200, 93));
        // Dots of 2 and 3 samples, two columns each: 4 to 6; lines of 4 and 5 rows.
        assertThat(shape.leastDotWidth()).isEqualTo(4);
        assertThat(shape.greatestDotWidth()).isEqualTo(6);
        assertThat(shape.lineHeightRatio()).isEqualTo(Rational.of(4, 5));
        // 256 · 156/31 = 1288.258 of 1920 columns.
        assertThat(printed(shape.coveragePercent(), 4)).isEqualTo("67.0968");
        assertThat(printed(measures.addedLatencyMs().greatest(), 6)).isEqualTo("0.002000");
        double coverage = 256.0 * 156 / 31 * 1080 / (1080.0 * 1080 * 256 * 8 / 7 / 240);
        // 2 · 4/6 − 1 = 1/3; 2^(−10.002/16.7) = 0.6602470.
        utilities(setup, SHARP / 3, (15 - 200.0 / 93) / 14, Math.min(1, coverage), 1, 0.6602470449, 1, 1, EFFORT, COST);
    }

    /** 216 of 240 lines at 5 rows each into 1080 lines, four taps, in step with the source. */
    @Test
    void scalingInStepWithCrop() {
        RankedSetup setup = first(new Workbench()
                .modes(Modes.half525())
                .display(Workbench.only(AspectControl.ONE_TO_ONE, Workbench.television(0, 16)))
                .converters(Workbench.converter(
                        "scaler", Workbench.samples(1364), Workbench.scale(4, List.of(Workbench.locked(3000, 48)), 16)))
                .limits(
                        Limit.atLeast(LimitedMeasure.VERTICAL_SCALE, Rational.of(5)),
                        Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.ONE))
                .match());
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();

        // VIC 16's 2200 × 1125 at 60.098478 Hz: 148.743732 MHz, +0.1641 %.
        assertThat(printed(setting.outputTiming().pixelClock().hz(), 0)).isEqualTo("148743732");
        assertThat(measures.acceptance().grade()).isEqualTo(AcceptanceGrade.LISTED);
        // 12 lines off at top and bottom: from line 18 + 12 = 30. 5 · 256 · 8/7 = 1462.86, drawn on 1463 columns.
        assertThat(setting.settings().firstLine()).isEqualTo(30);
        assertThat(setting.settings().lines()).isEqualTo(216);
        assertThat(setting.settings().pictureWidth()).isEqualTo(1463);
        assertThat(setting.settings().pictureLeft()).isEqualTo(228);
        Measures.Shape shape = measures.shape();
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(5));
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(1463, 256));
        // 1463/256/5 · 7/8 = 10241/10240.
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(100, 10_240));
        assertThat(shape.croppedLines()).isEqualTo(Rational.of(24));
        assertThat(shape.croppedUsedLinesPercent()).isEqualTo(Rational.of(10));
        assertThat(shape.dotWidthRatio()).isEqualTo(Rational.of(5, 6));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));
        // Row j needs line ⌊(2j + 1)/10 − 1/2⌋ + 2: line 2 from row 2 on. A line takes T/262, its 5 rows 5·T/1125 =
        // T/225: reading is the slower, so the first such row decides: D = (30 + 3)/262·T − (41 + 2)/1125·T
        // = 25859/294750 T = 1.459804 ms. Top: D + 41/1125 − 30/262 = 0.160946 ms; row 540 shows line 108: 1.288866;
        // row 1075 shows line 215: 2.406342; row 1079 2.465504 ms; and 10 µs of electronics each.
        assertThat(printed(measures.addedLatencyMs().top(), 6)).isEqualTo("0.170946");
        assertThat(printed(measures.addedLatencyMs().middle(), 6)).isEqualTo("1.298866");
        assertThat(printed(measures.addedLatencyMs().bottom(), 6)).isEqualTo("2.416342");
        assertThat(printed(measures.addedLatencyMs().greatest(), 6)).isEqualTo("2.475504");
        // (2.465504 + 0.014790) / 0.063509 = 39.05: 40 lines, and one behind for the fourth tap.
        assertThat(measures.bufferedLines()).isEqualTo(41);
        // Coverage is full but for the tenth of the lines that is lost. 2^(−11.298866/16.7) = 0.6256472.
        utilities(setup, SHARP * 2 / 3, 1, 0.9, 1, 0.6256471813, 1, 1, EFFORT, COST);
    }

    /** 240 → 960 lines at 60/1.001 Hz from two field stores. */
    @Test
    void scalingAtARateOfItsOwn() {
        RankedSetup setup = first(new Workbench()
                .modes(Modes.half525())
                .display(Workbench.only(AspectControl.ONE_TO_ONE, Workbench.television(0, 16)))
                .converters(Workbench.converter(
                        "scaler",
                        Workbench.samples(1364),
                        Workbench.scale(4, List.of(Workbench.free(2, Frequency.ofHz(60_000, 1001))), 16)))
                .limits(
                        Limit.atLeast(LimitedMeasure.VERTICAL_SCALE, Rational.of(4)),
                        Limit.atMost(LimitedMeasure.VERTICAL_SCALE, Rational.of(4)),
                        Limit.atMost(LimitedMeasure.ASPECT_ERROR_PERCENT, Rational.ONE))
                .match());
        Measures measures = setup.modeSettings().get(0).measures();

        // 1/(60.098478 − 59.940060) = 6.31243 s.
        assertThat(printed(measures.dropOrRepeatEverySeconds(), 5)).isEqualTo("6.31243");
        assertThat(measures.fieldStores()).isEqualTo(2);
        assertThat(measures.bufferedLines()).isNull();
        // Line i of 240 waits (240 − i) · 63.508995 µs for its field, 0 to 16.639357 ms for a frame to begin, and row
        // 4i · 14.829630 µs for its turn. Top 15.242159 ms, middle (i = 120) 14.739301, bottom 14.240635, at age 0; the
        // last copy of line 0 is row 3: 15.286648; and 10 µs of electronics.
        assertThat(printed(measures.addedLatencyMs().top(), 5)).isEqualTo("23.57184");
        assertThat(printed(measures.addedLatencyMs().middle(), 5)).isEqualTo("23.06898");
        assertThat(printed(measures.addedLatencyMs().bottom(), 5)).isEqualTo("22.57031");
        assertThat(printed(measures.addedLatencyMs().least(), 5)).isEqualTo("14.25063");
        assertThat(printed(measures.addedLatencyMs().greatest(), 5)).isEqualTo("31.93600");
        // 4 · 256 · 8/7 = 1170.29, drawn on 1170: −0.0244 %; dots of 4 and 5 columns.
        assertThat(printed(measures.shape().aspectErrorPercent(), 4)).isEqualTo("-0.0244");
        assertThat(measures.shape().dotWidthRatio()).isEqualTo(Rational.of(4, 5));
        double coverage = 1170.0 * 960 / (1080.0 * 1080 * 256 * 8 / 7 / 240);
        // 1/(1 + 4 · 0.158418) = 0.6121186; 2^(−33.068980/16.7) = 0.2534585.
        utilities(setup, SHARP * 0.6, 1, coverage, 0.6121185526, 0.2534585195, 1, 1, EFFORT, COST);
    }

    /** An interlaced source, each field stretched to 960 rows with two taps. */
    @Test
    void deinterlacing() {
        RankedSetup setup = first(new Workbench()
                .modes(Modes.interlaced525())
                .display(Workbench.only(AspectControl.ONE_TO_ONE, Workbench.television(0, 16)))
                .converters(Workbench.converter(
                        "scaler", Workbench.samples(780), Workbench.scale(2, List.of(Workbench.locked(3000, 48)), 16)))
                .limits(
                        Limit.atLeast(LimitedMeasure.VERTICAL_SCALE, Rational.of(2)),
                        Limit.atMost(LimitedMeasure.VERTICAL_SCALE, Rational.of(2)))
                .match());
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();

        // 135/11 MHz / 780 / 262.5 = 60/1.001 Hz; square dots: 640 · 2 = 1280 columns by 480 · 2 = 960 rows.
        assertThat(setting.outputTiming().fieldRate()).isEqualTo(Frequency.ofHz(60_000, 1001));
        assertThat(measures.pixelAspectRatio()).isEqualTo(Rational.ONE);
        assertThat(measures.shape().horizontalScale()).isEqualTo(Rational.of(2));
        assertThat(measures.shape().aspectErrorPercent()).isEqualTo(Rational.ZERO);
        assertThat(measures.shape().dotWidthRatio()).isEqualTo(Rational.ONE);
        assertThat(measures.shape().lineHeightRatio()).isEqualTo(Rational.ONE);
        // Row j is centred on field line (j + 1/2)/4 − 1/4 (top) or − 3/4 (bottom) and needs the next line too. A line
        // takes T/262.5, its 4 rows 4·T/1125 < T/262.5: writing is the slower and the last rows decide. The bottom
        // field
        // is half a line later: D = 121/2625 T = 0.769022 ms (worked row by row). Latest of both fields: top 1.122815,
        // middle 0.599541, bottom 0.095333, least 0.093215, greatest 1.152474 ms; and 10 µs each.
        assertThat(printed(measures.addedLatencyMs().top(), 6)).isEqualTo("1.132815");
        assertThat(printed(measures.addedLatencyMs().middle(), 6)).isEqualTo("0.609541");
        assertThat(printed(measures.addedLatencyMs().bottom(), 6)).isEqualTo("0.105333");
        assertThat(printed(measures.addedLatencyMs().least(), 6)).isEqualTo("0.103215");
        assertThat(printed(measures.addedLatencyMs().greatest(), 6)).isEqualTo("1.162474");
        // (1.152474 + 0.014830) / 0.063556 = 18.4: 19 lines.
        assertThat(measures.bufferedLines()).isEqualTo(19);
        assertThat(printed(measures.acceptance().deviations().pixelClockPercent(), 4))
                .isEqualTo("-0.0999");
        // Softness 12.272727 MHz · 60.28767 ns = 0.7398941; detail 2 · 5.903420 / 12.272727 = 0.9620388; the picture
        // fills 1280 · 960 of 1440 · 1080; 2^(−10.609541/16.7) = 0.6438061.
        utilities(
                setup,
                1 - 0.7398941281,
                1,
                1280.0 * 960 / (1440 * 1080),
                1,
                0.6438061035,
                1,
                0.9620388148,
                EFFORT,
                COST);
    }

    /** A plain lead into a 4:3 tube that hides 5 % at each edge. */
    @Test
    void noConverterAtAll() {
        MatchResult result = new Workbench()
                .modes(Modes.half525())
                .display(Workbench.tube(5))
                .match();
        RankedSetup setup = first(result);
        Measures measures = setup.modeSettings().get(0).measures();

        assertThat(result.counts().routes()).isEqualTo(1);
        assertThat(result.counts().settings()).isEqualTo(1);
        assertThat(setup.modeSettings().get(0).settings().processing()).isNull();
        // The nominal picture has 240 lines and 320/(8/7) = 280 dots. Each edge hides 12 lines and 14 dots; the
        // console's
        // 256 dots leave 12 dots free at each side, so 2 are lost there.
        Measures.Shape shape = measures.shape();
        assertThat(shape.croppedLines()).isEqualTo(Rational.of(24));
        assertThat(shape.croppedDots()).isEqualTo(Rational.of(4));
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(100));
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.ZERO);
        assertThat(shape.verticalScale()).isNull();
        assertThat(shape.dotWidthRatio()).isNull();
        assertThat(measures.totalLatencyMs().greatest()).isEqualTo(Rational.ZERO);
        assertThat(measures.acceptance().grade()).isEqualTo(AcceptanceGrade.WITHIN_LIMITS_CONTINUOUS);
        assertThat(setup.price().amount()).isEqualByComparingTo("0");
        // Aspect, coverage, motion, latency, acceptance, detail, effort, cost; uniformity drops out on a tube.
        double kept = 216.0 / 240 * 252 / 256;
        assertThat(setup.score()).isCloseTo((1 + kept + 1 + 1 + 0.85 + 1 + 1 + 1) / 8, within(DIGITS));
    }
}
