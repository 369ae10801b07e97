package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.match.Told.message;
import static rasterfit.match.Told.onTube;
import static rasterfit.match.Told.repeatInterlaced;
import static rasterfit.match.Told.setup;
import static rasterfit.match.Told.told;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Fact;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.gear.ScaleAxis;
import rasterfit.quantity.Frequency;
import rasterfit.rule.Finding;
import rasterfit.timing.Cta861;
import rasterfit.timing.VideoTiming;

/**
 * Findings of what becomes of the picture, by the one fact that brings each (../shared/DOMAIN.md sections 6 and 8 to 10); see
 * {@link SetupFindingsTest} for what had to be assumed.
 */
class PictureFindingsTest {
    private static final Frequency FIELD_60 = Frequency.ofHz(60);

    private static OfferedTiming offered(int vic) {
        VideoTiming timing = Cta861.find(vic).orElseThrow();
        return new OfferedTiming("vic:" + vic, timing.timing(), timing.pictureAspect());
    }

    private static Processing scale(Fact pipelineUs, Deinterlacer deinterlacer, int... vics) {
        return new Processing.RasterScale(
                "scale",
                Arrays.stream(vics).mapToObj(PictureFindingsTest::offered).toList(),
                new ScaleAxis(ScaleAxis.Factors.ANY, 2, 48),
                new ScaleAxis(ScaleAxis.Factors.ANY, 2, 64),
                List.of(deinterlacer),
                List.of(Workbench.locked(6000, null)),
                pipelineUs);
    }

    private static Deinterlacer bob() {
        return new Deinterlacer(Deinterlacer.Kind.BOB, Fact.known(0), false);
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
}
