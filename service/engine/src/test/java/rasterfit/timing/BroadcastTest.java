package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.Tables;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** The broadcast clocks against the standards that define them, and rasters made from them against exact arithmetic. */
class BroadcastTest {
    private static final Rational PPM = Rational.of(1_000_000);

    @Test
    void the525LineRateIsTheSoundCarrierOver286() {
        // SMPTE 170M: 4.5 MHz / 286 = 15 734.265734 Hz.
        assertThat(Broadcast.LINE_RATE_525).isEqualTo(Frequency.parseHz("2250000/143"));
        assertThat(Broadcast.LINE_RATE_525.hz().times(1_000_000).floor()).isEqualTo(15_734_265_734L);
    }

    @Test
    void the525LineSubcarrierIs455HalvesOfTheLineRate() {
        // SMPTE 170M: 3 579 545 ± 10 Hz, 455/2 times the line rate.
        assertThat(Broadcast.SUBCARRIER_525).isEqualTo(Broadcast.LINE_RATE_525.times(Rational.of(455, 2)));
        assertThat(Broadcast.SUBCARRIER_525.hz().floor()).isEqualTo(3_579_545L);
    }

    @Test
    void the525LineFieldRateIs60Over1001Thousandths() {
        // CTA-861-I §4: the factor is exactly 1000/1001; 525 lines make two fields.
        assertThat(Broadcast.FIELD_RATE_525).isEqualTo(Frequency.ofHz(60).dividedBy(Broadcast.THOUSAND_AND_ONE));
        assertThat(Broadcast.LINE_RATE_525.dividedBy(Rational.of(525, 2))).isEqualTo(Broadcast.FIELD_RATE_525);
    }

    @Test
    void the625LineSubcarrierHasAQuarterLineAnd25HzOffset() {
        // ITU-R BT.1700: (1135/4 + 1/625) times the line rate = 4 433 618.75 Hz.
        Rational cyclesPerLine = Rational.of(1135, 4).plus(Rational.of(1, 625));
        assertThat(Broadcast.LINE_RATE_625.times(cyclesPerLine)).isEqualTo(Broadcast.SUBCARRIER_625);
        assertThat(Broadcast.SUBCARRIER_625).isEqualTo(Frequency.parseHz("4433618.75"));
    }

    @Test
    void the625LineFieldRateIs50Hz() {
        // ITU-R BT.1700: 15 625 Hz, 625 lines, 50 fields.
        assertThat(Broadcast.LINE_RATE_625.dividedBy(Rational.of(625, 2))).isEqualTo(Broadcast.FIELD_RATE_625);
    }

    @Test
    void lumaSamplingGives858And864SamplesPerLine() {
        // ITU-R BT.601-5 part A.
        assertThat(Broadcast.LUMA_SAMPLING.ratioTo(Broadcast.LINE_RATE_525)).isEqualTo(Rational.of(858));
        assertThat(Broadcast.LUMA_SAMPLING.ratioTo(Broadcast.LINE_RATE_625)).isEqualTo(Rational.of(864));
    }

    @Test
    void squarePixelsAre780And944SamplesPerLine() {
        // Common practice: 12 3/11 MHz and 14.75 MHz.
        assertThat(Broadcast.SQUARE_PIXEL_525).isEqualTo(Broadcast.LINE_RATE_525.times(780));
        assertThat(Broadcast.SQUARE_PIXEL_625).isEqualTo(Broadcast.LINE_RATE_625.times(944));
    }

    @Test
    void everyDotClockRelatesToTheStandardLineAndTheSquarePixel() {
        List<Map<String, String>> rows = Tables.carriedOver("/rasterfit/timing/broadcast-dot-clocks.tsv");
        assertThat(rows).hasSize(29);
        for (Map<String, String> row : rows) {
            boolean is525 = row.get("lines").equals("525");
            Frequency dotClock = Frequency.parseHz(row.get("hz_exact"));
            Frequency lineRate = is525 ? Broadcast.LINE_RATE_525 : Broadcast.LINE_RATE_625;
            Frequency square = is525 ? Broadcast.SQUARE_PIXEL_525 : Broadcast.SQUARE_PIXEL_625;
            assertThat(dotClock.ratioTo(lineRate))
                    .as("samples per line at %s", row)
                    .isEqualTo(Rational.parse(row.get("samples_per_std_line")));
            assertThat(square.ratioTo(dotClock))
                    .as("square-pixel rate over dot clock at %s", row)
                    .isEqualTo(Rational.parse(row.get("square_over_dot")));
            if (row.get("dot_clock").endsWith("fsc")) {
                String factor = row.get("dot_clock").replace("fsc", "").trim();
                Frequency subcarrier = is525 ? Broadcast.SUBCARRIER_525 : Broadcast.SUBCARRIER_625;
                assertThat(subcarrier.times(factor.isEmpty() ? Rational.ONE : Rational.parse(factor)))
                        .as("dot clock of %s", row)
                        .isEqualTo(dotClock);
            }
        }
    }

    @Test
    void everyRasterOfTheBroadcastClocksHasItsExactRates() {
        List<Map<String, String>> rows = Tables.carriedOver("/rasterfit/timing/broadcast-frame-rates.tsv");
        assertThat(rows).hasSize(47);
        int checked = 0;
        for (Map<String, String> row : rows) {
            Rational dotsPerLine = Rational.parse(row.get("dots_per_line"));
            if (dotsPerLine.equals(Rational.ONE)) {
                continue; // a bare line rate: no raster has one dot per line
            }
            Rational linesPerField = Rational.parse(row.get("lines_per_field"));
            Scan scan = linesPerField.isWhole() ? Scan.PROGRESSIVE : Scan.INTERLACED;
            Raster raster = new Raster(
                    Frequency.parseHz(row.get("dot_clock_hz")),
                    256,
                    dotsPerLine,
                    240 * scan.fieldsPerFrame(),
                    linesPerField.times(scan.fieldsPerFrame()),
                    scan);
            assertThat(raster.lineRate()).as("%s", row).isEqualTo(Frequency.parseHz(row.get("line_hz_exact")));
            assertThat(raster.fieldRate()).as("%s", row).isEqualTo(Frequency.parseHz(row.get("field_hz_exact")));
            assertDecimal(raster.fieldRate().hz(), row.get("field_hz"));
            assertDecimal(raster.fieldRate().period().millis(), row.get("ms_per_field"));
            assertDecimal(ppm(raster, Frequency.ofHz(60)), row.get("vs_60_ppm"));
            assertDecimal(ppm(raster, Broadcast.FIELD_RATE_525), row.get("vs_60_over_1.001_ppm"));
            assertDecimal(ppm(raster, Broadcast.FIELD_RATE_625), row.get("vs_50_ppm"));
            assertBeat(raster.fieldRate(), row.get("beat_s"));
            checked++;
        }
        assertThat(checked).isEqualTo(40);
    }

    @Test
    void theSharedArithmeticIsTheCarriedOverOne() {
        List<Map<String, String>> rows = Tables.shared("reference/arith_frame.tsv");
        List<Map<String, String>> ours = Tables.carriedOver("/rasterfit/timing/broadcast-frame-rates.tsv");
        assertThat(rows).hasSameSizeAs(ours);
        for (int i = 0; i < rows.size(); i++) {
            assertThat(ours.get(i).get("dot_clock_hz")).isEqualTo(rows.get(i).get("dot_clock_hz_exact"));
            assertThat(ours.get(i).get("lines_per_field")).isEqualTo(rows.get(i).get("lines"));
            assertThat(ours.get(i).get("field_hz_exact")).isEqualTo(rows.get(i).get("frame_hz_exact"));
        }
        List<Map<String, String>> clocks = Tables.shared("reference/arith_par.tsv");
        List<Map<String, String>> ourClocks = Tables.carriedOver("/rasterfit/timing/broadcast-dot-clocks.tsv");
        assertThat(clocks).hasSameSizeAs(ourClocks);
        for (int i = 0; i < clocks.size(); i++) {
            assertThat(ourClocks.get(i).get("hz_exact")).isEqualTo(clocks.get(i).get("hz_exact"));
            assertThat(ourClocks.get(i).get("square_over_dot"))
                    .isEqualTo(clocks.get(i).get("par_vs_interlaced_frame(square/dot)"));
        }
    }

    private static Rational ppm(Raster raster, Frequency nominal) {
        return raster.fieldRate().ratioTo(nominal).minus(Rational.ONE).times(PPM);
    }

    /** The period at which the rate slips one field against the nearest of 50, 60/1.001 and 60 Hz. */
    private static void assertBeat(Frequency rate, String expected) {
        Rational nearest = List.of(Frequency.ofHz(60), Broadcast.FIELD_RATE_525, Broadcast.FIELD_RATE_625).stream()
                .map(nominal -> rate.hz().minus(nominal.hz()).abs())
                .min(Rational::compareTo)
                .orElseThrow();
        if (expected.equals("inf")) {
            assertThat(nearest).isEqualTo(Rational.ZERO);
        } else {
            assertDecimal(nearest.reciprocal(), expected);
        }
    }

    /** Equal to half a unit of the last printed digit. */
    private static void assertDecimal(Rational actual, String printed) {
        int decimals = printed.length() - printed.indexOf('.') - 1;
        Rational halfUnit = Rational.HALF.dividedBy((long) Math.pow(10, decimals));
        assertThat(actual.minus(Rational.parse(printed)).abs())
                .as("%s printed as %s", actual, printed)
                .isLessThanOrEqualTo(halfUnit);
    }
}
