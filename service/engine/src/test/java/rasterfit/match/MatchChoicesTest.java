package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Display;
import rasterfit.gear.Mode;
import rasterfit.gear.RateLock;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** What whole answers choose: shared settings, the best of every route, gaps, and the limits of links and digitisers. */
class MatchChoicesTest {
    /** Two dot clocks at one line rate: 3/2 and 2 of the subcarrier, 342 and 456 dots (exact arithmetic). */
    private static final Mode NARROW = Modes.as(
            Modes.of("59062500/11", "342", "262", Scan.PROGRESSIVE, new Window(256, 240, 64, 18)), "narrow", 2, false);

    private static final Mode WIDE = Modes.as(
            Modes.of("78750000/11", "456", "262", Scan.PROGRESSIVE, new Window(320, 224, 92, 26)), "wide", 1, false);

    private static final Mode MENU = Modes.as(Modes.interlaced525(), "menu", 1, true);

    private static Converter scaler(String id, RateLock lock, int... vics) {
        return Workbench.converter(id, Workbench.samples(780, 858, 1368), Workbench.scale(2, List.of(lock), vics));
    }

    private static Converter repeater(String id, int... copies) {
        return Workbench.converter(id, Workbench.samples(858, 1368), Workbench.repeat(copies));
    }

    private static List<List<String>> modesOf(RankedSetup setup) {
        return setup.modeSettings().stream().map(ModeSetting::modes).toList();
    }

    private static CriterionValue criterion(RankedSetup setup, Criterion criterion) {
        return setup.criteria().stream()
                .filter(value -> value.criterion() == criterion)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void modesThatLookAlikeShareOneSettingWithMeasuresOfEach() {
        MatchResult result = new Workbench()
                .modes(NARROW, WIDE)
                .converters(repeater("repeater", 2, 4))
                .match();

        assertThat(result.ranked()).isNotEmpty().allSatisfy(setup -> {
            assertThat(modesOf(setup)).containsExactly(List.of("narrow", "wide"));
            Map<String, Measures> byMode = setup.modeSettings().get(0).measuresByMode();
            assertThat(byMode).containsOnlyKeys("narrow", "wide");
            int samples = setup.modeSettings().get(0).settings().samplesPerLine();
            assertThat(byMode.get("narrow").sampling().samplesPerDot()).isEqualTo(Rational.of(samples, 342));
            assertThat(byMode.get("wide").sampling().samplesPerDot()).isEqualTo(Rational.of(samples, 456));
            // The mode with the greater share stands for both.
            assertThat(setup.modeSettings().get(0).measures()).isEqualTo(byMode.get("narrow"));
        });
    }

    @Test
    void modesThatTheInputTellsApartHaveSettingsOfTheirOwn() {
        MatchResult result = new Workbench()
                .modes(NARROW, MENU)
                .converters(repeater("repeater", 2))
                .match();

        assertThat(result.ranked()).isNotEmpty().allSatisfy(setup -> {
            assertThat(modesOf(setup)).containsExactly(List.of("narrow"), List.of("menu"));
            assertThat(setup.modeSettings())
                    .allSatisfy(setting -> assertThat(setting.measuresByMode()).isEmpty());
        });
    }

    @Test
    void equalScoresAreOrderedByRoute() {
        MatchResult result = new Workbench()
                .modes(NARROW)
                .converters(repeater("b", 2), repeater("a", 2), repeater("c", 2))
                .match();

        assertThat(result.ranked()).hasSize(3);
        assertThat(result.ranked().stream().map(RankedSetup::score).distinct()).hasSize(1);
        assertThat(result.ranked().stream().map(MatchChoicesTest::converter)).containsExactly("a", "b", "c");
    }

    private static String converter(RankedSetup setup) {
        return setup.route().get(1).id();
    }

    @Test
    void everyRouteShowsItsBestSettingAndMoreOnDemand() {
        Converter[] converters = {repeater("one", 2, 3, 4), repeater("two", 2)};
        List<RankedSetup> best =
                new Workbench().modes(NARROW).converters(converters).match().ranked();
        List<RankedSetup> three = new Workbench()
                .modes(NARROW)
                .converters(converters)
                .settingsPerRoute(3)
                .match()
                .ranked();

        assertThat(best.stream().map(MatchChoicesTest::converter)).containsExactlyInAnyOrder("one", "two");
        Map<String, List<RankedSetup>> byRoute =
                three.stream().collect(Collectors.groupingBy(MatchChoicesTest::converter));
        for (RankedSetup setup : best) {
            List<RankedSetup> same = byRoute.get(converter(setup));
            assertThat(same).hasSize(3);
            assertThat(same.get(0).score()).isEqualTo(setup.score());
            assertThat(same.get(0).modeSettings()).isEqualTo(setup.modeSettings());
        }
    }

    @Test
    void aSwitchDuringPlayCostsTheConvertersResyncAndTheDisplaysWhereTheRasterChanges() {
        // Converter 0.3 s, display 2 s. A free-running scaler can keep its raster; doubled lines of 262 and 525/2
        // cannot.
        MatchResult result = new Workbench()
                .modes(NARROW, MENU)
                .converters(scaler("scaler", Workbench.free(2), 16), repeater("repeater", 2))
                .weight(Criterion.MODE_SWITCH_GAP, 100)
                .match();
        Map<String, RankedSetup> byConverter =
                result.ranked().stream().collect(Collectors.toMap(MatchChoicesTest::converter, setup -> setup));

        CriterionValue kept = criterion(byConverter.get("scaler"), Criterion.MODE_SWITCH_GAP);
        CriterionValue changed = criterion(byConverter.get("repeater"), Criterion.MODE_SWITCH_GAP);
        assertThat(kept.value().toDouble()).isCloseTo(0.3, within(1e-12));
        assertThat(kept.utility()).isCloseTo(Math.pow(2, -0.15), within(1e-12));
        assertThat(changed.value().toDouble()).isCloseTo(2.3, within(1e-12));
        assertThat(changed.utility()).isCloseTo(Math.pow(2, -1.15), within(1e-12));
    }

    @Test
    void theGapDropsOutWhereNothingSwitchesDuringPlay() {
        Mode still = Modes.as(MENU, "menu", 1, false);
        MatchResult result = new Workbench()
                .modes(NARROW, still)
                .converters(repeater("repeater", 2))
                .match();

        assertThat(result.ranked())
                .isNotEmpty()
                .allSatisfy(setup -> assertThat(setup.criteria())
                        .noneSatisfy(value -> assertThat(value.criterion()).isEqualTo(Criterion.MODE_SWITCH_GAP)));
    }

    @Test
    void slowRastersAreSentWithRepeatedPixelsOrRefused() {
        // 858 samples at 15.7 kHz are 13.5 Mpixel/s, below the 25 Mpixel/s of the link (HDMI 1.3a §6.4): sent twice.
        Converter repeating = Workbench.converter("pass", Workbench.samples(858), Workbench.formatOnly());
        MatchResult twice = new Workbench().modes(NARROW).converters(repeating).match();
        assertThat(twice.ranked()).hasSize(1).allSatisfy(setup -> {
            assertThat(setup.modeSettings().get(0).settings().horizontalRepetition())
                    .isEqualTo(2);
            assertThat(setup.modeSettings().get(0).outputTiming().pixelClock())
                    .isEqualTo(NARROW.lineRate().times(2 * 858));
        });

        MatchResult refused = new Workbench()
                .modes(NARROW)
                .converters(withoutRepetition(repeating))
                .match();
        assertThat(refused.ranked()).isEmpty();
        assertThat(refused.refused()).hasSize(1).allSatisfy(group -> {
            assertThat(group.rule().id()).isEqualTo("link.clock-below-minimum");
            assertThat(group.count()).isEqualTo(refused.counts().settings());
            assertThat(group.nearest().limit()).isEqualTo(Rational.of(25_000_000));
        });
    }

    private static Converter withoutRepetition(Converter converter) {
        ConverterOutput.Digital output =
                (ConverterOutput.Digital) converter.outputs().get(0);
        return new Converter(
                converter.id(),
                converter.name(),
                converter.price(),
                converter.inputs(),
                converter.processing(),
                List.of(new ConverterOutput.Digital(
                        output.id(), output.plug(), output.link(), output.maxTmdsClock(), false)),
                converter.resyncMs(),
                converter.settingsToTune());
    }

    @Test
    void countsBeyondTheDigitisersSampleRateAreRefused() {
        // The workbench digitises at up to 110 MHz: 7000 samples at 15.7 kHz are 109.9 MHz, 7006 are 109.99, 7007 more.
        MatchResult result = new Workbench()
                .modes(NARROW)
                .converters(Workbench.converter(
                        "fast", Workbench.samples(7006, 7007), Workbench.scale(1, List.of(Workbench.free(2)), 16)))
                .settingsPerRoute(1000)
                .top(1000)
                .match();

        assertThat(result.ranked())
                .isNotEmpty()
                .allSatisfy(setup -> assertThat(
                                setup.modeSettings().get(0).settings().samplesPerLine())
                        .isEqualTo(7006));
        assertThat(result.refused()).anySatisfy(group -> {
            assertThat(group.rule().id()).isEqualTo("digitise.sample-rate-exceeds-converter");
            assertThat(group.nearest().value())
                    .isEqualTo(NARROW.lineRate().times(7007).hz());
            assertThat(group.nearest().limit()).isEqualTo(Rational.of(110_000_000));
        });
    }

    @Test
    void aTubeTakesTheConsoleAsItIs() {
        Display tube = Workbench.tube(5);
        MatchResult result = new Workbench().modes(NARROW).display(tube).match();

        assertThat(result.ranked()).hasSize(1).allSatisfy(setup -> {
            Measures measures = setup.modeSettings().get(0).measures();
            assertThat(measures.addedLatencyMs().greatest()).isEqualTo(Rational.ZERO);
            assertThat(measures.displayLagMs().greatest()).isEqualTo(Rational.ZERO);
            assertThat(measures.shape().verticalScale()).isNull();
            assertThat(measures.shape().leastDotWidth()).isNull();
            assertThat(setup.criteria())
                    .noneSatisfy(value -> assertThat(value.criterion()).isEqualTo(Criterion.DOT_UNIFORMITY));
        });
    }
}
