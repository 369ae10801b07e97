package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.match.Told.message;
import static rasterfit.match.Told.onTube;
import static rasterfit.match.Told.repeatInterlaced;
import static rasterfit.match.Told.told;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.LagReading;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.gear.Window;

/**
 * Every finding by the one fact that brings it: of a setup of which everything is stated nothing is told, and each change
 * adds exactly what ../shared/DOMAIN.md asks to be said (what had to be assumed: sections 5 to 8 and 11; what goes wrong:
 * sections 6, 8, 9 and 10).
 */
class SetupFindingsTest {
    private static Mode used(Window used, boolean assumed) {
        Mode mode = Modes.half525();
        return new Mode(
                "picture",
                mode.lineStandard(),
                mode.dotClock(),
                mode.dotsPerLine(),
                mode.linesPerField(),
                mode.scan(),
                mode.share(),
                mode.duringPlay(),
                mode.active(),
                used,
                assumed,
                mode.shape());
    }

    @Test
    void nothingIsToldOfASetupThatIsStatedInFull() {
        assertThat(told(scene -> {})).isEmpty();
    }

    @Test
    void anUnknownBandwidthOfTheConsoleIsTold() {
        assertThat(told(scene -> scene.sourceBandwidth = Fact.unknown())).containsExactly("assumed.source-bandwidth");
        assertThat(message("assumed.source-bandwidth", scene -> scene.sourceBandwidth = Fact.unknown()))
                .contains("output out");
    }

    @Test
    void anAssumedAreaIsToldWithItsPlace() {
        Window area = new Window(240, 224, 73, 26);
        assertThat(told(scene -> scene.modes = List.of(used(area, false)))).isEmpty();
        assertThat(told(scene -> scene.modes = List.of(used(area, true)))).containsExactly("assumed.used-area");
        assertThat(message("assumed.used-area", scene -> scene.modes = List.of(used(area, true))))
                .contains("mode picture", "240 × 224 from dot 73, line 26");
    }

    @Test
    void aPlainLeadFromTheConsoleIsToldWithItsBandwidth() {
        assertThat(told(scene -> {
                    scene.outputPlug = Scene.SCART;
                    scene.lead = null;
                }))
                .containsExactly("assumed.plain-lead", "assumed.cable-bandwidth");
    }

    @Test
    void aCableOfUnknownBandwidthIsTold() {
        assertThat(told(scene -> scene.lead = Scene.cable("lead", Scene.CONSOLE, Scene.SCART, Fact.unknown())))
                .containsExactly("assumed.cable-bandwidth");
        // The bandwidth of a digital lead enters no figure.
        assertThat(told(scene -> scene.last = Scene.cable("last", Scene.HDMI, Scene.HDMI, Fact.unknown())))
                .isEmpty();
    }

    @Test
    void aPlainLeadFromTheConverterIsTold() {
        assertThat(told(scene -> scene.last = null)).containsExactly("assumed.plain-lead");
        assertThat(message("assumed.plain-lead", scene -> scene.last = null)).contains("Box");
    }

    @Test
    void unknownJitterAndEffortAreTold() {
        assertThat(told(scene -> scene.jitter = Fact.unknown())).containsExactly("assumed.digitiser-jitter");
        assertThat(told(scene -> scene.settingsToTune = Fact.unknown())).containsExactly("assumed.settings-to-tune");
    }

    @Test
    void aDviLinkIsTold() {
        assertThat(told(scene -> scene.link = LinkKind.DVI)).contains("link.dvi-signals-nothing");
    }

    /** A mode of 240p and one of 480i, entered during play or not. */
    private static List<Mode> twoModes(boolean duringPlay) {
        return List.of(Modes.half525(), Modes.as(Modes.interlaced525(), "menu", 1, duringPlay));
    }

    @Test
    void timesToFollowANewRasterAreToldOnlyWhereModesChangeDuringPlay() {
        // The sampling of the menu's 780 dots by 1364 samples is not what this is about.
        List<Integer> both = List.of(1364, 1560);
        assertThat(told(scene -> scene.converterResync = Fact.unknown())).isEmpty();
        assertThat(told(scene -> {
                    scene.samples = both;
                    scene.modes = twoModes(false);
                    scene.converterResync = Fact.unknown();
                    scene.displayResync = Fact.unknown();
                }))
                .doesNotContain("assumed.resync");
        assertThat(message("assumed.resync", scene -> {
                    scene.samples = both;
                    scene.modes = twoModes(true);
                    scene.converterResync = Fact.unknown();
                }))
                .contains("Box")
                .contains("0.5 s");
        assertThat(told(scene -> {
                    scene.samples = both;
                    scene.modes = twoModes(true);
                }))
                .doesNotContain("assumed.resync");
    }

    @Test
    void theDisplaysTimeIsToldOnlyWhereItsRasterChanges() {
        // Line-doubled modes have rasters of their own: 524 lines of 240p, 525 of the menu.
        Consumer<Scene> doubled = scene -> {
            scene.samples = List.of(1364, 1560);
            scene.modes = twoModes(true);
            scene.processing = repeatInterlaced(480, Processing.InterlacedFields.FIELD_ON_FIELD);
            scene.displayResync = Fact.unknown();
        };
        assertThat(message("assumed.resync", doubled)).contains("Screen");
        // 60.098 478 and 59.940 060 Hz of one raster of 2200 × 1125: the clock moves by 0.264 %, less than 0.5 %.
        assertThat(told(scene -> {
                    scene.samples = List.of(1364, 1560);
                    scene.modes = twoModes(true);
                    scene.displayResync = Fact.unknown();
                }))
                .doesNotContain("assumed.resync");
        // On a tube that the console reaches by itself the raster changes with every mode.
        assertThat(message("assumed.resync", scene -> {
                    onTube(scene);
                    scene.modes = twoModes(true);
                    scene.displayResync = Fact.unknown();
                }))
                .contains("Screen");
    }

    @Test
    void aTubeOfWhichEverythingIsStatedHasNothingToTell() {
        assertThat(told(Told::onTube)).isEmpty();
    }

    @Test
    void aReadingAtAnotherTimingIsNoBound() {
        LagReading elsewhere = new LagReading(
                "vic:4",
                Scene.reading(LagReading.Method.SPLIT_SIGNAL).ms(),
                LagReading.Method.SPLIT_SIGNAL,
                null,
                rasterfit.gear.Basis.MEASURED);
        assertThat(told(scene -> scene.lag = List.of(elsewhere))).containsExactly("assumed.display-lag");
    }

    @Test
    void whatIsAssumedOfTheDisplayIsToldInItsWords() {
        assertThat(told(scene -> scene.assumptions = List.of("It is a television.", "It is large.")))
                .containsExactly("assumed.display", "assumed.display");
        // Each thing once.
        assertThat(told(scene -> scene.assumptions = List.of("It is large.", "It is large.")))
                .containsExactly("assumed.display");
    }

    @Test
    void theDelayOfAClassIsToldAndAReadingFromPressToLightIsABound() {
        assertThat(told(scene -> scene.lag = List.of())).containsExactly("assumed.display-lag");
        assertThat(message("assumed.display-lag", scene -> scene.lag = List.of()))
                .contains("Screen", "TELEVISION");
        Consumer<Scene> bounded = scene -> scene.lag = List.of(Scene.reading(LagReading.Method.PRESS_TO_LIGHT));
        assertThat(told(bounded)).containsExactly("assumed.lag-below-its-bound");
    }

    @Test
    void overscanIsToldWhereItIsAssumedAndMatters() {
        assertThat(told(scene -> scene.overscanPercent = Fact.unknown())).containsExactly("assumed.overscan");
        // One sample per panel pixel means that nothing is hidden (../shared/DOMAIN.md section 7).
        assertThat(told(scene -> {
                    scene.overscanPercent = Fact.unknown();
                    scene.controls = List.of(AspectControl.ONE_TO_ONE);
                }))
                .isEmpty();
    }

    @Test
    void bandwidthAndJitterConcernOnlyAnalogSignals() {
        assertThat(told(scene -> {
                    scene.format = Format.TMDS;
                    scene.outputPlug = Scene.HDMI;
                    scene.converted = false;
                    scene.lead = null;
                    scene.modes = List.of(Modes.digital720());
                    scene.sourceBandwidth = Fact.unknown();
                    scene.last = Scene.cable("last", Scene.HDMI, Scene.HDMI, Fact.unknown());
                }))
                .isEmpty();
        assertThat(told(scene -> {
                    scene.format = Format.TMDS;
                    scene.outputPlug = Scene.HDMI;
                    scene.converted = false;
                    scene.lead = null;
                    scene.last = null;
                    scene.modes = List.of(Modes.digital720());
                }))
                .containsExactly("assumed.plain-lead");
    }
}
