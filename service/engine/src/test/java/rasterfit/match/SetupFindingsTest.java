package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.LineStandard;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Panel;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Processing;
import rasterfit.gear.ScaleAxis;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.Finding;
import rasterfit.timing.Cta861;
import rasterfit.timing.Scan;
import rasterfit.timing.VideoTiming;

/**
 * Every finding by the one fact that brings it: of a setup of which everything is stated nothing is told, and each change
 * adds exactly what ../shared/DOMAIN.md asks to be said (what had to be assumed: sections 5 to 8 and 11; what goes wrong:
 * sections 6, 8, 9 and 10).
 */
class SetupFindingsTest {
    private static final Frequency FIELD_60 = Frequency.ofHz(60);

    private static RankedSetup setup(Consumer<Scene> change) {
        Scene scene = new Scene();
        change.accept(scene);
        MatchResult result = scene.match();
        assertThat(result.ranked()).as("%s", result.refused()).hasSize(1);
        return result.ranked().get(0);
    }

    private static List<String> told(Consumer<Scene> change) {
        return setup(change).findings().stream()
                .map(finding -> finding.rule().id())
                .toList();
    }

    private static String message(String rule, Consumer<Scene> change) {
        List<Finding> all = setup(change).findings();
        return all.stream()
                .filter(finding -> finding.rule().id().equals(rule))
                .map(Finding::message)
                .findFirst()
                .orElseThrow(() -> new AssertionError(rule + " is not among " + all));
    }

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

    private static OfferedTiming offered(int vic) {
        VideoTiming timing = Cta861.find(vic).orElseThrow();
        return new OfferedTiming("vic:" + vic, timing.timing(), timing.pictureAspect());
    }

    private static Processing scale(Fact pipelineUs, Deinterlacer deinterlacer, int... vics) {
        return new Processing.RasterScale(
                "scale",
                Arrays.stream(vics).mapToObj(SetupFindingsTest::offered).toList(),
                new ScaleAxis(ScaleAxis.Factors.ANY, 2, 48),
                new ScaleAxis(ScaleAxis.Factors.ANY, 2, 64),
                List.of(deinterlacer),
                List.of(Workbench.locked(6000, null)),
                pipelineUs);
    }

    private static Deinterlacer bob() {
        return new Deinterlacer(Deinterlacer.Kind.BOB, Fact.known(0), false);
    }

    private static Processing repeatInterlaced(int lines, Processing.InterlacedFields fields) {
        return new Processing.LineRepeat(
                "repeat",
                List.of(new Processing.LineCounts(LineStandard.L525_60, 240, List.of(lines))),
                null,
                Fact.known(1),
                null,
                fields,
                Fact.known(2));
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

    private static void onTube(Scene scene) {
        scene.converted = false;
        scene.displayPlug = Scene.SCART;
        scene.displayClass = DisplayClass.TUBE;
        scene.panel = new Panel.Tube(Rational.of(4, 3));
        scene.sinkKnown = false;
        scene.controls = List.of(AspectControl.FILL);
        scene.last = null;
    }

    @Test
    void aTubeOfWhichEverythingIsStatedHasNothingToTell() {
        assertThat(told(SetupFindingsTest::onTube)).isEmpty();
    }

    @Test
    void lostDotsAreToldWithTheFrequencyTheyFoldTo() {
        // 256 samples of 341 dots: 256/341 = 0.750733; the finest pattern of dots, at half of the dot clock, folds at
        // the
        // sampling clock: |256 − 341/2| · 15 745.801 120 Hz = 85.5 · 15 745.801 120 = 1 346 266.0 Hz, told to six
        // digits (../shared/FORMAT.md).
        String message = message("sampling.dots-lost", scene -> scene.samples = List.of(256));
        assertThat(message).contains("0.750733", "1346270 Hz");
        assertThat(told(scene -> scene.samples = List.of(256))).containsExactly("sampling.dots-lost");
    }

    @Test
    void dotsOfTwoWidthsAreTold() {
        // 858/341 = 2.516129: dots of 2 and 3 samples.
        assertThat(told(scene -> scene.samples = List.of(858))).containsExactly("sampling.not-dot-locked");
        assertThat(message("sampling.not-dot-locked", scene -> scene.samples = List.of(858)))
                .contains("2.51613", "of 2 and 3 samples");
        // One sample per dot is locked and loses nothing.
        assertThat(told(scene -> scene.samples = List.of(341))).isEmpty();
    }

    @Test
    void anUnstatedDelayOfTheConverterIsTold() {
        assertThat(told(scene -> scene.processing = scale(Fact.unknown(), bob(), 16)))
                .containsExactly("assumed.converter-delay");
    }

    @Test
    void halfHeightTakenAsInterlacedIsToldWhereItHappens() {
        assertThat(message("half-height.taken-as-interlaced", scene -> {
                    scene.converterHalfHeight = HalfHeight.AS_INTERLACED;
                }))
                .contains("the converter");
        assertThat(message("half-height.taken-as-interlaced", scene -> {
                    onTube(scene);
                    scene.displayHalfHeight = HalfHeight.AS_INTERLACED;
                }))
                .contains("the display");
        // An interlaced mode is none of half height.
        assertThat(told(scene -> {
                    scene.converterHalfHeight = HalfHeight.AS_INTERLACED;
                    scene.modes = List.of(Modes.interlaced525());
                    scene.samples = List.of(1560);
                    scene.processing =
                            scale(Fact.known(10), new Deinterlacer(Deinterlacer.Kind.WEAVE, Fact.known(0), false), 16);
                }))
                .doesNotContain("half-height.taken-as-interlaced");
        assertThat(told(scene -> {
                    onTube(scene);
                    scene.displayHalfHeight = HalfHeight.AS_INTERLACED;
                    scene.modes = List.of(Modes.interlaced525());
                }))
                .doesNotContain("half-height.taken-as-interlaced");
    }

    @Test
    void halfHeightIsToldOfTheModesThatHaveIt() {
        List<Finding> findings = setup(scene -> {
                    scene.samples = List.of(1364, 1560);
                    scene.modes = List.of(
                            Modes.as(Modes.half525(), "picture", 1, false),
                            Modes.as(Modes.interlaced525(), "menu", 1, false));
                    scene.converterHalfHeight = HalfHeight.AS_INTERLACED;
                })
                .findings();
        assertThat(findings)
                .filteredOn(finding -> finding.rule().id().equals("half-height.taken-as-interlaced"))
                .extracting(Finding::message)
                .singleElement()
                .satisfies(message -> assertThat(message).startsWith("picture:"));
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
    void repeatedFieldsFlickerAndOddCopiesLeaveHalfALine() {
        // 262.5 lines sent three times are 787.5 (../shared/DOMAIN.md section 8); sent twice they are 525.
        Consumer<Scene> twice = scene -> {
            scene.modes = List.of(Modes.interlaced525());
            scene.samples = List.of(1560);
            scene.vics = List.of(2, 3, 4);
            scene.processing = repeatInterlaced(480, Processing.InterlacedFields.FIELD_ON_FIELD);
        };
        assertThat(told(twice)).contains("deinterlace.flicker").doesNotContain("deinterlace.half-line-jitter");
        String jitter = message("deinterlace.half-line-jitter", scene -> {
            twice.accept(scene);
            scene.processing = repeatInterlaced(720, Processing.InterlacedFields.FIELD_ON_FIELD);
        });
        assertThat(jitter).contains("787.5");
        // A progressive source has one kind of field.
        assertThat(told(scene -> scene.processing = Workbench.repeat(2))).doesNotContain("deinterlace.flicker");
    }

    @Test
    void bobFlickersAndWeaveDoesNot() {
        Consumer<Scene> interlaced = scene -> {
            scene.modes = List.of(Modes.interlaced525());
            scene.samples = List.of(1560);
        };
        assertThat(told(scene -> {
                    interlaced.accept(scene);
                    scene.processing = scale(Fact.known(10), bob(), 16);
                }))
                .containsExactly("deinterlace.flicker");
        assertThat(told(scene -> {
                    interlaced.accept(scene);
                    scene.processing =
                            scale(Fact.known(10), new Deinterlacer(Deinterlacer.Kind.WEAVE, Fact.known(0), false), 16);
                }))
                .isEmpty();
    }

    @Test
    void aRateOfItsOwnDropsFieldsAndWithOneStoreTears() {
        // 60.098 478 against 60 Hz: 1/0.098 477 557 s = 10.154 600 s (../shared/reference/arith_frame.tsv: 10.1546).
        Consumer<Scene> stored =
                scene -> scene.processing = Workbench.scale(2, List.of(Workbench.free(2, FIELD_60)), 16);
        assertThat(told(stored)).containsExactly("motion.fields-dropped-or-repeated");
        assertThat(message("motion.fields-dropped-or-repeated", stored)).contains("every 10.15");
        // The tear passes the picture as often as a field is lost: 0.098 477 6 times a second, to six digits.
        Consumer<Scene> single =
                scene -> scene.processing = Workbench.scale(2, List.of(Workbench.free(1, FIELD_60)), 16);
        assertThat(told(single)).contains("motion.picture-tears");
        assertThat(message("motion.picture-tears", single)).contains("0.0984776 times a second");
    }

    @Test
    void anUnlistedRasterIsToldWithAListedOneOfTheSameEquipment() {
        Consumer<Scene> unlisted = scene -> scene.vics = List.of(4);
        String alone = message("acceptance.raster-not-listed", unlisted);
        assertThat(alone).contains("LARGER_THAN_LISTED", "no setting");
        // The same box also makes 720p, which the display lists; weights that look at uniformity alone prefer 1080p,
        // where
        // 240 lines can be drawn 4 times each on 960 of the panel's rows. Those of 720p are stretched by 1.5.
        String fallback = message("acceptance.raster-not-listed", scene -> {
            scene.vics = List.of(4);
            scene.processing = Workbench.scale(2, List.of(Workbench.locked(6000, null)), 16, 4);
            for (Criterion criterion : Criterion.values()) {
                scene.weights.put(criterion, criterion == Criterion.DOT_UNIFORMITY ? 1.0 : 0.0);
            }
        });
        assertThat(fallback).contains("vic:4 on the same equipment is LISTED");
    }

    @Test
    void aDisplayThatListsNothingSaysNothingOfListing() {
        assertThat(told(scene -> scene.sinkKnown = false)).doesNotContain("acceptance.raster-not-listed");
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

    /** 1280 × 720 as a digital console sends it: VIC 4, 1650 × 750 at 74.25 MHz, the picture from pixel 260, line 25. */
    private static Mode digital720() {
        Window active = new Window(1280, 720, 260, 25);
        return new Mode(
                "picture",
                LineStandard.OTHER,
                Frequency.ofHz(74_250_000),
                Rational.of(1650),
                Rational.of(750),
                Scan.PROGRESSIVE,
                Rational.ONE,
                false,
                active,
                active,
                false,
                PictureShape.SQUARE_DOTS);
    }

    @Test
    void bandwidthAndJitterConcernOnlyAnalogSignals() {
        assertThat(told(scene -> {
                    scene.format = Format.TMDS;
                    scene.outputPlug = Scene.HDMI;
                    scene.converted = false;
                    scene.lead = null;
                    scene.modes = List.of(digital720());
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
                    scene.modes = List.of(digital720());
                }))
                .containsExactly("assumed.plain-lead");
    }
}
