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
import rasterfit.gear.LinkKind;
import rasterfit.gear.Processing;
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

/** 240 lines digitised at 858 samples and sent on with every sample twice, on a 1080p television that hides 5 %. */
class FormatOnlyWorkedTest {
    private static final Rational CLOCK_PERCENT = Rational.of(25, 341);

    /** 224 of the 240 lines are drawn, from the eighth on. The lag was read half-way down the panel. */
    private static MatchResult match() {
        LagReading lag = new LagReading(
                "vic:8",
                new Fact.Within(Rational.of(11), Rational.of(12), Rational.of(13)),
                LagReading.Method.SPLIT_SIGNAL,
                540,
                Basis.MEASURED);
        return Gear.match(
                Gear.half525(new Window(256, 224, 65, 26)),
                Gear.converter(
                        Gear.digitiser(30_000_000, 858),
                        new Processing.FormatOnly("pass", Fact.known(2)),
                        Gear.digitalOut(LinkKind.HDMI, true),
                        3,
                        "40",
                        "60"),
                Gear.screen(
                        DisplayClass.TELEVISION,
                        1920,
                        1080,
                        AspectControl.SIGNALLED,
                        Fact.known(5),
                        Gear.television(8, 16),
                        List.of(lag),
                        null),
                Intent.EVEN_WEIGHTS,
                Limit.atLeast(LimitedMeasure.ACCEPTANCE, AcceptanceGrade.LISTED.rankFromWorst()));
    }

    @Test
    void everyFigureOfTheAnswer() {
        MatchResult result = match();
        RankedSetup setup = result.ranked().get(0);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        Answers.route(setup, "rgb", "lead", "box", "screen");

        // Rates. 858 · 15 745.801 Hz = 13.509 897 MHz is less than the 25 MHz of the link (HDMI 1.3a §6.4): each sample
        // twice. Clock 1716 · 59 062 500/3751 Hz = 9 213 750 000/341 Hz = 27.019 795 MHz; total 2 · 858 = 1716.
        // Window. 858 samples twice is the total of VIC 8, whose active width is 1440: 720 samples, twice.
        assertThat(setting.outputTiming())
                .isEqualTo(new Raster(
                        Frequency.ofHz(9_213_750_000L, 341),
                        1440,
                        Rational.of(1716),
                        240,
                        Rational.of(262),
                        Scan.PROGRESSIVE));

        // Samples. r = 858/341 = 78/31 = 2.516: 256 dots are 19968/31 = 644.13 samples. The rest of the 720, 75.87,
        // is shared: 37 whole samples before the first dot (37.94 rounded down), so the window starts 37 · 31/78 =
        // 1147/78 dots before dot 65: 3923/78; it is 720 · 31/78 = 3720/13 = 286.15 dots wide.
        assertThat(setting.settings())
                .isEqualTo(new Settings(
                        Settings.Kind.FORMAT_ONLY,
                        "pass",
                        null,
                        240,
                        1,
                        858,
                        2,
                        Rational.of(3923, 78),
                        Rational.of(3720, 13),
                        1440,
                        240,
                        0,
                        0,
                        18,
                        240,
                        "SOURCE_LOCKED",
                        Frequency.ofHz(29_531_250, 491_381),
                        null,
                        AspectControl.SIGNALLED));
        Measures.Sampling sampling = measures.sampling();
        assertThat(sampling.samplesPerDot()).isEqualTo(Rational.of(78, 31));
        assertThat(sampling.dotLocked()).isFalse();
        assertThat(sampling.sampleRate()).isEqualTo(Frequency.ofHz(4_606_875_000L, 341));
        // Dots of 2 and of 3 samples; 3 have 16/31 of them; the pattern repeats after 31 dots.
        assertThat(sampling.leastSamplesPerDot()).isEqualTo(2);
        assertThat(sampling.greatestSamplesPerDot()).isEqualTo(3);
        assertThat(sampling.leastShare()).isEqualTo(Rational.of(15, 31));
        assertThat(sampling.beatPeriodDots()).isEqualTo(Rational.of(31));
        assertThat(sampling.alias()).isNull();
        assertThat(sampling.edgeSoftness()).isCloseTo(Gear.SOFTNESS, within(1e-9));
        assertThat(sampling.usablePhaseShare()).isNull();
        assertThat(sampling.softSamplesPerDot()).isNull();
        assertThat(sampling.considered()).isEqualTo(1);

        // Panel. VIC 8 signals 4:3 (CTA-861-I table 2): 1440 columns of 1080 rows. 5 % of 1440 columns and of 240 lines
        // are hidden at each edge; 1296 columns are spread over 1440, 10/9 each, and 216 lines over 1080, 5 rows each.
        Measures.Shape shape = measures.shape();
        assertThat(measures.pixelAspectRatio()).isEqualTo(Rational.of(8, 7));
        assertThat(shape.verticalScale()).isEqualTo(Rational.of(5));
        // 78/31 samples · 2 columns · 10/9 = 1560/279 = 520/93 = 5.591; over 5 rows 104/93; 104/93 · 7/8 = 91/93.
        assertThat(shape.horizontalScale()).isEqualTo(Rational.of(520, 93));
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.of(-200, 93));
        // Of 9 raster columns 8 get one panel column and 1 gets two. Dots of 4 columns get 4 or 5, dots of 6 get 6 or
        // 7.
        assertThat(shape.leastDotWidth()).isEqualTo(4);
        assertThat(shape.greatestDotWidth()).isEqualTo(7);
        assertThat(shape.leastLineHeight()).isEqualTo(5);
        assertThat(shape.greatestLineHeight()).isEqualTo(5);
        assertThat(shape.blendedColumnsPercent()).isEqualTo(Rational.ZERO);
        // Crop. 12 lines at top and bottom; above the drawn ones 8 are free: 4 + 4 of 224 are lost, 25/7 %. The 36
        // samples hidden at the left are fewer than the 37 before the first dot; at the right 38.87 are free.
        assertThat(shape.croppedLines()).isEqualTo(Rational.of(24));
        assertThat(shape.croppedUsedLines()).isEqualTo(Rational.of(8));
        assertThat(shape.croppedUsedLinesPercent()).isEqualTo(Rational.of(25, 7));
        assertThat(shape.croppedDots()).isEqualTo(Rational.ZERO);
        assertThat(shape.croppedUsedDots()).isEqualTo(Rational.ZERO);
        // Coverage. 256 · 520/93 = 1431.40 of 1920 columns, all rows: 20800/279 = 74.552 %.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(20_800, 279));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));

        // Latency. Nothing is held: 2 µs. The lag was read at row 540: half of 240/262 of T = 7.621 079 ms is scan-out.
        // 12 − 7.621 079 = 4.378 921 ms at the top row, one less and one more at the ends of the interval.
        Answers.flatLatency(measures.addedLatencyMs(), Basis.COMPUTED, "0.002000", "0.002000", "0.002000");
        Answers.flatLatency(measures.displayLagMs(), Basis.MEASURED, "3.378921", "4.378921", "5.378921");
        // The sum of a computed and a measured part is computed.
        Answers.flatLatency(measures.totalLatencyMs(), Basis.COMPUTED, "3.380921", "4.380921", "5.380921");
        assertThat(printed(measures.addedLatencyFields(), 9)).isEqualTo("0.000120197");
        assertThat(measures.bufferedLines()).isNull();
        assertThat(measures.fieldStores()).isNull();
        assertThat(measures.dropOrRepeatEverySeconds()).isNull();
        assertThat(measures.tearDriftPicturesPerSecond()).isNull();

        // Acceptance. VIC 8 with 262 lines at 27 MHz: 9 213 750 000/341 / 27 000 000 = 341.25/341 = 1 + 0.25/341, so
        // 25/341 % = 0.0733 % too fast, and with equal totals so are line and field rate.
        assertThat(measures.acceptance().grade()).isEqualTo(AcceptanceGrade.LISTED);
        Answers.sameCountsAs(measures.acceptance(), "vic:8", CLOCK_PERCENT);
        assertThat(measures.acceptance().fallback()).isNull();

        // Detail. 2 · 5.872 799 MHz exceeds 5.369 MHz.
        assertThat(measures.linkDetail().bandwidth()).isEqualTo(Frequency.ofHz(Gear.LINK_HZ));
        assertThat(measures.linkDetail().combined()).isEqualTo(Rational.ONE);

        // Criteria. Uniformity 2 · 4/7 − 1 = 1/7 of 1 − 0.336 102 = 0.094 843. Aspect (15 − 2.150 538)/14 = 0.917 819.
        // Coverage: 1431.40 is more than the 1316.57 columns of 1.2190 · 1080, so 1, times 216/224. Latency
        // 2^(−4.380 921/16.7) = 0.833 740. Effort 1/(1 + 3/4) = 4/7. Cost: 18 + (40 + 60)/2 = 68 EUR, 2^(−68/150) =
        // 0.730 353. Mean of nine: 7.112 469/9.
        Answers.price(setup, "68", "58", "78");
        Answers.criteria(
                setup,
                0.790274331722,
                told(Criterion.DOT_UNIFORMITY, 4.0 / 7, (1 - Gear.SOFTNESS) / 7, 1),
                told(Criterion.ASPECT, 2.150538, (15 - 200.0 / 93) / 14, 1),
                told(Criterion.COVERAGE, 74.551971, 27.0 / 28, 1),
                told(Criterion.MOTION, 0, 1, 1),
                told(Criterion.LATENCY, 4.380921, halfPerFrame(4.380920634921), 1),
                told(Criterion.ACCEPTANCE, Double.NaN, 1, 1),
                told(Criterion.LINK_DETAIL, 1, 1, 1),
                told(Criterion.EFFORT, 3, 4.0 / 7, 1),
                told(Criterion.COST, 68, 0.7303534223050, 1));
        assertThat(setup.paretoOptimal()).isTrue();
        Answers.findings(setup, "assumed.plain-lead", "sampling.not-dot-locked");

        // Counts. Windows of the active dots (⌈644.13⌉ = 645 samples), of a 4:3 picture (280 dots, ⌈704.52⌉ = 705) and
        // of
        // VIC 8: 3 settings. The first two are 1290 and 1410 wide, listed nowhere: within limits, not promised. That is
        // grade 4 from the worst where 6 is asked.
        Answers.counts(result, 3, 2);
        Answers.refused(result, "limit.acceptance × 2: 3 against 6");
        assertThat(result.ranked()).hasSize(1);
    }
}
