package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.match.Told.explained;
import static rasterfit.match.Told.message;
import static rasterfit.match.Told.onTube;
import static rasterfit.match.Told.setup;
import static rasterfit.match.Told.step;
import static rasterfit.match.Told.told;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Basis;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.DisplayTest.Outcome;
import rasterfit.gear.Fact;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.OwnEvidence;
import rasterfit.gear.OwnEvidence.OwnReading;
import rasterfit.gear.Panel;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.Severity;
import rasterfit.timing.Cta861;
import rasterfit.timing.RasterTiming;

/** What an owner found out decides, and says so: ../shared/DOMAIN.md sections 8 and 9. */
class OwnerFindingsTest {
    /** What the converter of the scene sends: 1080p locked to the console, +0.164 % from the clock of VIC 16. */
    private static final RasterTiming SENT = Cta861.find(16).orElseThrow().timing();

    /** 262 lines at 27 MHz / 1716 = 15.734 kHz; the console has 15.746 kHz, +0.073 %. */
    private static final RasterTiming HALF_HEIGHT = Cta861.find(8).orElseThrow().timing();

    private static DisplayTest test(RasterTiming timing, Outcome outcome, @Nullable String firmware) {
        return new DisplayTest(timing.raster(), outcome, firmware, LocalDate.of(2026, 3, 9));
    }

    private static Consumer<Scene> tested(RasterTiming timing, Outcome outcome) {
        return scene -> scene.own = new OwnEvidence(List.of(), List.of(test(timing, outcome, "2.1")), List.of());
    }

    private static Measures.Acceptance acceptance(Consumer<Scene> change) {
        return setup(change).modeSettings().get(0).measures().acceptance();
    }

    private static List<String> refused(Consumer<Scene> change) {
        Scene scene = new Scene();
        change.accept(scene);
        MatchResult result = scene.match();
        assertThat(result.ranked()).isEmpty();
        return result.refused().stream().map(group -> group.rule().id()).toList();
    }

    @Test
    void aRasterThatItsOwnerSawIsTestedWithDayAndFirmware() {
        Measures.Acceptance acceptance = acceptance(tested(SENT, Outcome.SHOWN));

        assertThat(acceptance.grade()).isEqualTo(AcceptanceGrade.TESTED);
        // What it lists, and how far off that is, is told all the same.
        assertThat(acceptance.listedAs()).isEqualTo("vic:16");
        assertThat(acceptance.tested()).isEqualTo(test(SENT, Outcome.SHOWN, "2.1"));
        assertThat(told(tested(SENT, Outcome.SHOWN))).containsExactly("display.own-test-shown");
        assertThat(message("display.own-test-shown", tested(SENT, Outcome.SHOWN)))
                .contains("input in", "2026-03-09", "firmware 2.1");
    }

    @Test
    void whatDecidedIsAStepOfTheExplanation() {
        Step step = step(explained(tested(SENT, Outcome.SHOWN)), "ownTest");
        assertThat(step.inputs()).containsEntry("without it", "LISTED").containsEntry("on", "2026-03-09");
        assertThat(step.result()).isEqualTo("TESTED");
    }

    @Test
    void aRasterThatIsNotListedIsTestedToo() {
        Consumer<Scene> change = scene -> {
            scene.vics = List.of(4);
            tested(SENT, Outcome.SHOWN).accept(scene);
        };
        assertThat(acceptance(change).grade()).isEqualTo(AcceptanceGrade.TESTED);
        assertThat(acceptance(change).listedAs()).isNull();
        assertThat(told(change)).doesNotContain("acceptance.raster-not-listed");
    }

    @Test
    void aRasterThatStayedBlankIsRefusedThoughItIsListed() {
        Scene scene = new Scene();
        tested(SENT, Outcome.BLANK).accept(scene);
        MatchResult result = scene.match();

        assertThat(result.ranked()).isEmpty();
        RefusalGroup group = result.refused().stream()
                .filter(refused -> refused.rule().id().equals("display.own-test-blank"))
                .findFirst()
                .orElseThrow();
        // As many as are kept where nothing was tried.
        Scene untried = new Scene();
        untried.settingsPerRoute = 10_000;
        assertThat(group.count()).isEqualTo(untried.match().ranked().size());
        assertThat(group.message()).contains("input in", "2026-03-09 with firmware 2.1");
    }

    @Test
    void aRasterThatDropsOutIsKeptAtTheLowestGradeWithAWarning() {
        Measures.Acceptance acceptance = acceptance(tested(SENT, Outcome.DROPS_OUT));

        assertThat(acceptance.grade()).isEqualTo(AcceptanceGrade.OUTSIDE_LIMITS);
        assertThat(setup(tested(SENT, Outcome.DROPS_OUT)).findings())
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.rule().id()).isEqualTo("display.own-test-drops-out");
                    assertThat(finding.rule().severity()).isEqualTo(Severity.WARNING);
                    assertThat(finding.message()).contains("interruptions", "2026-03-09", "no setting");
                });
    }

    @Test
    void aTestWithAnotherFirmwareDecidesNothingAndIsTold() {
        Consumer<Scene> change =
                scene -> scene.own = new OwnEvidence(List.of(), List.of(), List.of(test(SENT, Outcome.BLANK, "1.0")));

        assertThat(acceptance(change).grade()).isEqualTo(AcceptanceGrade.LISTED);
        assertThat(told(change)).containsExactly("display.own-test-outdated");
        assertThat(message("display.own-test-outdated", change)).contains("BLANK", "1.0");
    }

    @Test
    void aTestOfAnotherRasterDecidesNothing() {
        RasterTiming other = Cta861.find(4).orElseThrow().timing();
        assertThat(acceptance(tested(other, Outcome.BLANK)).grade()).isEqualTo(AcceptanceGrade.LISTED);
        assertThat(told(tested(other, Outcome.BLANK))).isEmpty();
    }

    @Test
    void whatTheOwnerSawExceedsTheClockThatTheDisplayDeclares() {
        Consumer<Scene> slow = scene -> scene.displayMaxTmdsClock = Frequency.ofHz(140_000_000);
        assertThat(refused(slow)).contains("link.clock-exceeds-display");
        assertThat(acceptance(slow.andThen(tested(SENT, Outcome.SHOWN))).grade())
                .isEqualTo(AcceptanceGrade.TESTED);
    }

    @Test
    void whatTheConverterCannotSendStaysRefused() {
        Consumer<Scene> slow = scene -> scene.converterMaxTmdsClock = Frequency.ofHz(140_000_000);
        assertThat(refused(slow.andThen(tested(SENT, Outcome.SHOWN)))).contains("link.clock-exceeds-converter");
    }

    @Test
    void anAnalogInputIsToldARasterByItsLinesAlone() {
        Consumer<Scene> refusing = scene -> {
            onTube(scene);
            scene.displayHalfHeight = HalfHeight.REFUSED;
        };
        assertThat(refused(refusing)).containsExactly("display.half-height-not-shown");
        assertThat(acceptance(refusing.andThen(tested(HALF_HEIGHT, Outcome.SHOWN)))
                        .grade())
                .isEqualTo(AcceptanceGrade.TESTED);
    }

    /** A picture outside of the stated scan range may be seen and still harm a tube: common practice. */
    @Test
    void aTubeKeepsItsScanRangeWhateverItsOwnerSaw() {
        Consumer<Scene> narrow = scene -> {
            onTube(scene);
            scene.displayLineRate = new FrequencyRange(Frequency.ofHz(15_800), Frequency.ofHz(16_000));
            scene.displayFieldRate = new FrequencyRange(Frequency.ofHz(49), Frequency.ofHz(61));
        };
        Consumer<Scene> seen = narrow.andThen(tested(HALF_HEIGHT, Outcome.SHOWN));
        assertThat(refused(seen)).containsExactly("display.line-rate-outside-range");

        Consumer<Scene> grid =
                seen.andThen(scene -> scene.panel = new Panel.Grid(800, 600, null, Panel.Filter.NEAREST));
        assertThat(acceptance(grid).grade()).isEqualTo(AcceptanceGrade.TESTED);
    }

    private static Consumer<Scene> read(LagReading.Method method, List<LagReading> stated) {
        LagReading reading = new LagReading(
                "vic:16",
                new Fact.Within(Rational.of(5), Rational.of(6), Rational.of(7)),
                method,
                null,
                Basis.MEASURED);
        return scene -> {
            scene.lag = stated;
            scene.own = new OwnEvidence(
                    List.of(new OwnReading(reading, LocalDate.of(2026, 3, 9), 12)), List.of(), List.of());
        };
    }

    @Test
    void anOwnReadingSaysWhatItStandsInPlaceOf() {
        Consumer<Scene> change =
                read(LagReading.Method.SPLIT_SIGNAL, List.of(Scene.reading(LagReading.Method.SPLIT_SIGNAL)));
        Latency lag = setup(change).modeSettings().get(0).measures().displayLagMs();

        assertThat(lag.typical()).isEqualTo(Rational.of(6));
        assertThat(told(change)).containsExactly("display.lag-measured-by-owner");
        assertThat(message("display.lag-measured-by-owner", change))
                .contains("6 [5–7] ms MEASURED", "2026-03-09", "12 times", "in place of 10 [9–12] ms MEASURED");
    }

    @Test
    void anOwnReadingReplacesTheAssumptionAndItsFinding() {
        // An ordinary television is taken as 60 [30–120] ms.
        Consumer<Scene> change = read(LagReading.Method.SPLIT_SIGNAL, List.of());
        assertThat(told(change)).containsExactly("display.lag-measured-by-owner");
        assertThat(message("display.lag-measured-by-owner", change)).contains("in place of 60 [30–120] ms ASSUMED");
    }

    @Test
    void anOwnReadingFromPressToLightIsToldAsTheBoundThatItIs() {
        Consumer<Scene> change =
                read(LagReading.Method.PRESS_TO_LIGHT, List.of(Scene.reading(LagReading.Method.SPLIT_SIGNAL)));
        assertThat(told(change)).containsExactly("display.lag-bounded-by-owner");
        assertThat(message("display.lag-bounded-by-owner", change)).contains("7 [7–7] ms", "10 [9–12] ms");

        assertThat(told(read(LagReading.Method.PRESS_TO_LIGHT, List.of())))
                .containsExactly("display.lag-bounded-by-owner", "assumed.lag-below-its-bound");
    }
}
