package rasterfit.match.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.match.worked.Answers.told;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Basis;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.Window;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.Settings;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/** An interlaced console on a 4:3 tube, by its lead alone; latency weighs three times as much as all else. */
class DirectRouteWorkedTest {
    /** 608 of the 640 dots and 224 of the 240 lines of each field are drawn, in the middle. */
    private static MatchResult match() {
        Mode interlaced = Gear.mode(
                LineStandard.L525_60,
                "135000000/11",
                "780",
                "525/2",
                new Window(640, 240, 118, 18),
                new Window(608, 224, 134, 26));
        return Gear.match(interlaced, List.of(), Gear.tube(), Intent.EVEN_WEIGHTS, Map.of(Criterion.LATENCY, 3.0), 1);
    }

    @Test
    void everyFigureOfTheAnswer() {
        MatchResult result = match();
        RankedSetup setup = result.ranked().get(0);
        ModeSetting setting = setup.modeSettings().get(0);
        Measures measures = setting.measures();
        Answers.route(setup, "rgb", "lead", "tube");

        // The tube gets the console's own raster. 135/11 MHz / 780 = 15 734.266 Hz; / 262.5 = 60/1.001 Hz.
        Raster raster = setting.outputTiming();
        assertThat(raster)
                .isEqualTo(new Raster(
                        Frequency.ofHz(135_000_000, 11),
                        640,
                        Rational.of(780),
                        480,
                        Rational.of(525),
                        Scan.INTERLACED));
        assertThat(raster.lineRate()).isEqualTo(Frequency.ofHz(2_250_000, 143));
        assertThat(raster.fieldRate()).isEqualTo(Frequency.ofHz(60_000, 1001));
        assertThat(setting.settings()).isEqualTo(Settings.of(null, null, AspectControl.FILL));
        assertThat(measures.sampling()).isNull();

        // Shape. (135/11)/(135/11) = 1: square dots, and 640 by 480 of them are the 4:3 picture of a 525-line tube. It
        // has
        // no grid, so no scale and no dot widths.
        assertThat(measures.pixelAspectRatio()).isEqualTo(Rational.ONE);
        assertThat(measures.pixelAspectConvention()).isEqualTo(PixelAspectConvention.BROADCAST);
        Measures.Shape shape = measures.shape();
        assertThat(shape.verticalScale()).isNull();
        assertThat(shape.horizontalScale()).isNull();
        assertThat(shape.dotWidthRatio()).isNull();
        assertThat(shape.lineHeightRatio()).isNull();
        assertThat(shape.blendedColumnsPercent()).isNull();
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.ZERO);
        // A tube hides 5 % at each edge (assumption): 24 lines of the frame and 32 dots. Of the drawn picture 16 lines
        // and
        // 16 dots lie inside of the active one, so it loses 8 lines and 16 dots at each edge; 16 of 448 is 3 4/7 %.
        assertThat(shape.croppedLines()).isEqualTo(Rational.of(48));
        assertThat(shape.croppedDots()).isEqualTo(Rational.of(64));
        assertThat(shape.croppedUsedLines()).isEqualTo(Rational.of(16));
        assertThat(shape.croppedUsedDots()).isEqualTo(Rational.of(32));
        assertThat(shape.croppedUsedLinesPercent()).isEqualTo(Rational.of(25, 7));
        // The active picture goes beyond the face at every edge.
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(100));
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));

        // Latency. Nothing is held, and a tube shows what arrives (assumption).
        Answers.flatLatency(measures.addedLatencyMs(), Basis.COMPUTED, "0.000000", "0.000000", "0.000000");
        Answers.flatLatency(measures.displayLagMs(), Basis.ASSUMED, "0.000000", "0.000000", "0.000000");
        Answers.flatLatency(measures.totalLatencyMs(), Basis.ASSUMED, "0.000000", "0.000000", "0.000000");
        assertThat(measures.addedLatencyFields()).isEqualTo(Rational.ZERO);
        assertThat(measures.bufferedLines()).isNull();
        assertThat(measures.fieldStores()).isNull();
        assertThat(measures.dropOrRepeatEverySeconds()).isNull();

        // 15.734 kHz and 59.94 Hz lie within the scan ranges, any rate of which the tube follows.
        assertThat(measures.acceptance())
                .isEqualTo(new Measures.Acceptance(AcceptanceGrade.WITHIN_LIMITS_CONTINUOUS, null, null, null, null));

        // Detail. No filter of a digitiser: 1/√(1/36 + 1/2500) = 5.957 261 MHz; 2 · 5.957 261/12.272 727 = 0.970 813,
        // for
        // luma and, on RGB, chroma.
        assertThat(measures.linkDetail().bandwidth()).isEqualTo(Frequency.ofHz(5_957_261));
        assertThat(measures.linkDetail().luma()).isEqualTo(Rational.of(65_529_871, 67_500_000));
        assertThat(measures.linkDetail().chroma()).isEqualTo(Rational.of(65_529_871, 67_500_000));
        assertThat(measures.linkDetail().combined()).isEqualTo(Rational.of(65_529_871, 67_500_000));

        // Criteria; uniformity drops out. Coverage: 432 of 448 lines and 576 of 608 dots, 27/28 · 18/19 = 243/266 =
        // 0.913 534. Nothing to set. Cost 2^(−18/150) = 0.920 188. Sum 1 + 0.913 534 + 1 + 3 · 1 + 0.85 + 0.970 813 + 1
        // +
        // 0.920 188 = 9.654 534 of weights 10.
        Answers.price(setup, "18", "18", "18");
        Answers.criteria(
                setup,
                0.965453438892,
                told(Criterion.ASPECT, 0, 1, 1),
                told(Criterion.COVERAGE, 100, 243.0 / 266, 1),
                told(Criterion.MOTION, 0, 1, 1),
                told(Criterion.LATENCY, 0, 1, 3),
                told(Criterion.ACCEPTANCE, Double.NaN, 0.85, 1),
                told(Criterion.LINK_DETAIL, 0.970813, 65_529_871.0 / 67_500_000, 1),
                told(Criterion.EFFORT, 0, 1, 1),
                told(Criterion.COST, 18, 0.920187650625, 1));
        assertThat(setup.paretoOptimal()).isTrue();
        Answers.findings(setup, "assumed.display-lag", "assumed.overscan");

        // A tube with a single aspect control leaves nothing to choose.
        Answers.counts(result, 1, 0);
        assertThat(result.refused()).isEmpty();
    }
}
