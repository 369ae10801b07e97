package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Processing;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.tune.Steps;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * The steps of an explanation: every figure of an answer is told once for each mode with the name that the interface gives
 * it (../shared/API.md), with inputs, formula, source and the very number of the answer; what does not apply is not told.
 */
class ExplanationTest {
    private static final List<String> ALWAYS = List.of(
            "pixelAspectRatio",
            "lineRate",
            "fieldRate",
            "acceptance",
            "displayLagMs",
            "verticalScale",
            "croppedLines",
            "horizontalScale",
            "croppedDots",
            "aspectErrorPercent",
            "coveragePercent",
            "greatestPictureArea",
            "coverageHeightPercent",
            "totalLatencyMs",
            "addedLatencyFields");
    private static final List<String> ON_A_GRID = List.of("lineHeightRatio", "dotWidthRatio", "blendedColumnsPercent");
    private static final List<String> SAMPLED = List.of("samplesPerDot", "sampleRate", "edgeSoftness");
    private static final List<String> ANALOG = List.of("linkBandwidth", "linkDetail");

    private static ModeSetting explained(Consumer<Scene> change) {
        Scene scene = new Scene();
        scene.explain = MatchRequest.Explanation.FULL;
        change.accept(scene);
        MatchResult result = scene.match();
        assertThat(result.ranked()).as("%s", result.refused()).hasSize(1);
        return result.ranked().get(0).modeSettings().get(0);
    }

    @SafeVarargs
    private static List<String> names(List<String>... parts) {
        List<String> names = new ArrayList<>();
        for (List<String> part : parts) {
            names.addAll(part);
        }
        return names;
    }

    /** Exactly these steps, each complete, each with the number of the answer. */
    private static void tells(ModeSetting setting, List<String> names) {
        assertThat(setting.steps()).extracting(Step::name).containsExactlyInAnyOrderElementsOf(names);
        assertThat(setting.steps()).allSatisfy(step -> {
            assertThat(step.mode()).isEqualTo(setting.modes().get(0));
            assertThat(step.inputs()).as(step.name()).isNotEmpty();
            assertThat(step.formula()).as(step.name()).isNotBlank();
            assertThat(step.source()).as(step.name()).isNotBlank();
            assertThat(step.result()).as(step.name()).isNotBlank();
        });
        Map<String, String> figures = figures(setting);
        // Where the display says nothing of what it takes there is nothing to compare with.
        figures.keySet().removeIf(name -> name.equals("acceptance") && !names.contains(name));
        figures.forEach((name, result) -> assertThat(setting.steps())
                .as(name)
                .filteredOn(step -> step.name().equals(name))
                .last()
                .satisfies(step -> assertThat(step.result()).isEqualTo(result)));
    }

    /** The figures of the answer, each written with its unit as the steps write them. */
    private static Map<String, String> figures(ModeSetting setting) {
        Measures measures = setting.measures();
        Measures.Shape shape = measures.shape();
        Map<String, String> figures = new LinkedHashMap<>();
        put(figures, "pixelAspectRatio", measures.pixelAspectRatio(), "");
        Measures.Sampling sampling = measures.sampling();
        if (sampling != null) {
            put(figures, "samplesPerDot", sampling.samplesPerDot(), "");
            put(figures, "sampleRate", sampling.sampleRate().hz(), "Hz");
        }
        put(figures, "verticalScale", shape.verticalScale(), "rows per source line");
        put(figures, "horizontalScale", shape.horizontalScale(), "columns per dot");
        put(figures, "croppedLines", shape.croppedLines(), "lines");
        put(figures, "croppedDots", shape.croppedDots(), "dots");
        put(figures, "lineHeightRatio", shape.lineHeightRatio(), "");
        put(figures, "dotWidthRatio", shape.dotWidthRatio(), "");
        put(figures, "blendedColumnsPercent", shape.blendedColumnsPercent(), "%");
        put(figures, "aspectErrorPercent", shape.aspectErrorPercent(), "%");
        put(figures, "coveragePercent", shape.coveragePercent(), "%");
        put(figures, "coverageHeightPercent", shape.coverageHeightPercent(), "%");
        put(figures, "totalLatencyMs", measures.totalLatencyMs().typical(), "ms typical");
        put(figures, "addedLatencyFields", measures.addedLatencyFields(), "fields");
        put(figures, "dropOrRepeatEverySeconds", measures.dropOrRepeatEverySeconds(), "s");
        Integer held = measures.bufferedLines();
        if (held != null && held > 0) {
            put(figures, "bufferedLines", Rational.of(held), "lines");
        }
        if (measures.linkDetail() != null) {
            put(figures, "linkBandwidth", measures.linkDetail().bandwidth().hz(), "Hz");
            put(figures, "linkDetail", measures.linkDetail().combined(), "");
        }
        figures.put("acceptance", measures.acceptance().grade().name());
        return figures;
    }

    private static void put(Map<String, String> figures, String name, @Nullable Rational value, String unit) {
        if (value != null) {
            figures.put(name, Steps.write(value, unit));
        }
    }

    private static Step step(ModeSetting setting, String name) {
        return setting.steps().stream()
                .filter(step -> step.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aLockedScalerTellsItsPullItsOffsetAndItsLines() {
        ModeSetting setting = explained(scene -> {});

        tells(
                setting,
                names(
                        ALWAYS,
                        ON_A_GRID,
                        SAMPLED,
                        ANALOG,
                        List.of("outputPixelClock", "pullPpm", "deviations"),
                        List.of("bufferOffsetD", "addedLatencyMs", "bufferedLines")));
        // 60.098 478 Hz is +1641.29 ppm of 60 (../shared/reference/arith_frame.tsv).
        assertThat(step(setting, "pullPpm").result()).endsWith("≈ 1641.29 ppm");
        // 2200 · 1125 · 29531250/491381 Hz = 148 743 732 Hz, against 148.5 MHz: +0.164 129 %, as all three rates.
        assertThat(step(setting, "outputPixelClock").result()).endsWith("≈ 148744000 Hz");
        assertThat(step(setting, "deviations").result())
                .containsPattern("pixel clock .*≈ 0.164129 %, line rate .*≈ 0.164129 %, field rate .*≈ 0.164129 %");
        assertThat(step(setting, "deviations").inputs())
                .containsEntry("its pixel clock", "148500000 Hz")
                .containsEntry("its totals", "2200 × 1125");
        assertThat(step(setting, "acceptance").inputs()).containsEntry("compared with", "vic:16");
        assertThat(step(setting, "addedLatencyMs").result())
                .isEqualTo(Steps.write(setting.measures().addedLatencyMs().greatest(), "ms"));
    }

    @Test
    void aFreeRunningScalerTellsWhatItDrops() {
        ModeSetting setting = explained(scene ->
                scene.processing = Workbench.scale(2, List.of(Workbench.free(2, Frequency.ofHz(60))), 16));

        tells(
                setting,
                names(
                        ALWAYS,
                        ON_A_GRID,
                        SAMPLED,
                        ANALOG,
                        List.of("outputPixelClock", "deviations", "addedLatencyMs", "dropOrRepeatEverySeconds")));
        assertThat(step(setting, "addedLatencyMs").result())
                .isEqualTo(Steps.write(setting.measures().addedLatencyMs().greatest(), "ms"));
        assertThat(step(setting, "addedLatencyMs").formula()).contains("(n − i)");
    }

    @Test
    void aSingleStoreTellsItsOwnFormula() {
        ModeSetting setting = explained(scene ->
                scene.processing = Workbench.scale(2, List.of(Workbench.free(1, Frequency.ofHz(60))), 16));
        assertThat(step(setting, "addedLatencyMs").formula()).startsWith("T/L + age");
    }

    @Test
    void aRateOfTheSourcesOwnDropsNothing() {
        Frequency same = Modes.half525().fieldRate();
        ModeSetting setting =
                explained(scene -> scene.processing = Workbench.scale(2, List.of(Workbench.free(2, same)), 16));
        assertThat(setting.steps()).extracting(Step::name).doesNotContain("dropOrRepeatEverySeconds");
        assertThat(setting.measures().dropOrRepeatEverySeconds()).isNull();
        assertThat(setting.measures().tearDriftPicturesPerSecond()).isNull();
    }

    @Test
    void aLineRepeaterTellsItsWindowAndWhatItHolds() {
        ModeSetting setting = explained(scene -> {
            scene.samples = List.of(858);
            scene.processing = Workbench.repeat(2);
        });

        List<String> expected = names(ALWAYS, ON_A_GRID, SAMPLED, ANALOG);
        expected.addAll(List.of("outputPixelClock", "outputActive", "addedLatencyMs", "bufferedLines"));
        if (setting.measures().acceptance().deviations() != null) {
            expected.add("deviations");
        }
        tells(setting, expected);
        // 858 · 1 · 2 · 15 745.801 120 Hz = 27 019 794.7 Hz.
        assertThat(step(setting, "outputPixelClock").result()).endsWith("≈ 27019800 Hz");
        assertThat(step(setting, "outputActive").result())
                .isEqualTo(setting.outputTiming().horizontalActive() + " × 480");
        // The first copy begins after one line of 63.508 995 µs, 2 µs of electronics: 65.508 995 µs; two lines held.
        assertThat(step(setting, "addedLatencyMs").result()).endsWith("≈ 0.065509 ms");
        assertThat(step(setting, "bufferedLines").result()).isEqualTo("2 lines");
    }

    @Test
    void aChangeOfFormatAloneHoldsNoLines() {
        // 1716 samples at 15 745.801 Hz: 27.02 MHz.
        ModeSetting setting = explained(scene -> {
            scene.samples = List.of(1716);
            scene.processing = Workbench.formatOnly();
        });

        List<String> expected = names(ALWAYS, ON_A_GRID, SAMPLED, ANALOG);
        expected.addAll(List.of("outputPixelClock", "outputActive", "addedLatencyMs"));
        if (setting.measures().acceptance().deviations() != null) {
            expected.add("deviations");
        }
        tells(setting, expected);
        // Nothing but 2 µs of electronics.
        assertThat(step(setting, "addedLatencyMs").result()).isEqualTo("1/500 ms ≈ 0.002 ms");
    }

    private static void tube(Scene scene) {
        scene.converted = false;
        scene.displayPlug = Scene.SCART;
        scene.displayClass = DisplayClass.TUBE;
        scene.panel = new Panel.Tube(Rational.of(4, 3));
        scene.sinkKnown = false;
        scene.controls = List.of(AspectControl.FILL);
        scene.last = null;
    }

    private static List<String> withoutAcceptance() {
        return ALWAYS.stream().filter(name -> !name.equals("acceptance")).toList();
    }

    @Test
    void aTubeHasNoGridToTellOf() {
        ModeSetting setting = explained(ExplanationTest::tube);
        tells(setting, names(withoutAcceptance(), ANALOG));
    }

    @Test
    void aDisplayThatTakesHalfHeightAsInterlacedTellsItsField() {
        ModeSetting setting = explained(scene -> {
            tube(scene);
            scene.displayHalfHeight = HalfHeight.AS_INTERLACED;
        });
        tells(setting, names(withoutAcceptance(), ANALOG, List.of("halfHeightDelay")));
        // T = 16.639 357 ms (../shared/reference/arith_frame.tsv).
        assertThat(step(setting, "halfHeightDelay").result()).endsWith("≈ 16.6394 ms");
    }

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

    @Test
    void anAssumedDelayTellsTheClass() {
        ModeSetting setting = explained(scene -> scene.lag = List.of());
        // A television without a low-delay preset: 60 [30–120] ms (../shared/DOMAIN.md section 8).
        assertThat(step(setting, "displayLagMs").inputs())
                .containsEntry("class", "TELEVISION")
                .containsEntry("least", "30 ms")
                .containsEntry("greatest", "120 ms");
        assertThat(step(setting, "displayLagMs").result()).isEqualTo("60 ms");
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
    void aSummaryTellsNoSteps() {
        assertThat(explained(scene -> scene.explain = MatchRequest.Explanation.SUMMARY)
                        .steps())
                .isEmpty();
    }
}
