package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.match.Told.explained;
import static rasterfit.match.Told.step;

import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Fact;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Processing;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.quantity.Rational;

/** What single steps of an explanation say of where their numbers come from, by hand; see {@link ExplanationTest} for all of them. */
class StepInputsTest {
    @Test
    void mixedColumnsTellTheFilterAndThePanel() {
        assertThat(step(explained(scene -> {}), "blendedColumnsPercent").inputs())
                .containsEntry("filter taps", "2")
                .containsEntry("panel", "nearest or one-to-one");
        ModeSetting repeated = explained(scene -> {
            scene.samples = List.of(858);
            scene.processing = Workbench.repeat(2);
            scene.panel = new Panel.Grid(1920, 1080, null, Panel.Filter.INTERPOLATING);
        });
        assertThat(step(repeated, "blendedColumnsPercent").inputs())
                .containsEntry("filter taps", "1")
                .containsEntry("panel", "interpolating");
        // A panel that interpolates softens edges between dots even where the converter only repeats samples.
        assertThat(repeated.measures().shape().blendedColumnsPercent()).isGreaterThan(Rational.ZERO);
    }

    @Test
    void theSoftnessOfAnEdgeTellsRiseTimeAndJitter() {
        // 6, 50 and 35 MHz: 0.35·√(1/36 + 1/2500 + 1/1225) µs = 59.5968 ns; 1 ns of the digitiser, none of a separator,
        // since
        // sync comes on a wire of its own. 5.369 318 MHz · 60.596793 ns = 0.325363.
        Step softness = step(explained(scene -> {}), "edgeSoftness");
        assertThat(softness.inputs()).containsEntry("rise time", "59.5968 ns").containsEntry("jitter", "1.0 ns");
        assertThat(softness.result()).isEqualTo("0.325363");
    }

    private static Step fields(Deinterlacer.Kind kind) {
        return step(
                explained(scene -> {
                    scene.modes = List.of(Modes.interlaced525());
                    scene.samples = List.of(1560);
                    scene.processing = new Processing.RasterScale(
                            "scale",
                            ((Processing.RasterScale) Workbench.scale(2, List.of(), 16)).timings(),
                            new rasterfit.gear.ScaleAxis(rasterfit.gear.ScaleAxis.Factors.ANY, 2, 48),
                            new rasterfit.gear.ScaleAxis(rasterfit.gear.ScaleAxis.Factors.ANY, 2, 64),
                            List.of(new Deinterlacer(kind, Fact.unknown(), false)),
                            List.of(Workbench.locked(6000, null)),
                            Fact.known(10));
                }),
                "addedLatencyMs");
    }

    @Test
    void motionAdaptationUnstatedAddsAField() {
        // ../shared/DOMAIN.md section 8: motion adaptation unstated 1 [0–2] field; bob and weave add none to the newest
        // lines.
        assertThat(fields(Deinterlacer.Kind.MOTION_ADAPTIVE).inputs()).containsEntry("added fields", "1");
        assertThat(fields(Deinterlacer.Kind.BOB).inputs()).containsEntry("added fields", "0");
        assertThat(fields(Deinterlacer.Kind.WEAVE).inputs()).containsEntry("added fields", "0");
    }

    @Test
    void theConventionOfTheDotIsToldWithItsSource() {
        // ../shared/reference/arith_par.tsv: 720 dots of 13.5 MHz are 4:3 by CTA-861, 8:9 each; 3/2·fsc then gives
        // 176/105 · 2/3.
        Step broadcast = step(explained(scene -> {}), "pixelAspectRatio");
        Step cta = step(explained(scene -> scene.pixelAspect = PixelAspectConvention.CTA_861), "pixelAspectRatio");
        assertThat(broadcast.result()).startsWith("8/7 ");
        assertThat(broadcast.source()).contains("common practice");
        assertThat(cta.result()).startsWith("352/315 ");
        assertThat(cta.source()).contains("CTA-861-I table 2");
    }

    @Test
    void everyPartOfTheLinkIsToldWithItsBandwidth() {
        assertThat(step(explained(scene -> {}), "linkBandwidth").inputs())
                .containsEntry("B1", "6000000 Hz")
                .containsEntry("B2", "50000000 Hz")
                .containsEntry("B3", "35000000 Hz");
    }

    private static Mode shaped(LineStandard standard, PictureShape shape) {
        Mode mode = Modes.half525();
        return Modes.of(standard, "59062500/11", "341", "262", mode.scan(), mode.active(), mode.used(), shape);
    }

    private static List<Step> aspects(LineStandard standard, PictureShape shape) {
        return explained(scene -> scene.modes = List.of(shaped(standard, shape))).steps().stream()
                .filter(step -> step.name().equals("pixelAspectRatio"))
                .toList();
    }

    @Test
    void theShapeOfADotIsToldAsItWasMeant() {
        // 8/7 on a 4:3 tube (../shared/DOMAIN.md section 3), times 4/3 where the picture is anamorphic.
        assertThat(aspects(LineStandard.L525_60, PictureShape.TUBE_4_3))
                .extracting(Step::result)
                .containsExactly("8/7 ≈ 1.14286");
        assertThat(aspects(LineStandard.L525_60, PictureShape.TUBE_16_9))
                .extracting(Step::result)
                .containsExactly("8/7 ≈ 1.14286", "32/21 ≈ 1.52381");
        assertThat(aspects(LineStandard.L525_60, PictureShape.SQUARE_DOTS))
                .singleElement()
                .satisfies(step -> {
                    assertThat(step.result()).isEqualTo("1");
                    assertThat(step.inputs()).containsEntry("shape", "SQUARE_DOTS");
                });
        assertThat(aspects(LineStandard.OTHER, PictureShape.TUBE_4_3))
                .singleElement()
                .satisfies(step -> {
                    assertThat(step.result()).isEqualTo("1");
                    assertThat(step.inputs()).containsEntry("lineStandard", "OTHER");
                });
    }

    @Test
    void anInterlacedPictureTellsTheFormulaOfItsFields() {
        ModeSetting setting = explained(scene -> {
            scene.modes = List.of(Modes.interlaced525());
            scene.samples = List.of(1560);
            scene.processing = new Processing.RasterScale(
                    "scale",
                    ((Processing.RasterScale) Workbench.scale(2, List.of(), 16)).timings(),
                    new rasterfit.gear.ScaleAxis(rasterfit.gear.ScaleAxis.Factors.ANY, 2, 48),
                    new rasterfit.gear.ScaleAxis(rasterfit.gear.ScaleAxis.Factors.ANY, 2, 64),
                    List.of(new Deinterlacer(Deinterlacer.Kind.BOB, Fact.known(0), false)),
                    List.of(Workbench.locked(6000, null)),
                    Fact.known(10));
        });
        assertThat(step(setting, "bufferOffsetD").formula()).contains("both fields");
        assertThat(step(explained(scene -> {}), "bufferOffsetD").formula()).doesNotContain("both fields");
    }

    @Test
    void onlyAHalfHeightRasterTakenAsInterlacedWaitsForAField() {
        // ../shared/DOMAIN.md section 5: as interlaced, + 1 field where no other number is stated.
        Step half = step(
                explained(scene -> scene.converterHalfHeight = rasterfit.gear.HalfHeight.AS_INTERLACED),
                "addedLatencyMs");
        assertThat(half.inputs()).containsEntry("added fields", "1");
        Step interlaced = step(
                explained(scene -> {
                    scene.converterHalfHeight = rasterfit.gear.HalfHeight.AS_INTERLACED;
                    scene.modes = List.of(Modes.interlaced525());
                    scene.samples = List.of(1560);
                }),
                "addedLatencyMs");
        assertThat(interlaced.inputs()).containsEntry("added fields", "0");
    }
}
