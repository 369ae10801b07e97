package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.Fact;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Processing;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/** Which lines and samples a line repeater sends, by hand from ../shared/DOMAIN.md sections 5 to 7 and HDMI 1.3a §6.4. */
class RepeatChoicesTest {
    private static Processing repeat(int from, int to, SamplesPerLine.@Nullable FreeRange samples) {
        return new Processing.LineRepeat(
                "repeat",
                List.of(new Processing.LineCounts(LineStandard.L525_60, from, List.of(to))),
                samples,
                Fact.known(1),
                null,
                Processing.InterlacedFields.FIELD_ON_FIELD,
                Fact.known(2));
    }

    private static Mode mode(Window active, Window used) {
        return Modes.of(
                LineStandard.L525_60,
                "59062500/11",
                "341",
                "262",
                Scan.PROGRESSIVE,
                active,
                used,
                PictureShape.TUBE_4_3);
    }

    private static MatchResult match(Consumer<Scene> change) {
        Scene scene = new Scene();
        scene.samples = List.of(1364);
        scene.processing = repeat(240, 480, null);
        scene.settingsPerRoute = 1000;
        change.accept(scene);
        return scene.match();
    }

    private static List<ModeSetting> settings(Consumer<Scene> change) {
        MatchResult result = match(change);
        assertThat(result.ranked()).as("%s", result.refused()).isNotEmpty();
        return result.ranked().stream()
                .map(RankedSetup::modeSettings)
                .map(list -> list.get(0))
                .toList();
    }

    /**
     * 200 active lines in a class of 240: 20 more above and below, as far as a field of 262 lines has them; the class starts
     * at line 0 at the earliest and at line 262 − 240 = 22 at the latest.
     */
    @ParameterizedTest
    @CsvSource({"30, 10", "20, 0", "5, 0", "42, 22", "60, 22"})
    void theLinesOfTheClassLieAroundThePicture(int firstActive, int firstSent) {
        Window active = new Window(256, 200, 65, firstActive);
        assertThat(settings(scene -> scene.modes = List.of(mode(active, active))))
                .allSatisfy(setting -> {
                    assertThat(setting.settings().firstLine()).isEqualTo(firstSent);
                    assertThat(setting.settings().lines()).isEqualTo(240);
                    assertThat(setting.measures().shape().croppedLines().signum())
                            .isZero();
                });
    }

    @Test
    void aClassOfFewerLinesKeepsThoseThatAreDrawn() {
        // 224 of lines 18 to 257; drawn are 26 to 249.
        Window active = new Window(256, 240, 65, 18);
        Window used = new Window(256, 224, 65, 26);
        assertThat(settings(scene -> {
                    scene.modes = List.of(mode(active, used));
                    scene.processing = repeat(224, 448, null);
                }))
                .allSatisfy(setting -> {
                    assertThat(setting.settings().firstLine()).isEqualTo(26);
                    assertThat(setting.settings().lines()).isEqualTo(224);
                    assertThat(setting.measures().shape().croppedLines()).isEqualTo(Rational.of(16));
                    assertThat(setting.measures().shape().croppedUsedLines().signum())
                            .isZero();
                });
    }

    @Test
    void theDrawnDotsAloneMayBeSent() {
        // Drawn are 200 dots from dot 85, active 256 from 65; four samples a dot.
        Window active = new Window(256, 240, 65, 18);
        Window used = new Window(200, 240, 85, 18);
        assertThat(settings(scene -> scene.modes = List.of(mode(active, used))))
                .anySatisfy(setting -> {
                    assertThat(setting.settings().captureFirstDot()).isEqualTo(Rational.of(85));
                    assertThat(setting.settings().captureDots()).isEqualTo(Rational.of(200));
                    assertThat(setting.outputTiming().horizontalActive()).isEqualTo(800);
                    assertThat(setting.measures().shape().croppedUsedDots().signum())
                            .isZero();
                    assertThat(setting.measures().shape().croppedDots()).isEqualTo(Rational.of(56));
                })
                .anySatisfy(setting -> {
                    assertThat(setting.settings().captureFirstDot()).isEqualTo(Rational.of(65));
                    assertThat(setting.settings().captureDots()).isEqualTo(Rational.of(256));
                })
                // As wide as 4:3 over 240 lines of 8/7: 280 dots (../shared/DOMAIN.md section 7), centred: 12 more at
                // each side.
                .anySatisfy(setting -> {
                    assertThat(setting.settings().captureFirstDot()).isEqualTo(Rational.of(53));
                    assertThat(setting.settings().captureDots()).isEqualTo(Rational.of(280));
                });
    }

    @Test
    void aWindowLeavesBlankingHoweverWideThePicture() {
        // 340 of 341 dots at 300 samples a line: 299.1 samples would need 300; one is left for blanking.
        Window active = new Window(340, 240, 0, 18);
        assertThat(settings(scene -> {
                    scene.modes = List.of(mode(active, active));
                    scene.samples = List.of(300);
                    scene.processing = repeat(240, 960, null);
                }))
                .anySatisfy(setting -> {
                    Raster raster = setting.outputTiming();
                    // 300 · 4 · 15 745.801 Hz = 18.9 MHz, sent twice.
                    assertThat(raster.horizontalTotal()).isEqualTo(Rational.of(600));
                    assertThat(raster.horizontalActive()).isEqualTo(598);
                });
    }

    /** 15 625 lines of 800 dots: the clock is 15 625 Hz times the samples. */
    private static Mode round() {
        return Modes.of(
                LineStandard.L525_60,
                "12500000",
                "800",
                "262",
                Scan.PROGRESSIVE,
                new Window(600, 240, 150, 18),
                new Window(600, 240, 150, 18),
                PictureShape.TUBE_4_3);
    }

    @ParameterizedTest
    @CsvSource({"1600, 1", "800, 2", "799, 3", "160, 10"})
    void samplesAreRepeatedUntilTheLinkHasItsLeastRate(int samples, int copies) {
        // 25 Mpixel/s: 1600 samples reach it alone, 800 twice, 799 only thrice, 160 ten times, the most that there is.
        assertThat(settings(scene -> {
                    scene.modes = List.of(round());
                    scene.samples = List.of(samples);
                    scene.processing = Workbench.formatOnly();
                }))
                .allSatisfy(setting -> {
                    assertThat(setting.outputTiming().horizontalTotal())
                            .isEqualTo(Rational.of((long) samples * copies));
                    assertThat(setting.outputTiming().pixelClock())
                            .isEqualTo(Frequency.ofHz(15_625L * samples * copies));
                });
    }

    private static List<String> refusedBy(Consumer<Scene> change) {
        MatchResult result = match(change);
        assertThat(result.ranked()).isEmpty();
        return result.refused().stream().map(group -> group.rule().id()).toList();
    }

    @Test
    void whatStaysBelowTheLeastRateIsRefused() {
        Consumer<Scene> slow = scene -> {
            scene.modes = List.of(round());
            scene.processing = Workbench.formatOnly();
        };
        // 159 samples ten times: 24.84 MHz.
        assertThat(refusedBy(scene -> {
                    slow.accept(scene);
                    scene.samples = List.of(159);
                }))
                .containsExactly("link.clock-below-minimum");
        // 1599 samples once: 24.98 MHz, on an output that does not repeat.
        assertThat(refusedBy(scene -> {
                    slow.accept(scene);
                    scene.samples = List.of(1599);
                    scene.repetition = false;
                }))
                .containsExactly("link.clock-below-minimum");
        assertThat(settings(scene -> {
                    slow.accept(scene);
                    scene.samples = List.of(1600);
                    scene.repetition = false;
                }))
                .isNotEmpty();
    }

    @Test
    void interlacedFieldsStayInterlacedWhereOnlyTheFormatChanges() {
        // VIC 6: 1440 × 480 of 1716 × 525 at 27 MHz, each of 720 samples sent twice (CTA-861-I table 1).
        List<ModeSetting> all = settings(scene -> {
            scene.modes = List.of(Modes.interlaced525());
            scene.samples = List.of(858);
            scene.vics = List.of(6);
            scene.processing = Workbench.formatOnly();
        });
        assertThat(all).allSatisfy(setting -> {
            Raster raster = setting.outputTiming();
            assertThat(raster.scan()).isEqualTo(Scan.INTERLACED);
            assertThat(raster.horizontalTotal()).isEqualTo(Rational.of(1716));
            assertThat(raster.verticalTotal()).isEqualTo(Rational.of(525));
            assertThat(raster.verticalActive()).isEqualTo(480);
            assertThat(raster.pixelClock()).isEqualTo(Frequency.ofHz(27_000_000));
        });
        assertThat(all).anySatisfy(setting -> {
            assertThat(setting.outputTiming().horizontalActive()).isEqualTo(1440);
            assertThat(setting.measures().acceptance().grade()).isEqualTo(AcceptanceGrade.LISTED);
            assertThat(setting.measures().acceptance().listedAs()).isEqualTo("vic:6");
        });
    }

    @Test
    void aChangeOfFormatSendsAllLinesOfThePicture() {
        // 250 lines a field are more than the nominal 240; 400 lines of a computer's picture belong to no broadcast
        // class.
        Mode menu = Modes.interlaced525();
        Window tall = new Window(640, 250, 118, 10);
        assertThat(settings(scene -> {
                    scene.modes = List.of(Modes.of(
                            LineStandard.L525_60,
                            "135000000/11",
                            "780",
                            "525/2",
                            Scan.INTERLACED,
                            tall,
                            tall,
                            menu.shape()));
                    scene.samples = List.of(858);
                    scene.processing = Workbench.formatOnly();
                }))
                .allSatisfy(setting -> {
                    assertThat(setting.settings().lines()).isEqualTo(250);
                    assertThat(setting.outputTiming().verticalActive()).isEqualTo(500);
                });
        Window computer = new Window(640, 400, 144, 35);
        assertThat(settings(scene -> {
                    scene.modes = List.of(Modes.of(
                            LineStandard.OTHER,
                            "25175000",
                            "800",
                            "449",
                            Scan.PROGRESSIVE,
                            computer,
                            computer,
                            PictureShape.SQUARE_DOTS));
                    scene.samples = List.of(800);
                    scene.processing = Workbench.formatOnly();
                }))
                .allSatisfy(setting -> assertThat(setting.settings().lines()).isEqualTo(400));
    }

    @Test
    void theShapedWindowLeavesTheBlankingOfItsLineStandard() {
        // By CTA-861 a dot is 352/315 wide, so 4:3 over 240 lines are 286.36 dots; of 341 dots 720/858 (BT.601),
        // 286.15, may
        // be used. At four samples a dot that takes 1145 samples, 286.25 dots.
        assertThat(settings(scene -> scene.pixelAspect = PixelAspectConvention.CTA_861))
                .anySatisfy(
                        setting -> assertThat(setting.settings().captureDots()).isEqualTo(Rational.of(1145, 4)));
    }

    @Test
    void repeatedFieldsAreProgressive() {
        // VIC 2: 720 × 480 of 858 × 525 at 27 MHz.
        List<ModeSetting> all = settings(scene -> {
            scene.modes = List.of(Modes.interlaced525());
            scene.samples = List.of(858);
            scene.vics = List.of(2);
        });
        assertThat(all).allSatisfy(setting -> {
            assertThat(setting.outputTiming().scan()).isEqualTo(Scan.PROGRESSIVE);
            assertThat(setting.outputTiming().verticalTotal()).isEqualTo(Rational.of(525));
            assertThat(setting.outputTiming().verticalActive()).isEqualTo(480);
        });
        assertThat(all)
                .anySatisfy(setting ->
                        assertThat(setting.measures().acceptance().listedAs()).isEqualTo("vic:2"));
    }

    @ParameterizedTest
    @CsvSource({"1365, 2000, 1365", "1000, 1363, 1363"})
    void theProcessingMayLimitTheSamples(int least, int most, int nearest) {
        MatchResult result =
                match(scene -> scene.processing = repeat(240, 480, new SamplesPerLine.FreeRange(least, most)));
        assertThat(result.ranked()).isEmpty();
        assertThat(result.refused()).singleElement().satisfies(group -> {
            assertThat(group.nearest()).isNotNull();
            assertThat(group.nearest().value()).isEqualTo(Rational.of(1364));
            assertThat(group.nearest().limit()).isEqualTo(Rational.of(nearest));
        });
    }

    @Test
    void theProcessingsOwnEndsAreAllowed() {
        assertThat(settings(scene -> scene.processing = repeat(240, 480, new SamplesPerLine.FreeRange(1364, 2000))))
                .isNotEmpty();
        assertThat(settings(scene -> scene.processing = repeat(240, 480, new SamplesPerLine.FreeRange(700, 1364))))
                .isNotEmpty();
    }

    @Test
    void memoryForFewerLinesThanAreHeldIsRefused() {
        // The first copy begins after one line, the last leaves a line later: two lines.
        Processing one = memory(1);
        assertThat(match(scene -> scene.processing = one).refused())
                .extracting(RefusalGroup::rule)
                .hasSize(1);
        assertThat(settings(scene -> scene.processing = memory(2))).isNotEmpty();
    }

    private static Processing memory(int lines) {
        return new Processing.LineRepeat(
                "repeat",
                List.of(new Processing.LineCounts(LineStandard.L525_60, 240, List.of(480))),
                null,
                Fact.known(1),
                lines,
                Processing.InterlacedFields.REFUSED,
                Fact.known(2));
    }
}
