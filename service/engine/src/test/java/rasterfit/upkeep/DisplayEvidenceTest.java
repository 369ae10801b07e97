package rasterfit.upkeep;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Carried;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.DisplayTest.Outcome;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading.Method;
import rasterfit.gear.Level;
import rasterfit.gear.OwnEvidence;
import rasterfit.gear.OwnEvidence.OwnReading;
import rasterfit.gear.Panel;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** Which evidence comes to which input: by the words of ../shared/DOMAIN.md section 9 and the decisions that we noted. */
class DisplayEvidenceTest {
    private static final RasterTiming FULL_HD = Cta861.find(16).orElseThrow().timing();
    private static final Display DISPLAY = new Display(
            "screen",
            "Screen",
            DisplayClass.TELEVISION,
            new Panel.Grid(1920, 1080, null, Panel.Filter.NEAREST),
            List.of(input("digital-1", "ordinary"), input("digital-1", "low-delay"), input("digital-2", null)),
            List.of("something assumed"));

    private static DisplayInput input(String id, @Nullable String state) {
        return new DisplayInput(
                id,
                state,
                null,
                Level.VIDEO_75_OHM,
                List.of(new Carried(Format.TMDS, Set.of())),
                null,
                null,
                Set.of(Scan.values()),
                HalfHeight.SHOWN,
                Rational.of(2000),
                null,
                List.of(AspectControl.FILL),
                Fact.unknown(),
                Fact.unknown(),
                List.of(),
                null);
    }

    private static LocalDate march(int day) {
        return LocalDate.of(2026, 3, day);
    }

    private static InputReading reading(String input, @Nullable String state, int day, Integer... counts) {
        return new InputReading(
                input,
                state,
                march(day),
                new LagMeasurement(null, Method.SPLIT_SIGNAL, null, Rational.of(1000), List.of(counts)));
    }

    private static InputTest test(
            String input, @Nullable String state, Outcome outcome, @Nullable String firmware, int day) {
        return new InputTest(input, state, new DisplayTest(FULL_HD.raster(), outcome, firmware, march(day)));
    }

    private static List<OwnEvidence> own(
            @Nullable String firmware, List<InputReading> readings, List<InputTest> tests) {
        return DisplayEvidence.apply(DISPLAY, firmware, readings, tests).display().inputs().stream()
                .map(DisplayInput::own)
                .toList();
    }

    @Test
    void nothingButTheEvidenceChanges() {
        Display same = DisplayEvidence.apply(DISPLAY, "1", List.of(), List.of()).display();
        assertThat(same).isEqualTo(DISPLAY);
        assertThat(own(null, List.of(reading("digital-2", null, 1, 20)), List.of()))
                .extracting(evidence -> evidence.readings().size())
                .containsExactly(0, 0, 1);
    }

    @Test
    void whatNamesNoMenuStateHoldsInAllOfThem() {
        assertThat(own(null, List.of(reading("digital-1", null, 1, 20)), List.of()))
                .extracting(evidence -> evidence.readings().size())
                .containsExactly(1, 1, 0);
        assertThat(own(null, List.of(), List.of(test("digital-1", "low-delay", Outcome.SHOWN, null, 1))))
                .extracting(evidence -> evidence.tests().size())
                .containsExactly(0, 1, 0);
    }

    @Test
    void theNewestComesFirstAndOfOneDayTheLater() {
        List<OwnReading> readings = own(
                        null,
                        List.of(
                                reading("digital-2", null, 2, 10),
                                reading("digital-2", null, 5, 20, 20),
                                reading("digital-2", null, 5, 30, 30, 30),
                                reading("digital-2", null, 3, 40)),
                        List.of())
                .get(2)
                .readings();

        assertThat(readings)
                .extracting(own -> own.reading().ms().typical())
                .containsExactly(Rational.of(30), Rational.of(20), Rational.of(40), Rational.of(10));
        assertThat(readings).extracting(OwnReading::repetitions).containsExactly(3, 2, 1, 1);
        assertThat(readings).extracting(OwnReading::on).startsWith(march(5), march(5), march(3));
    }

    @Test
    void aTestWithAnotherFirmwareIsOutdatedAndOneWithoutOrWithTheSameHolds() {
        List<InputTest> tests = List.of(
                test("digital-2", null, Outcome.SHOWN, "1.0", 1),
                test("digital-2", null, Outcome.BLANK, "2.0", 2),
                test("digital-2", null, Outcome.DROPS_OUT, null, 3));

        OwnEvidence now = own("2.0", List.of(), tests).get(2);
        assertThat(now.tests()).extracting(DisplayTest::outcome).containsExactly(Outcome.DROPS_OUT, Outcome.BLANK);
        assertThat(now.outdated()).extracting(DisplayTest::outcome).containsExactly(Outcome.SHOWN);

        OwnEvidence unknown = own(null, List.of(), tests).get(2);
        assertThat(unknown.tests()).hasSize(3);
        assertThat(unknown.outdated()).isEmpty();
    }

    @Test
    void whatNamesAnInputThatIsNotThereIsToldAndNotUsed() {
        DisplayEvidence evidence = DisplayEvidence.apply(
                DISPLAY,
                null,
                List.of(reading("analog-1", null, 1, 20)),
                List.of(test("digital-2", "low-delay", Outcome.SHOWN, null, 2)));

        assertThat(evidence.display()).isEqualTo(DISPLAY);
        assertThat(evidence.unplaced())
                .containsExactly(
                        "A lag reading of 2026-03-01 names input analog-1",
                        "A test of 2026-03-02 names input digital-2/low-delay");
    }
}
