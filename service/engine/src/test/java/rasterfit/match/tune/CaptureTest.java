package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Mode;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.Window;
import rasterfit.match.Modes;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Which modes share a setting, which lines are kept, and which sample counts are tried; each worked by hand. */
class CaptureTest {
    private static final Rational RESOLUTION = Rational.of(2000);
    private static final Window WINDOW = new Window(100, 200, 10, 20);

    private static Mode at(long lineRateHz, String lines) {
        return Modes.of(String.valueOf(lineRateHz * 1000), "1000", lines, Scan.PROGRESSIVE, WINDOW);
    }

    @Test
    void modesWithinTheResolutionLookAlikeAndTransitivelySo() {
        Mode slow = at(15_700, "262");
        Mode middle = at(15_730, "262");
        Mode fast = at(15_760, "262");
        // 15730/15700 = +1911 ppm, 15760/15730 = +1907 ppm, 15760/15700 = +3822 ppm.
        assertThat(ModeGroups.of(List.of(slow, fast), false, RESOLUTION)).hasSize(2);
        assertThat(ModeGroups.of(List.of(slow, fast, middle), false, RESOLUTION))
                .hasSize(1);
        assertThat(ModeGroups.of(List.of(slow, middle), false, Rational.of(1900)))
                .hasSize(2);
    }

    @Test
    void otherLineCountsAndScansAreToldApart() {
        assertThat(ModeGroups.of(List.of(at(15_700, "262"), at(15_700, "263")), false, RESOLUTION))
                .hasSize(2);
        Mode interlaced = Modes.of("15700000", "1000", "525/2", Scan.INTERLACED, WINDOW);
        Mode progressive = Modes.of("15700000", "1000", "525/2", Scan.PROGRESSIVE, WINDOW);
        assertThat(ModeGroups.of(List.of(interlaced, progressive), false, RESOLUTION))
                .hasSize(2);
    }

    @Test
    void digitalInputsSeeTheWholeRaster() {
        Mode one = at(15_700, "262");
        Mode other = Modes.of("15700000", "1000", "262", Scan.PROGRESSIVE, new Window(101, 200, 10, 20));
        assertThat(ModeGroups.of(List.of(one, other), true, RESOLUTION)).hasSize(2);
        assertThat(ModeGroups.of(List.of(one, Modes.as(one, "again", 2, false)), true, RESOLUTION))
                .hasSize(1);
    }

    /** A worked example: 216 of the drawn lines 12–235 loses 4 + 4. */
    @Test
    void aCropLosesTheFewestDrawnLinesThenBalances() {
        assertThat(CropWindow.first(240, 216, 12, 224)).isEqualTo(16);
        // 230 hold all 224 drawn lines: 3 to spare on either side.
        assertThat(CropWindow.first(240, 230, 12, 224)).isEqualTo(9);
        // Off-centre drawing: lines 0–199 of 240, 200 kept.
        assertThat(CropWindow.first(240, 200, 0, 200)).isEqualTo(0);
        // Two placements tilt by one line: the earlier wins.
        assertThat(CropWindow.first(5, 2, 0, 5)).isEqualTo(1);
        assertThat(CropWindow.first(240, 240, 0, 240)).isEqualTo(0);
    }

    @Test
    void aFreeRangeTriesWholeMultiplesStandardLinesAndSquareSamples() {
        Mode mode = Modes.of("73828125/11", "855/2", "262", Scan.PROGRESSIVE, new Window(320, 240, 80, 18));
        Captured captured = Captured.of(List.of(mode), PixelAspectConvention.BROADCAST);
        // Multiples of 855/2 that are whole: 855, 1710. Square at 4 rows per line: 427.5 · 32/35 · 4 = 1563.43.
        assertThat(SampleCounts.worthTrying(captured, new SamplesPerLine.FreeRange(800, 2000), List.of(Rational.of(4))))
                .containsExactly(855, 858, 864, 944, 1560, 1563, 1710, 1716, 1728, 1888);
        assertThat(SampleCounts.worthTrying(captured, new SamplesPerLine.FixedList(List.of(900, 700)), List.of()))
                .containsExactly(700, 900);
        assertThat(SampleCounts.worthTrying(captured, new SamplesPerLine.FreeRange(900, 910), List.of()))
                .as("never nothing")
                .containsExactly(910);
    }
}
