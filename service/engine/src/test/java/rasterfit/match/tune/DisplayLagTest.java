package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.printed;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Basis;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.LagReading.Method;
import rasterfit.match.Latency;
import rasterfit.match.Workbench;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Raster;

/** Which reading of a display's delay counts, and at which row. */
class DisplayLagTest {
    private static final Raster VIC_16 = Cta861.find(16).orElseThrow().timing().raster();
    private static final Raster VIC_2 = Cta861.find(2).orElseThrow().timing().raster();

    private static LagReading reading(
            long least,
            long typical,
            long greatest,
            @Nullable String timing,
            Method method,
            @Nullable Integer row,
            Basis basis) {
        Fact.Within ms = new Fact.Within(Rational.of(least), Rational.of(typical), Rational.of(greatest));
        return new LagReading(timing, ms, method, row, basis);
    }

    private static Display display(
            DisplayClass displayClass, HalfHeight halfHeight, @Nullable Boolean lowDelay, LagReading... readings) {
        Display base = Workbench.television(0, 16);
        DisplayInput input = base.inputs().get(0);
        DisplayInput changed = new DisplayInput(
                input.id(),
                null,
                input.plug(),
                input.level(),
                input.accepts(),
                null,
                null,
                input.scans(),
                halfHeight,
                input.lineRateResolutionPpm(),
                input.sink(),
                input.aspectControls(),
                input.overscanPercent(),
                input.resyncMs(),
                List.of(readings),
                lowDelay);
        return new Display("d", "D", displayClass, base.panel(), List.of(changed), new ArrayList<>());
    }

    private static Latency lag(Display display, Raster raster, String label) {
        return DisplayLag.of(display, display.inputs().get(0), raster, label, Steps.SILENT);
    }

    /** Arithmetic: half of 1080 active of 1125 lines at 60 Hz take 1000/60 · 1080/1125 / 2 = 8.0 ms. */
    @Test
    void aReadingInTheMiddleIsConvertedToTheTopRow() {
        Display display = display(
                DisplayClass.TELEVISION,
                HalfHeight.SHOWN,
                null,
                reading(17, 18, 19, "vic:16", Method.SPLIT_SIGNAL, 540, Basis.MEASURED));
        Latency lag = lag(display, VIC_16, "vic:16");
        assertThat(lag.typical()).isEqualTo(Rational.of(10));
        assertThat(lag.least()).isEqualTo(Rational.of(9));
        assertThat(lag.greatest()).isEqualTo(Rational.of(11));
        assertThat(lag.top()).isEqualTo(lag.bottom());
        assertThat(lag.basis()).isEqualTo(Basis.MEASURED);
    }

    @Test
    void measuredGoesBeforeDeclaredAndTheSameTimingBeforeAny() {
        Display display = display(
                DisplayClass.TELEVISION,
                HalfHeight.SHOWN,
                null,
                reading(1, 1, 1, "vic:16", Method.NOT_STATED, null, Basis.DECLARED),
                reading(30, 30, 30, null, Method.SPLIT_SIGNAL, null, Basis.MEASURED),
                reading(20, 20, 20, "vic:16", Method.SPLIT_SIGNAL, null, Basis.MEASURED));
        assertThat(lag(display, VIC_16, "vic:16").typical()).isEqualTo(Rational.of(20));
        assertThat(lag(display, VIC_2, "vic:2").typical()).isEqualTo(Rational.of(30));
    }

    @Test
    void pressToLightIsOnlyAnUpperBound() {
        Display display = display(
                DisplayClass.TELEVISION,
                HalfHeight.SHOWN,
                true,
                reading(50, 55, 60, null, Method.PRESS_TO_LIGHT, null, Basis.MEASURED));
        Latency lag = lag(display, VIC_16, "");
        // The class with a low-delay preset: 8 [3–25] ms (assumption); the reading bounds it by 60.
        assertThat(lag.least()).isEqualTo(Rational.of(3));
        assertThat(lag.typical()).isEqualTo(Rational.of(8));
        assertThat(lag.greatest()).isEqualTo(Rational.of(60));
        assertThat(lag.basis()).isEqualTo(Basis.ASSUMED);
    }

    /** Our own defaults (assumption): tube 0, monitor 3, television 8 or 60, projector 30, SD or interlaced +25 ms. */
    @Test
    void withoutAReadingTheClassDecides() {
        assertThat(typical(DisplayClass.TUBE, null, VIC_2)).isEqualTo(Rational.ZERO);
        assertThat(typical(DisplayClass.MONITOR, null, VIC_16)).isEqualTo(Rational.of(3));
        assertThat(typical(DisplayClass.TELEVISION, true, VIC_16)).isEqualTo(Rational.of(8));
        assertThat(typical(DisplayClass.TELEVISION, null, VIC_16)).isEqualTo(Rational.of(60));
        assertThat(typical(DisplayClass.TELEVISION, null, VIC_2)).isEqualTo(Rational.of(85));
        assertThat(typical(DisplayClass.PROJECTOR, null, VIC_16)).isEqualTo(Rational.of(30));
    }

    @Test
    void aHalfHeightRasterTakenAsInterlacedWaitsOneFieldMore() {
        Raster half = Cta861.find(8).orElseThrow().timing().raster();
        Display display = display(
                DisplayClass.MONITOR,
                HalfHeight.AS_INTERLACED,
                null,
                reading(5, 5, 5, null, Method.SPLIT_SIGNAL, null, Basis.MEASURED));
        // 262 lines of 1716 samples at 27 MHz: 16.651556 ms.
        assertThat(printed(lag(display, half, "").typical(), 6)).isEqualTo("21.651556");
        assertThat(lag(display, VIC_2, "").typical()).isEqualTo(Rational.of(5));
    }

    private static Rational typical(DisplayClass displayClass, @Nullable Boolean lowDelay, Raster raster) {
        return lag(display(displayClass, HalfHeight.SHOWN, lowDelay), raster, "")
                .typical();
    }
}
