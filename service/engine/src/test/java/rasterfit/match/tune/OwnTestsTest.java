package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.DisplayTest.Outcome;
import rasterfit.gear.OwnEvidence;
import rasterfit.match.Workbench;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Raster;
import rasterfit.timing.RasterTiming;

/** Which rasters are the same, at the edges of the tolerance that we took over from VESA DMT. */
class OwnTestsTest {
    /** 148.5 MHz, 2200 × 1125. */
    private static final RasterTiming FULL_HD = Cta861.find(16).orElseThrow().timing();

    private static DisplayTest test(RasterTiming timing, Outcome outcome, int day) {
        return new DisplayTest(timing.raster(), outcome, null, LocalDate.of(2026, 3, day));
    }

    /** @param tests newest first, as evidence holds them */
    private static @Nullable DisplayTest deciding(Raster raster, boolean digital, DisplayTest... tests) {
        DisplayInput input = Workbench.television(0, 16).inputs().get(0);
        return OwnTests.deciding(input.with(new OwnEvidence(List.of(), List.of(tests), List.of())), raster, digital);
    }

    @ParameterizedTest
    @CsvSource({
        // ±0.5 % of 148.5 MHz are 742.5 kHz.
        "149242500, true",
        "149242501, false",
        "147757500, true",
        "147757499, false"
    })
    void theClockMayBeHalfAPercentOff(long clock, boolean same) {
        Raster raster = FULL_HD.atPixelClock(Frequency.ofHz(clock)).raster();
        DisplayTest test = test(FULL_HD, Outcome.SHOWN, 1);
        assertThat(deciding(raster, true, test)).isEqualTo(same ? test : null);
        assertThat(deciding(raster, false, test)).isEqualTo(same ? test : null);
    }

    @Test
    void onADigitalLinkEveryCountMatters() {
        DisplayTest test = test(FULL_HD, Outcome.SHOWN, 1);
        Raster raster = FULL_HD.raster();
        assertThat(deciding(raster, true, test)).isEqualTo(test);
        assertThat(deciding(changed(raster, 1918, "2200", "1125"), true, test)).isNull();
        assertThat(deciding(changed(raster, 1920, "2201", "1125"), true, test)).isNull();
        assertThat(deciding(changed(raster, 1920, "2200", "1126"), true, test)).isNull();
    }

    @Test
    void anAnalogInputSeesLinesAndNoDots() {
        DisplayTest test = test(FULL_HD, Outcome.SHOWN, 1);
        // Half of the dots at half of the clock: the same lines.
        Raster coarse =
                new Raster(Frequency.ofHz(74_250_000), 960, Rational.of(1100), 1080, Rational.of(1125), FULL_HD.scan());
        assertThat(deciding(coarse, false, test)).isEqualTo(test);
        assertThat(deciding(coarse, true, test)).isNull();
        assertThat(deciding(changed(FULL_HD.raster(), 1920, "2200", "1126"), false, test))
                .isNull();
    }

    @Test
    void ofSeveralTheNearestInRateDecidesAndOfTheseTheNewest() {
        // 60/1.001 Hz is 0.0999 % below 60 Hz.
        RasterTiming slower = FULL_HD.atPixelClock(Frequency.ofHz(148_500_000).dividedBy(Rational.parse("1.001")));
        DisplayTest newerSlower = test(slower, Outcome.BLANK, 9);
        DisplayTest newer = test(FULL_HD, Outcome.SHOWN, 5);
        DisplayTest older = test(FULL_HD, Outcome.DROPS_OUT, 2);

        assertThat(deciding(FULL_HD.raster(), true, newerSlower, newer, older)).isEqualTo(newer);
        assertThat(deciding(slower.raster(), true, newerSlower, newer, older)).isEqualTo(newerSlower);
    }

    private static Raster changed(Raster raster, int active, String total, String lines) {
        return new Raster(
                raster.pixelClock(),
                active,
                Rational.parse(total),
                raster.verticalActive(),
                Rational.parse(lines),
                raster.scan());
    }
}
