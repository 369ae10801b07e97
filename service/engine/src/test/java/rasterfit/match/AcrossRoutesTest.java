package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Carried;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Level;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Link;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** What decides between routes that differ in one thing only, and which rasters an input of the display does not take. */
class AcrossRoutesTest {
    private static void only(Workbench bench, Criterion... criteria) {
        for (Criterion criterion : Criterion.values()) {
            bench.weight(criterion, List.of(criteria).contains(criterion) ? 1 : 0);
        }
    }

    private static List<String> converters(MatchResult result) {
        return result.ranked().stream().map(setup -> setup.route().get(1).id()).toList();
    }

    @Test
    void theLeadThatPassesMoreDetailComesFirstAndDominates() {
        // Amplifier 6 MHz, filter 35 MHz; leads of 50 and of 1 MHz: 5.87 and 0.986 MHz in all, so 2·B/dot clock is 1
        // (capped) and 0.37. All else is equal, so the lesser lead is dominated (../shared/DOMAIN.md sections 4 and
        // 11).
        Scene scene = new Scene();
        scene.lead = Scene.cable("a-poor", Scene.CONSOLE, Scene.SCART, Fact.known(1_000_000));
        Link good = Scene.cable("b-good", Scene.CONSOLE, Scene.SCART, Fact.known(50_000_000));
        // No weight on uniformity: a slow edge is a soft one and would count against the poor lead all the same.
        scene.weights.put(Criterion.DOT_UNIFORMITY, 0.0);
        MatchResult result = scene.match(good);

        assertThat(result.ranked())
                .extracting(setup -> setup.route().get(1).id())
                .containsExactly("b-good", "a-poor");
        assertThat(result.ranked()).extracting(RankedSetup::paretoOptimal).containsExactly(true, false);
        assertThat(result.ranked().get(0).score())
                .isGreaterThan(result.ranked().get(1).score());
    }

    private static RateLock free(int stores) {
        return Workbench.free(stores, Frequency.ofHz(60));
    }

    @Test
    void motionCountsOnThePictureAxisByItsWeight() {
        // One field store tears (0.7 of the motion) and is quicker than two. Whole samples per dot (1364 = 4·341) draw
        // even
        // dots; 858 = 2.516·341 draws dots of two widths. With a thousandth of the weight on motion, the quick and even
        // picture is the better one on both axes that differ, price and raster being equal.
        Workbench bench = new Workbench()
                .modes(Modes.half525())
                .converters(
                        Workbench.converter(
                                "two-stores-lossy", Workbench.samples(340), Workbench.scale(1, List.of(free(2)), 16)),
                        Workbench.converter(
                                "one-store-whole", Workbench.samples(1364), Workbench.scale(1, List.of(free(1)), 16)))
                .display(Workbench.television(0, 16));
        only(bench, Criterion.DOT_UNIFORMITY);
        bench.weight(Criterion.MOTION, 0.001);
        MatchResult result = bench.match();

        assertThat(converters(result)).containsExactly("one-store-whole", "two-stores-lossy");
        assertThat(result.ranked()).extracting(RankedSetup::paretoOptimal).containsExactly(true, false);
    }

    @Test
    void fewerSamplesThanDotsCountAsUnevenEvenWhereNoDrawnDotIsLost() {
        // 340 samples of 341 dots: the line loses one dot, the 170th or so, where 170·(341/340) has drifted by half a
        // dot.
        // Dots from 200 on keep a sample each, but r < 1 makes uniformity 0 (../shared/DOMAIN.md section 11). 767
        // samples
        // make dots of 2 and 3 samples, which is more than 0.
        Mode right = Modes.of("59062500/11", "341", "262", Scan.PROGRESSIVE, new Window(120, 240, 200, 18));
        Workbench bench = new Workbench()
                .modes(right)
                .converters(Workbench.converter(
                        "scaler",
                        Workbench.samples(340, 767),
                        Workbench.scale(1, List.of(Workbench.locked(6000, null)), 16)));
        only(bench, Criterion.DOT_UNIFORMITY);
        RankedSetup best = bench.match().ranked().get(0);

        assertThat(best.score()).isGreaterThan(0);
        assertThat(best.modeSettings().get(0).settings().samplesPerLine()).isEqualTo(767);
    }

    private static List<String> refusedBy(Consumer<Scene> change) {
        Scene scene = new Scene();
        change.accept(scene);
        MatchResult result = scene.match();
        assertThat(result.ranked()).isEmpty();
        return result.refused().stream()
                .map(RefusalGroup::rule)
                .map(rule -> rule.id())
                .toList();
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

    @Test
    void aTubeIsNotSentRatesThatItDoesNotTake() {
        // The console's 15 745.801 Hz and 60.098 Hz.
        Scene inside = new Scene();
        tube(inside);
        inside.displayLineRate = new FrequencyRange(Frequency.parseHz("15745"), Frequency.parseHz("15746"));
        inside.displayFieldRate = new FrequencyRange(Frequency.parseHz("60.09"), Frequency.parseHz("60.10"));
        assertThat(inside.match().ranked()).hasSize(1);

        assertThat(refusedBy(scene -> {
                    tube(scene);
                    scene.displayLineRate = new FrequencyRange(Frequency.parseHz("15746"), Frequency.parseHz("31500"));
                }))
                .containsExactly("display.line-rate-outside-range");
        assertThat(refusedBy(scene -> {
                    tube(scene);
                    scene.displayFieldRate = new FrequencyRange(Frequency.ofHz(49), Frequency.ofHz(60));
                }))
                .containsExactly("display.field-rate-outside-range");
        assertThat(refusedBy(scene -> {
                    tube(scene);
                    scene.displayHalfHeight = HalfHeight.UNSTABLE;
                }))
                .containsExactly("display.half-height-not-shown");
    }

    @Test
    void anInterlacedRasterIsNoHalfHeightOne() {
        Scene scene = new Scene();
        tube(scene);
        scene.modes = List.of(Modes.interlaced525());
        scene.displayHalfHeight = HalfHeight.UNSTABLE;
        assertThat(scene.match().ranked()).hasSize(1);
    }

    @Test
    void aDigitalDisplayIsNotSentMoreThanItsGreatestClock() {
        // 2200 · 1125 · 60.098 478 Hz = 148.744 MHz.
        Scene enough = new Scene();
        enough.displayMaxTmdsClock = Frequency.ofHz(149_000_000);
        assertThat(enough.match().ranked()).hasSize(1);

        assertThat(refusedBy(scene -> scene.displayMaxTmdsClock = Frequency.ofHz(148_000_000)))
                .contains("link.clock-exceeds-display");
    }

    @Test
    void aConverterDoesNotSendMoreThanItsGreatestClock() {
        Scene enough = new Scene();
        enough.converterMaxTmdsClock = Frequency.ofHz(149_000_000);
        assertThat(enough.match().ranked()).hasSize(1);

        assertThat(refusedBy(scene -> scene.converterMaxTmdsClock = Frequency.ofHz(148_000_000)))
                .contains("link.clock-exceeds-converter");
    }

    private static void analogOut(Scene scene, @Nullable Frequency greatest) {
        tube(scene);
        scene.converted = true;
        scene.processing = Workbench.formatOnly();
        scene.converterOutput = new ConverterOutput.Analog(
                "out", Scene.SCART, Format.RGB, SyncKind.COMPOSITE_SYNC, Level.VIDEO_75_OHM, greatest);
    }

    @Test
    void anAnalogOutputHasAGreatestClockToo() {
        // The console's dots come at 5 369 318 Hz.
        for (Frequency greatest : new Frequency[] {null, Frequency.ofHz(5_400_000)}) {
            Scene scene = new Scene();
            analogOut(scene, greatest);
            assertThat(scene.match().ranked())
                    .anySatisfy(setup -> assertThat(setup.route())
                            .extracting(MatchResult.RouteStep::id)
                            .contains("box"));
        }
        Scene less = new Scene();
        analogOut(less, Frequency.ofHz(5_300_000));
        assertThat(less.match().refused())
                .extracting(group -> group.rule().id())
                .contains("link.clock-exceeds-converter");
    }

    @Test
    void theFastestLineOfAGroupDecidesWhetherItCanBeSampled() {
        // 1364 · 15 745.801 Hz = 21 477 273 Hz; the other mode's lines are 500 ppm faster, which the input cannot tell
        // apart:
        // 21 488 011 Hz.
        Mode slow = Modes.as(Modes.half525(), "slow", 3, false);
        Mode fast = Modes.as(
                Modes.of("118184062500/22000", "341", "262", Scan.PROGRESSIVE, new Window(256, 240, 65, 18)),
                "fast",
                1,
                false);
        for (List<Mode> order : List.of(List.of(slow, fast), List.of(fast, slow))) {
            Scene enough = new Scene();
            enough.modes = order;
            enough.maxSampleRate = Frequency.ofHz(21_489_000);
            assertThat(enough.match().ranked()).hasSize(1);
            assertThat(refusedBy(scene -> {
                        scene.modes = order;
                        scene.maxSampleRate = Frequency.ofHz(21_480_000);
                    }))
                    .containsExactly("digitise.sample-rate-exceeds-converter");
        }
        Scene alone = new Scene();
        alone.modes = List.of(slow);
        alone.maxSampleRate = Frequency.ofHz(21_480_000);
        assertThat(alone.match().ranked()).hasSize(1);
    }

    private static String listedAs(PictureShape shape) {
        Mode menu = Modes.interlaced525();
        Scene scene = new Scene();
        scene.modes = List.of(Modes.of(
                LineStandard.L525_60,
                "135000000/11",
                "780",
                "525/2",
                Scan.INTERLACED,
                menu.active(),
                menu.used(),
                shape));
        scene.samples = List.of(858);
        scene.vics = List.of(2, 3);
        scene.processing = Workbench.repeat(2);
        return String.valueOf(scene.match()
                .ranked()
                .get(0)
                .modeSettings()
                .get(0)
                .measures()
                .acceptance()
                .listedAs());
    }

    @Test
    void ofTwoListedRastersOfEqualCountsThatOfThePicturesAspectIsMeant() {
        // VIC 2 is 4:3 and VIC 3 is 16:9 (CTA-861-I table 2).
        assertThat(listedAs(PictureShape.TUBE_4_3)).isEqualTo("vic:2");
        assertThat(listedAs(PictureShape.TUBE_16_9)).isEqualTo("vic:3");
    }

    @Test
    void sharesAreOfTheWholeLibraryHoweverTheyAreCounted() {
        // The listed 720p draws rows of 4 and 5 pixels, the unlisted 1080p can draw 4 each: a little more uniformity,
        // against
        // acceptance of 1 and 0.15. A share of 100 in a library of 100 weighs like 1 of 1.
        Scene scene = new Scene();
        scene.modes = List.of(Modes.as(Modes.half525(), "all", 100, false));
        scene.vics = List.of(4);
        scene.processing = Workbench.scale(2, List.of(Workbench.locked(6000, null)), 16, 4);
        for (Criterion criterion : Criterion.values()) {
            scene.weights.put(
                    criterion, criterion == Criterion.DOT_UNIFORMITY || criterion == Criterion.ACCEPTANCE ? 1.0 : 0.0);
        }
        RankedSetup best = scene.match().ranked().get(0);
        assertThat(best.modeSettings().get(0).settings().outputTiming()).isEqualTo("vic:4");
    }

    @Test
    void whatCannotBeProcessedAtAllCountsAsOneSetting() {
        Scene scene = new Scene();
        scene.modes = List.of(Modes.interlaced525());
        scene.processing = new Processing.LineRepeat(
                "repeat",
                List.of(new Processing.LineCounts(LineStandard.L525_60, 240, List.of(480))),
                null,
                Fact.known(1),
                null,
                Processing.InterlacedFields.REFUSED,
                Fact.known(2));
        MatchResult result = scene.match();
        assertThat(result.counts()).isEqualTo(new MatchResult.Counts(1, 0, 1, 1));
        assertThat(result.refused()).singleElement().satisfies(group -> {
            assertThat(group.rule().id()).isEqualTo("repeat.interlaced-refused");
            assertThat(group.count()).isEqualTo(1);
        });
    }

    @Test
    void allSettingsOfAnInputThatCannotFollowAreRefused() {
        Scene open = new Scene();
        long settings = open.match().counts().settings();
        Scene scene = new Scene();
        scene.converterLineRate = new FrequencyRange(Frequency.ofHz(31_000), Frequency.ofHz(32_000));
        MatchResult result = scene.match();
        assertThat(result.ranked()).isEmpty();
        assertThat(result.counts()).isEqualTo(new MatchResult.Counts(1, 0, settings, settings));
        assertThat(result.refused()).singleElement().satisfies(group -> {
            assertThat(group.rule().id()).isEqualTo("input.line-rate-outside-range");
            assertThat(group.count()).isEqualTo(settings);
        });
    }

    @Test
    void refusalsAreToldInTheOrderOfTheChainWhetherOfRoutesOrOfSettings() {
        // A second lead is wired for another format, and the box has no price, which fails any limit on the price.
        Scene scene = new Scene();
        Link yc = Link.cable(
                "yc",
                "yc",
                Scene.CONSOLE,
                Scene.SCART,
                List.of(new Carried(Format.YC, Set.of())),
                null,
                Fact.unknown());
        scene.limits = List.of(new Limit(LimitedMeasure.PRICE, null, Limit.Bound.AT_LEAST, Rational.ZERO, "EUR"));
        MatchResult result = scene.match(yc);

        assertThat(result.refused())
                .extracting(group -> group.rule().id())
                .containsExactly("cable.format-not-carried", "limit.price");
        assertThat(result.counts().routes()).isEqualTo(2);
        assertThat(result.counts().refusedRoutes()).isEqualTo(2);

        Scene settings = new Scene();
        settings.converterLineRate = new FrequencyRange(Frequency.ofHz(31_000), Frequency.ofHz(32_000));
        Link bare = Link.cable(
                "bare",
                "bare",
                Scene.HDMI,
                Scene.HDMI,
                List.of(new Carried(Format.TMDS, Set.of())),
                null,
                Fact.unknown());
        settings.limits = scene.limits;
        settings.converterPrice =
                Workbench.converter("any", "10", null, Workbench.formatOnly()).price();
        // The route over the lead without a price fails at the setup, that over the other at the converter's input.
        assertThat(settings.match(bare).refused())
                .extracting(group -> group.rule().id() + " " + group.of())
                .containsExactly("input.line-rate-outside-range SETTING", "limit.price ROUTE");
    }

    @Test
    void aDisplayThatDeclaresNoClockTakes165Megahertz() {
        // HDMI 1.3a §8.3. 240 lines sent five times with 1716 samples: 1716 · 5 · 15 745.801 Hz = 135.1 MHz; sent five
        // times
        // with 2728: 214.8 MHz.
        Scene enough = new Scene();
        enough.displayMaxTmdsClock = null;
        enough.samples = List.of(1716);
        enough.processing = Workbench.repeat(5);
        assertThat(enough.match().ranked()).hasSize(1);
        assertThat(refusedBy(scene -> {
                    scene.converterMaxTmdsClock = Frequency.ofHz(300_000_000);
                    scene.displayMaxTmdsClock = null;
                    scene.samples = List.of(2728);
                    scene.processing = Workbench.repeat(5);
                }))
                .contains("link.clock-exceeds-display");
        assertThat(refusedBy(scene -> {
                    scene.converterMaxTmdsClock = Frequency.ofHz(300_000_000);
                    scene.sinkKnown = false;
                    scene.samples = List.of(2728);
                    scene.processing = Workbench.repeat(5);
                }))
                .contains("link.clock-exceeds-display");
    }
}
