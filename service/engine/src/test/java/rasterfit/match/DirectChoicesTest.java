package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.PictureShape;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** What becomes of a raster that reaches the display as it is, by hand from ../shared/DOMAIN.md sections 3 and 7. */
class DirectChoicesTest {
    private static final Panel WIDE = new Panel.Grid(1920, 1080, null, Panel.Filter.NEAREST);

    private static List<ModeSetting> settings(Consumer<Scene> change) {
        Scene scene = new Scene();
        scene.converted = false;
        scene.last = null;
        scene.sinkKnown = false;
        scene.displayPlug = Scene.SCART;
        scene.settingsPerRoute = 100;
        change.accept(scene);
        MatchResult result = scene.match();
        assertThat(result.ranked()).as("%s", result.refused()).isNotEmpty();
        return result.ranked().stream()
                .map(setup -> setup.modeSettings().get(0))
                .toList();
    }

    private static Measures measures(Consumer<Scene> change) {
        List<ModeSetting> all = settings(change);
        assertThat(all).hasSize(1);
        return all.get(0).measures();
    }

    private static void tube(Scene scene, int overscanPercent) {
        scene.displayClass = DisplayClass.TUBE;
        scene.panel = new Panel.Tube(Rational.of(4, 3));
        scene.controls = List.of(AspectControl.FILL);
        scene.overscanPercent = Fact.known(overscanPercent);
    }

    private static Mode lines(int lines, int firstLine) {
        return Modes.of("59062500/11", "341", "262", Scan.PROGRESSIVE, new Window(256, lines, 65, firstLine));
    }

    @Test
    void aLowPictureLiesInTheMiddleOfTheNominalOne() {
        // 224 of 240 lines: 8 to spare at either edge. 5 % of 240 are 12 lines, so 4 are lost above and 4 below.
        Measures.Shape shape = measures(scene -> {
                    tube(scene, 5);
                    scene.modes = List.of(lines(224, 26));
                })
                .shape();
        assertThat(shape.croppedLines()).isEqualTo(Rational.of(8));
        // 216 lines on all of the height: 216 of the 216 that are shown.
        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.of(100));
        // Nothing is lost within 3 %, 7.2 lines; 224 of 225.6 are shown.
        Measures.Shape less = measures(scene -> {
                    tube(scene, 3);
                    scene.modes = List.of(lines(224, 26));
                })
                .shape();
        assertThat(less.croppedLines()).isEqualTo(Rational.ZERO);
        assertThat(less.coverageHeightPercent())
                .isEqualTo(Rational.of(2240, 2256).times(100));
    }

    @Test
    void anAnalogBroadcastPictureIsFourToThree() {
        // 256 · 8/7 = 292.571 of the 320 square columns that 4:3 gives 240 lines; of a panel of 16:9, 4:3 takes 3/4:
        // 292.571/320 · 3/4 = 68.571 %.
        Measures measures = measures(scene -> {
            scene.panel = WIDE;
            scene.controls = List.of(AspectControl.SIGNALLED);
        });
        assertThat(measures.shape().coveragePercent().toDouble()).isCloseTo(68.571428571, within(1e-6));
        assertThat(measures.shape().aspectErrorPercent().toDouble()).isCloseTo(0, within(1e-9));
        // Its columns cannot be counted, its lines can: 1080/240 = 4.5, rows of 4 and 5.
        assertThat(measures.shape().leastDotWidth()).isNull();
        assertThat(measures.shape().blendedColumnsPercent()).isNull();
        assertThat(measures.shape().verticalScale()).isEqualTo(Rational.of(9, 2));
        assertThat(measures.shape().leastLineHeight()).isEqualTo(4);
        assertThat(measures.shape().greatestLineHeight()).isEqualTo(5);
    }

    @Test
    void anAnalogBroadcastPictureHasNoOneToOne() {
        List<AspectControl> all = List.of(AspectControl.ONE_TO_ONE, AspectControl.FILL, AspectControl.SIGNALLED);
        assertThat(settings(scene -> scene.controls = all))
                .extracting(setting -> setting.settings().aspectControl())
                .containsExactlyInAnyOrder(AspectControl.FILL, AspectControl.SIGNALLED);
        assertThat(settings(scene -> scene.controls = List.of(AspectControl.ONE_TO_ONE)))
                .extracting(setting -> setting.settings().aspectControl())
                .containsExactly(AspectControl.SIGNALLED);
        assertThat(settings(scene -> {
                    scene.modes = List.of(computer());
                    scene.controls = all;
                }))
                .extracting(setting -> setting.settings().aspectControl())
                .containsExactlyInAnyOrderElementsOf(all);
    }

    /** 640 × 400 of 800 × 449 at 25.175 MHz, as monitors of old computers show it; square dots. */
    private static Mode computer() {
        Window active = new Window(640, 400, 144, 35);
        return Modes.of(
                LineStandard.OTHER,
                "25175000",
                "800",
                "449",
                Scan.PROGRESSIVE,
                active,
                active,
                PictureShape.SQUARE_DOTS);
    }

    @Test
    void aComputersPictureHasTheShapeOfItsSamples() {
        // 16:10 on 16:9 with square samples: 1728 of 1920 columns, 90 %.
        Measures.Shape shape = measures(scene -> {
                    scene.modes = List.of(computer());
                    scene.displayClass = DisplayClass.MONITOR;
                    scene.panel = WIDE;
                    scene.controls = List.of(AspectControl.SIGNALLED);
                })
                .shape();
        assertThat(shape.aspectErrorPercent()).isEqualTo(Rational.ZERO);
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(90));
    }

    /** VIC 5: 1920 × 1080 interlaced in 2200 × 1125 at 74.25 MHz, 540 lines a field from line 20. */
    private static Mode digital1080i() {
        Window active = new Window(1920, 540, 192, 20);
        return new Mode(
                "picture",
                LineStandard.OTHER,
                Frequency.ofHz(74_250_000),
                Rational.of(2200),
                Rational.of(1125, 2),
                Scan.INTERLACED,
                Rational.ONE,
                false,
                active,
                active,
                false,
                PictureShape.SQUARE_DOTS);
    }

    @Test
    void theFrameLinesOfADigitalPictureLandOnThePanel() {
        Measures.Shape shape = measures(scene -> {
                    scene.format = Format.TMDS;
                    scene.outputPlug = Scene.HDMI;
                    scene.displayPlug = Scene.HDMI;
                    scene.lead = Scene.cable("lead", Scene.HDMI, Scene.HDMI, Fact.unknown());
                    scene.sinkKnown = true;
                    scene.vics = List.of(5);
                    scene.modes = List.of(digital1080i());
                })
                .shape();
        assertThat(shape.verticalScale()).isEqualTo(Rational.ONE);
        assertThat(shape.horizontalScale()).isEqualTo(Rational.ONE);
        assertThat(shape.leastDotWidth()).isEqualTo(1);
        assertThat(shape.greatestDotWidth()).isEqualTo(1);
        assertThat(shape.coveragePercent()).isEqualTo(Rational.of(100));
    }

    @Test
    void anUnstatedDelayOfAChangeOfFormatIsTold() {
        Scene scene = new Scene();
        scene.displayPlug = Scene.SCART;
        tube(scene, 0);
        scene.sinkKnown = false;
        scene.last = null;
        scene.processing = new rasterfit.gear.Processing.FormatOnly("pass", Fact.unknown());
        scene.converterOutput = new ConverterOutput.Analog(
                "out", Scene.SCART, Format.RGB, SyncKind.COMPOSITE_SYNC, Level.VIDEO_75_OHM, null);
        assertThat(scene.match().ranked())
                .filteredOn(setup -> setup.route().size() > 3)
                .singleElement()
                .satisfies(setup -> {
                    assertThat(setup.findings())
                            .extracting(finding -> finding.rule().id())
                            .contains("assumed.converter-delay");
                    Settings settings = setup.modeSettings().get(0).settings();
                    assertThat(settings.processing()).isEqualTo(Settings.Kind.FORMAT_ONLY);
                    assertThat(settings.processingId()).isEqualTo("pass");
                });
    }
}
