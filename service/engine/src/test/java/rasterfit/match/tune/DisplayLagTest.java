package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Basis;
import rasterfit.gear.Carried;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.LagReading.Method;
import rasterfit.gear.Level;
import rasterfit.gear.OwnEvidence;
import rasterfit.gear.OwnEvidence.OwnReading;
import rasterfit.gear.Panel;
import rasterfit.match.Latency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/** Delay of displays at the top row: readings by hand calculation, classes by their documented defaults (assumption). */
class DisplayLagTest {
    /** 1080p at 60 Hz exactly: 1125 lines in 16 2/3 ms. */
    private static final Raster FULL_HD = vic(16);

    private static final Panel GRID = new Panel.Grid(1920, 1080, null, Panel.Filter.NEAREST);

    private static Raster vic(int vic) {
        return Cta861.find(vic).orElseThrow().timing().raster();
    }

    private static LagReading reading(@Nullable String timing, String ms, @Nullable Integer row, Basis basis) {
        return new LagReading(timing, exactly(ms), Method.SPLIT_SIGNAL, row, basis);
    }

    private static Fact.Within exactly(String ms) {
        return new Fact.Within(Rational.parse(ms), null, Rational.parse(ms));
    }

    private static Latency lag(DisplayClass of, @Nullable Boolean lowDelay, Raster raster, LagReading... readings) {
        return lag(of, lowDelay, HalfHeight.SHOWN, raster, readings);
    }

    private static Latency lag(
            DisplayClass of, @Nullable Boolean lowDelay, HalfHeight halfHeight, Raster raster, LagReading... readings) {
        DisplayInput input = input(halfHeight, lowDelay, readings);
        Panel panel = of == DisplayClass.TUBE ? new Panel.Tube(Rational.of(4, 3)) : GRID;
        Display display = new Display("screen", "Screen", of, panel, List.of(input), List.of());
        return DisplayLag.of(display, input, raster, "vic:16", Steps.SILENT);
    }

    private static DisplayInput input(HalfHeight halfHeight, @Nullable Boolean lowDelay, LagReading... readings) {
        return new DisplayInput(
                "in",
                null,
                null,
                Level.VIDEO_75_OHM,
                List.of(new Carried(Format.TMDS, Set.of())),
                null,
                null,
                EnumSet.allOf(Scan.class),
                halfHeight,
                Rational.of(2000),
                null,
                List.of(AspectControl.FILL),
                Fact.unknown(),
                Fact.unknown(),
                List.of(readings),
                lowDelay);
    }

    @Test
    void theMiddleOfAFullHdRasterIsScannedOutEightMillisecondsAfterItsTop() {
        // 1/2 · 1080/1125 · 16 2/3 ms = 8 ms exactly.
        Latency lag = lag(DisplayClass.TELEVISION, null, FULL_HD, reading(null, "18.5", 540, Basis.MEASURED));

        assertThat(lag.typical()).isEqualTo(Rational.parse("10.5"));
        assertThat(lag.basis()).isEqualTo(Basis.MEASURED);
    }

    @Test
    void theScanOutFollowsTheRasterThatIsShown() {
        // The same row at 720p, 750 lines, 60 Hz: 1/2 · 720/750 · 16 2/3 ms = 8 ms; at 480p, 525 lines, 60/1.001 Hz:
        // 1/2 · 480/525 · 16.6833 ms = 7.6267 ms.
        LagReading middle = reading(null, "18.5", 540, Basis.MEASURED);

        assertThat(lag(DisplayClass.TELEVISION, null, vic(4), middle).typical()).isEqualTo(Rational.parse("10.5"));
        assertThat(rasterfit.Fractions.printed(
                        lag(DisplayClass.TELEVISION, null, vic(2), middle).typical(), 4))
                .isEqualTo("10.8733");
    }

    @Test
    void aReadingAtTheTopIsTakenAsItStands() {
        assertThat(lag(DisplayClass.MONITOR, null, FULL_HD, reading(null, "4", null, Basis.DECLARED))
                        .typical())
                .isEqualTo(Rational.of(4));
    }

    @Test
    void theStrongestBasisCounts() {
        LagReading assumed = reading(null, "1", null, Basis.ASSUMED);
        LagReading declared = reading("vic:16", "2", null, Basis.DECLARED);
        LagReading published = reading("vic:16", "3", null, Basis.PUBLISHED);
        LagReading measured = reading(null, "4", null, Basis.MEASURED);

        assertThat(lag(DisplayClass.MONITOR, null, FULL_HD, assumed, declared, published, measured)
                        .typical())
                .isEqualTo(Rational.of(4));
        assertThat(lag(DisplayClass.MONITOR, null, FULL_HD, published, assumed, declared)
                        .typical())
                .isEqualTo(Rational.of(3));
        assertThat(lag(DisplayClass.MONITOR, null, FULL_HD, assumed, declared).typical())
                .isEqualTo(Rational.of(2));
    }

    @Test
    void ofOneBasisAReadingAtThisTimingCountsAndOneAtAnotherNever() {
        LagReading any = reading(null, "1", null, Basis.MEASURED);
        LagReading own = reading("vic:16", "2", null, Basis.MEASURED);
        LagReading other = reading("vic:4", "3", null, Basis.MEASURED);

        assertThat(lag(DisplayClass.MONITOR, null, FULL_HD, any, own, other).typical())
                .isEqualTo(Rational.of(2));
        assertThat(lag(DisplayClass.MONITOR, null, FULL_HD, other).basis()).isEqualTo(Basis.ASSUMED);
    }

    @Test
    void aReadingFromPressToLightIsAnUpperBoundOnly() {
        // 50 ms contain the console; a low-delay television alone is taken as 8 [3–25] ms.
        LagReading reading = new LagReading(null, exactly("50"), Method.PRESS_TO_LIGHT, null, Basis.MEASURED);
        Latency lag = lag(DisplayClass.TELEVISION, true, FULL_HD, reading);

        assertThat(lag.least()).isEqualTo(Rational.of(3));
        assertThat(lag.typical()).isEqualTo(Rational.of(8));
        assertThat(lag.greatest()).isEqualTo(Rational.of(50));
        assertThat(lag.basis()).isEqualTo(Basis.ASSUMED);
    }

    @Test
    void aShortReadingFromPressToLightBoundsTheDefaultsToo() {
        LagReading reading = new LagReading(null, exactly("5"), Method.PRESS_TO_LIGHT, null, Basis.MEASURED);
        Latency lag = lag(DisplayClass.TELEVISION, true, FULL_HD, reading);

        assertThat(lag.least()).isEqualTo(Rational.of(3));
        assertThat(lag.typical()).isEqualTo(Rational.of(5));
        assertThat(lag.greatest()).isEqualTo(Rational.of(5));
    }

    @ParameterizedTest
    @CsvSource({
        // class, low delay, HD: least, typical, greatest; SD: 16, 25, 60 more, but for tubes
        "TUBE,,       0,  0,   0,  0,  0,   0",
        "MONITOR,,    1,  3,  10, 17, 28,  70",
        "TELEVISION,true, 3, 8, 25, 19, 33, 85",
        "TELEVISION,false, 30, 60, 120, 46, 85, 180",
        "TELEVISION,, 30, 60, 120, 46, 85, 180",
        "PROJECTOR,, 16, 30,  60, 32, 55, 120"
    })
    void unknownDelayIsThatOfTheClass(
            DisplayClass of,
            @Nullable Boolean lowDelay,
            long least,
            long typical,
            long greatest,
            long leastSd,
            long typicalSd,
            long greatestSd) {
        assertInterval(lag(of, lowDelay, FULL_HD), least, typical, greatest);
        assertInterval(lag(of, lowDelay, vic(2)), leastSd, typicalSd, greatestSd);
        assertInterval(lag(of, lowDelay, vic(17)), leastSd, typicalSd, greatestSd);
        // 1080i is interlaced.
        assertInterval(lag(of, lowDelay, vic(5)), leastSd, typicalSd, greatestSd);
    }

    private static void assertInterval(Latency lag, long least, long typical, long greatest) {
        assertThat(lag.least()).isEqualTo(Rational.of(least));
        assertThat(lag.typical()).isEqualTo(Rational.of(typical));
        assertThat(lag.greatest()).isEqualTo(Rational.of(greatest));
        assertThat(lag.top()).isEqualTo(lag.bottom()).isEqualTo(lag.middle());
        assertThat(lag.basis()).isEqualTo(Basis.ASSUMED);
    }

    @Test
    void aHalfHeightRasterTakenAsInterlacedWaitsForOneField() {
        // VIC 8 with 262 lines: 27 MHz / (1716 · 262) = 60.054 Hz, so 16.6516 ms more (assumption).
        Raster halfHeight = vic(8);
        LagReading measured = reading(null, "10", null, Basis.MEASURED);
        Latency shown = lag(DisplayClass.TELEVISION, null, HalfHeight.SHOWN, halfHeight, measured);
        Latency taken = lag(DisplayClass.TELEVISION, null, HalfHeight.AS_INTERLACED, halfHeight, measured);

        assertThat(shown.typical()).isEqualTo(Rational.of(10));
        assertThat(taken.typical().minus(shown.typical())).isEqualTo(Rational.of(1716 * 262, 27_000));
        assertThat(taken.basis()).isEqualTo(Basis.ASSUMED);
        assertThat(lag(DisplayClass.TELEVISION, null, HalfHeight.AS_INTERLACED, FULL_HD, measured)
                        .typical())
                .isEqualTo(Rational.of(10));
    }

    @Test
    void ofReadingsThatAreAsGoodTheFirstCounts() {
        Latency lag = lag(
                DisplayClass.MONITOR,
                null,
                FULL_HD,
                reading(null, "7", null, Basis.DECLARED),
                reading(null, "9", null, Basis.DECLARED));
        assertThat(lag.typical()).isEqualTo(Rational.of(7));
    }

    private static OwnReading own(
            @Nullable String timing, String least, String typical, String greatest, Method method, int day) {
        Fact.Within ms = new Fact.Within(Rational.parse(least), Rational.parse(typical), Rational.parse(greatest));
        return new OwnReading(new LagReading(timing, ms, method, null, Basis.MEASURED), LocalDate.of(2026, 3, day), 10);
    }

    private static Latency owned(HalfHeight halfHeight, Raster raster, List<LagReading> stated, OwnReading... own) {
        DisplayInput input = input(halfHeight, true, stated.toArray(LagReading[]::new))
                .with(new OwnEvidence(List.of(own), List.of(), List.of()));
        Display display = new Display("screen", "Screen", DisplayClass.TELEVISION, GRID, List.of(input), List.of());
        return DisplayLag.of(display, input, raster, "vic:16", Steps.SILENT);
    }

    @Test
    void theOwnersReadingGoesBeforeWhatOthersMeasuredOrDeclaredAtThisVeryTiming() {
        List<LagReading> stated =
                List.of(reading("vic:16", "40", null, Basis.MEASURED), reading("vic:16", "20", null, Basis.DECLARED));
        Latency lag = owned(HalfHeight.SHOWN, FULL_HD, stated, own(null, "11", "12", "13", Method.SPLIT_SIGNAL, 1));

        assertThat(lag.least()).isEqualTo(Rational.of(11));
        assertThat(lag.typical()).isEqualTo(Rational.of(12));
        assertThat(lag.greatest()).isEqualTo(Rational.of(13));
        assertThat(lag.basis()).isEqualTo(Basis.MEASURED);
    }

    @Test
    void ofTheOwnersReadingsOneAtThisTimingCountsAndOneAtAnotherNever() {
        OwnReading any = own(null, "1", "1", "1", Method.SPLIT_SIGNAL, 3);
        OwnReading here = own("vic:16", "2", "2", "2", Method.NOT_STATED, 2);
        OwnReading there = own("vic:4", "3", "3", "3", Method.SPLIT_SIGNAL, 4);

        assertThat(owned(HalfHeight.SHOWN, FULL_HD, List.of(), there, any, here).typical())
                .isEqualTo(Rational.of(2));
        assertThat(owned(HalfHeight.SHOWN, FULL_HD, List.of(), there, any).typical())
                .isEqualTo(Rational.ONE);
        assertThat(owned(HalfHeight.SHOWN, FULL_HD, List.of(), there).basis()).isEqualTo(Basis.ASSUMED);
    }

    @Test
    void theOwnersReadingFromPressToLightOnlyCutsWhatIsDeclared() {
        List<LagReading> declared = List.of(new LagReading(
                null,
                new Fact.Within(Rational.of(5), Rational.of(30), Rational.of(60)),
                Method.SPLIT_SIGNAL,
                null,
                Basis.DECLARED));
        Latency cut = owned(HalfHeight.SHOWN, FULL_HD, declared, own(null, "18", "20", "22", Method.PRESS_TO_LIGHT, 1));
        assertThat(cut.least()).isEqualTo(Rational.of(5));
        assertThat(cut.typical()).isEqualTo(Rational.of(22));
        assertThat(cut.greatest()).isEqualTo(Rational.of(22));
        assertThat(cut.basis()).isEqualTo(Basis.DECLARED);

        Latency loose =
                owned(HalfHeight.SHOWN, FULL_HD, declared, own(null, "70", "80", "90", Method.PRESS_TO_LIGHT, 1));
        assertThat(loose.typical()).isEqualTo(Rational.of(30));
        assertThat(loose.greatest()).isEqualTo(Rational.of(60));
    }

    @Test
    void theOwnersReadingFromPressToLightLeavesTheDefaultsOfTheClassBelowIt() {
        // A low-delay television is taken as 8 [3–25] ms.
        Latency lag =
                owned(HalfHeight.SHOWN, FULL_HD, List.of(), own(null, "48", "50", "52", Method.PRESS_TO_LIGHT, 1));

        assertThat(lag.least()).isEqualTo(Rational.of(3));
        assertThat(lag.typical()).isEqualTo(Rational.of(8));
        assertThat(lag.greatest()).isEqualTo(Rational.of(52));
        assertThat(lag.basis()).isEqualTo(Basis.ASSUMED);
    }

    @Test
    void theOwnersReadingOfTheLagItselfCountsMoreThanANewerBound() {
        OwnReading bound = own("vic:16", "5", "6", "7", Method.PRESS_TO_LIGHT, 9);
        OwnReading lag = own(null, "11", "12", "13", Method.SPLIT_SIGNAL, 1);

        assertThat(owned(HalfHeight.SHOWN, FULL_HD, List.of(), bound, lag).typical())
                .isEqualTo(Rational.of(12));
    }

    @Test
    void aReadingAtAHalfHeightRasterHoldsTheFieldThatItWaitsFor() {
        OwnReading here = own("vic:16", "30", "30", "30", Method.SPLIT_SIGNAL, 1);
        OwnReading any = own(null, "30", "30", "30", Method.SPLIT_SIGNAL, 1);

        Latency read = owned(HalfHeight.AS_INTERLACED, vic(8), List.of(), here);
        assertThat(read.typical()).isEqualTo(Rational.of(30));
        assertThat(read.basis()).isEqualTo(Basis.MEASURED);
        // 1716 · 262 pixels at 27 MHz more, as above.
        assertThat(owned(HalfHeight.AS_INTERLACED, vic(8), List.of(), any).typical())
                .isEqualTo(Rational.of(30).plus(Rational.of(1716 * 262, 27_000)));
    }
}
