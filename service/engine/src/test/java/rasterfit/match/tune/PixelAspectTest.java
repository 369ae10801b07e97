package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.Tables;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Window;
import rasterfit.match.Modes;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/**
 * Pixel aspects against exact arithmetic from broadcast clocks (a table carried over) and CTA-861-I table 2.
 */
class PixelAspectTest {
    private static final Window SMALL = new Window(10, 10, 1, 1);

    private static Mode mode(String system, String hz, Scan scan, PictureShape shape) {
        boolean is525 = system.equals("NTSC 525");
        String lines = scan == Scan.INTERLACED ? (is525 ? "525/2" : "625/2") : is525 ? "262" : "312";
        return Modes.of(
                is525 ? LineStandard.L525_60 : LineStandard.L625_50, hz, "400", lines, scan, SMALL, SMALL, shape);
    }

    private static Rational aspect(Mode mode, PixelAspectConvention convention) {
        return PixelAspect.intended(mode, convention, Steps.SILENT);
    }

    private static void check(List<Map<String, String>> rows, String interlaced, String progressive, String cta) {
        assertThat(rows).hasSize(29);
        for (Map<String, String> row : rows) {
            String system = row.get("system");
            String hz = row.get("hz_exact");
            Mode half = mode(system, hz, Scan.PROGRESSIVE, PictureShape.TUBE_4_3);
            Mode full = mode(system, hz, Scan.INTERLACED, PictureShape.TUBE_4_3);
            assertThat(aspect(full, PixelAspectConvention.BROADCAST))
                    .as("interlaced %s", row)
                    .isEqualTo(Rational.parse(row.get(interlaced)));
            assertThat(aspect(half, PixelAspectConvention.BROADCAST))
                    .as("progressive %s", row)
                    .isEqualTo(Rational.parse(row.get(progressive)));
            assertThat(aspect(half, PixelAspectConvention.CTA_861))
                    .as("CTA %s", row)
                    .isEqualTo(Rational.parse(row.get(cta)));
        }
    }

    @Test
    void everyBroadcastClockHasTheAspectOfTheTable() {
        check(Tables.carriedOver("/rasterfit/match/pixel_aspect.tsv"), "interlaced", "progressive", "progressive_cta");
    }

    @Test
    void everyBroadcastClockHasTheAspectOfTheSharedTable() {
        check(
                Tables.shared("reference/arith_par.tsv"),
                "par_vs_interlaced_frame(square/dot)",
                "par_progressive_field_lines(square/2/dot)",
                "par_prog_CTA_720=4:3");
    }

    /** Arithmetic: 15/8 of the subcarrier 855/2 × 262 gives 32/35, twice the subcarrier 6/7, 6/5 in 625 lines 1.386189. */
    @Test
    void theWorkedClocksHaveTheirRatesAndAspects() {
        Mode wide = Modes.of("73828125/11", "855/2", "262", Scan.PROGRESSIVE, SMALL);
        assertThat(rasterfit.Fractions.printed(wide.fieldRate().hz(), 6)).isEqualTo("59.922751");
        assertThat(aspect(wide, PixelAspectConvention.BROADCAST)).isEqualTo(Rational.of(32, 35));
        Mode half = Modes.half525();
        assertThat(rasterfit.Fractions.printed(half.fieldRate().hz(), 6)).isEqualTo("60.098478");
        assertThat(aspect(half, PixelAspectConvention.BROADCAST)).isEqualTo(Rational.of(8, 7));
        Mode at50 = Modes.of("5320342.5", "341", "312", Scan.PROGRESSIVE, SMALL);
        assertThat(rasterfit.Fractions.printed(at50.fieldRate().hz(), 6)).isEqualTo("50.006979");
        assertThat(aspect(at50, PixelAspectConvention.BROADCAST)).isEqualTo(Rational.of(2950000, 2128137));
    }

    /** CTA-861-I table 2: VIC 2 8:9, VIC 3 32:27, VIC 17 16:15, VIC 18 64:45, VIC 1 1:1. */
    @Test
    void fullHeightRastersHaveTheAspectsOfTable2() {
        Window active480 = new Window(720, 480, 122, 36);
        Window active576 = new Window(720, 576, 132, 44);
        Mode vic2 = full(LineStandard.L525_60, "27000000", "858", "525", active480, PictureShape.TUBE_4_3);
        Mode vic3 = full(LineStandard.L525_60, "27000000", "858", "525", active480, PictureShape.TUBE_16_9);
        Mode vic17 = full(LineStandard.L625_50, "27000000", "864", "625", active576, PictureShape.TUBE_4_3);
        Mode vic18 = full(LineStandard.L625_50, "27000000", "864", "625", active576, PictureShape.TUBE_16_9);
        Mode vic1 = full(
                LineStandard.L525_60, "25175000", "800", "525", new Window(640, 480, 144, 35), PictureShape.TUBE_4_3);
        assertThat(aspect(vic2, PixelAspectConvention.CTA_861)).isEqualTo(Rational.of(8, 9));
        assertThat(aspect(vic3, PixelAspectConvention.CTA_861)).isEqualTo(Rational.of(32, 27));
        assertThat(aspect(vic17, PixelAspectConvention.CTA_861)).isEqualTo(Rational.of(16, 15));
        assertThat(aspect(vic18, PixelAspectConvention.CTA_861)).isEqualTo(Rational.of(64, 45));
        assertThat(aspect(vic1, PixelAspectConvention.CTA_861)).isEqualTo(Rational.ONE);
        // Square-pixel rate against the same raster: 10/11 and 59/54.
        assertThat(aspect(vic2, PixelAspectConvention.BROADCAST)).isEqualTo(Rational.of(10, 11));
        assertThat(aspect(vic17, PixelAspectConvention.BROADCAST)).isEqualTo(Rational.of(59, 54));
    }

    @Test
    void squareDotsAreSquareAndOtherRastersToo() {
        assertThat(aspect(
                        mode("NTSC 525", "7000000", Scan.PROGRESSIVE, PictureShape.SQUARE_DOTS),
                        PixelAspectConvention.BROADCAST))
                .isEqualTo(Rational.ONE);
        Mode other = full(
                LineStandard.OTHER, "74250000", "1650", "750", new Window(1280, 720, 260, 25), PictureShape.TUBE_4_3);
        assertThat(aspect(other, PixelAspectConvention.BROADCAST)).isEqualTo(Rational.ONE);
    }

    private static Mode full(
            LineStandard standard, String clock, String total, String lines, Window active, PictureShape shape) {
        return Modes.of(standard, clock, total, lines, Scan.PROGRESSIVE, active, active, shape);
    }
}
