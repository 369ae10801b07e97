package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.Tables;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * DMT, CVT and GTF against their tables: VESA DMT 1.13; VESA CVT 1.2 with reduced blanking v1 and v2, v3 of DisplayID
 * 2.1a; VESA GTF 1.1. Carried over, and the shared copies where they are there.
 */
class MonitorStandardsTest {
    private static final List<Integer> NOMINAL_RATES = List.of(50, 60, 75, 85, 120);

    @Test
    void everyMonitorTimingIsThatOfDmt() {
        checkDmt(Tables.carriedOver("/rasterfit/timing/vesa-dmt.tsv"));
    }

    @Test
    void everyMonitorTimingIsThatOfTheSharedReference() {
        checkDmt(Tables.shared("reference/dmts.tsv"));
    }

    @Test
    void everyCoordinatedTimingIsThatOfTheFormula() {
        checkCvt(Tables.carriedOver("/rasterfit/timing/vesa-cvt.tsv"));
    }

    @Test
    void everyCoordinatedTimingIsThatOfTheSharedReference() {
        checkCvt(Tables.shared("reference/cvt.tsv"));
    }

    @Test
    void everyInterlacedCoordinatedTimingIsThatOfTheFormula() {
        checkInterlaced(Tables.carriedOver("/rasterfit/timing/vesa-cvt-interlaced.tsv"));
    }

    @Test
    void everyInterlacedCoordinatedTimingIsThatOfTheSharedReference() {
        checkInterlaced(Tables.shared("reference/cvt_interlaced.tsv"));
    }

    @Test
    void everyGeneralisedTimingIsThatOfTheFormula() {
        checkGtf(Tables.carriedOver("/rasterfit/timing/vesa-gtf.tsv"));
    }

    @Test
    void everyGeneralisedTimingIsThatOfTheSharedReference() {
        checkGtf(Tables.shared("reference/gtf.tsv"));
    }

    /**
     * DMT publishes many of its timings as CVT. Those that are, by its notes and codes: 21 ordinary ones, 22 of reduced
     * blanking version 1, 2 of version 2. 0x28 has the sync of a 16:9 picture (5 lines), though 1360 × 768 is none.
     */
    @Test
    void monitorTimingsFollowFromTheFormulasAsOftenAsPublished() {
        assertThat(idsThatFollowFrom(CvtBlanking.ORDINARY))
                .hasSize(21)
                .contains(0x17, 0x1C, 0x2A, 0x4F)
                .doesNotContain(0x52);
        assertThat(idsThatFollowFrom(CvtBlanking.REDUCED_V1))
                .hasSize(22)
                .contains(0x16, 0x43, 0x4B, 0x50)
                .doesNotContain(0x28);
        assertThat(idsThatFollowFrom(CvtBlanking.REDUCED_V2)).containsExactly(0x57);
        assertThat(idsThatFollowFrom(CvtBlanking.REDUCED_V2_VIDEO)).containsExactly(0x58);
    }

    private static List<Integer> idsThatFollowFrom(CvtBlanking blanking) {
        return Dmt.all().stream()
                .filter(each -> {
                    RasterTiming timing = each.timing();
                    return timing.scan() == Scan.PROGRESSIVE
                            && NOMINAL_RATES.stream()
                                    .anyMatch(rate -> Cvt.timing(CvtRequest.progressive(
                                                    timing.horizontalActive(),
                                                    timing.verticalActive(),
                                                    Frequency.ofHz(rate),
                                                    blanking))
                                            .equals(timing));
                })
                .map(Dmt.MonitorTiming::id)
                .toList();
    }

    private static void checkDmt(List<Map<String, String>> rows) {
        assertThat(rows).hasSize(88).hasSameSizeAs(Dmt.all());
        for (Map<String, String> row : rows) {
            Dmt.MonitorTiming timing = Dmt.find(Integer.decode(row.get("dmt"))).orElseThrow();
            RasterTiming raster = timing.timing();
            int across = Integer.parseInt(row.get("hborder"));
            int down = Integer.parseInt(row.get("vborder"));
            assertThat(raster.horizontalActive()).isEqualTo(number(row, "w"));
            assertThat(raster.verticalActive()).isEqualTo(number(row, "h"));
            assertThat(raster.scan() == Scan.INTERLACED)
                    .isEqualTo(row.get("scan").equals("i"));
            assertThat(raster.horizontalTotal()).as("%s", row).isEqualTo(number(row, "htotal"));
            assertThat(raster.horizontalFrontPorch()).isEqualTo(number(row, "hfp") + across);
            assertThat(raster.horizontalSync()).isEqualTo(number(row, "hsync"));
            assertThat(raster.horizontalBackPorch()).isEqualTo(number(row, "hbp") + across);
            assertThat(raster.verticalTotal()).isEqualTo(number(row, "vtotal_frame"));
            assertThat(raster.verticalFrontPorch()).isEqualTo(number(row, "vfp") + down);
            assertThat(raster.verticalSync()).isEqualTo(number(row, "vsync"));
            assertThat(raster.verticalBackPorch()).isEqualTo(number(row, "vbp") + down);
            assertThat(raster.horizontalPolarity()).isEqualTo(polarity(row, "hpol"));
            assertThat(raster.verticalPolarity()).isEqualTo(polarity(row, "vpol"));
            assertThat(raster.pixelClock()).isEqualTo(Frequency.parseHz(row.get("pixclk_hz")));
            assertThat(rounded(raster.fieldRate().hz())).isEqualByComparingTo(row.get("rate_hz"));
            assertThat(timing.border()).isEqualTo(new Border(across, down));
            assertThat(timing.pictureAspect())
                    .hasToString(row.get("aspect").replace(':', '/').replace("16/10", "8/5"));
            assertThat(timing.reducedBlanking()).isEqualTo(row.get("flags").contains("RB"));
        }
    }

    private static void checkCvt(List<Map<String, String>> rows) {
        Map<String, CvtBlanking> variants = Map.of(
                "cvt", CvtBlanking.ORDINARY,
                "rb1", CvtBlanking.REDUCED_V1,
                "rb2", CvtBlanking.REDUCED_V2,
                "rb2v", CvtBlanking.REDUCED_V2_VIDEO,
                "rb3", CvtBlanking.REDUCED_V3);
        assertThat(rows).hasSize(190);
        for (Map<String, String> row : rows) {
            RasterTiming timing = Cvt.timing(CvtRequest.progressive(
                    number(row, "w"),
                    number(row, "h"),
                    Frequency.parseHz(row.get("req_hz")),
                    variants.get(row.get("variant"))));
            checkCounts(timing, row, "vtotal_frame");
            assertThat(timing.pixelClock()).as("%s", row).isEqualTo(Frequency.parseHz(row.get("pixclk_hz")));
            assertThat(rounded(timing.fieldRate().hz())).isEqualByComparingTo(row.get("rate_hz"));
            assertThat(timing.horizontalPolarity()).isEqualTo(polarity(row, "hpol"));
            assertThat(timing.verticalPolarity()).isEqualTo(polarity(row, "vpol"));
            assertThat(timing.horizontalActive()).isEqualTo(number(row, "w"));
            assertThat(timing.verticalActive()).isEqualTo(number(row, "h"));
        }
    }

    private static void checkInterlaced(List<Map<String, String>> rows) {
        assertThat(rows).hasSize(5);
        for (Map<String, String> row : rows) {
            RasterTiming timing = Cvt.timing(new CvtRequest(
                    number(row, "w"),
                    number(row, "h"),
                    Frequency.parseHz(row.get("fields_hz")),
                    Scan.INTERLACED,
                    false,
                    CvtBlanking.ORDINARY));
            checkCounts(timing, row, "vtotal_frame");
            assertThat(timing.pixelClock()).as("%s", row).isEqualTo(Frequency.parseHz(row.get("pixclk_hz")));
            assertThat(rounded(timing.fieldRate().hz())).isEqualByComparingTo(row.get("rate_hz"));
        }
    }

    private static void checkGtf(List<Map<String, String>> rows) {
        assertThat(rows).hasSize(15);
        for (Map<String, String> row : rows) {
            RasterTiming timing = Gtf.timing(
                    GtfRequest.progressive(number(row, "w"), number(row, "h"), Frequency.parseHz(row.get("req_hz"))));
            checkCounts(timing, row, "vtotal");
            Rational printed =
                    Rational.of(new BigDecimal(row.get("pixclk_mhz_exact"))).times(1_000_000);
            assertThat(timing.pixelClock().hz()).as("%s", row).isEqualTo(printed);
            assertThat(timing.horizontalPolarity()).isEqualTo(polarity(row, "hpol"));
        }
    }

    private static void checkCounts(RasterTiming timing, Map<String, String> row, String verticalTotal) {
        assertThat(timing.horizontalTotal()).as("%s", row).isEqualTo(number(row, "htotal"));
        assertThat(timing.horizontalFrontPorch()).as("%s", row).isEqualTo(number(row, "hfp"));
        assertThat(timing.horizontalSync()).as("%s", row).isEqualTo(number(row, "hsync"));
        assertThat(timing.horizontalBackPorch()).as("%s", row).isEqualTo(number(row, "hbp"));
        assertThat(timing.verticalTotal()).as("%s", row).isEqualTo(number(row, verticalTotal));
        assertThat(timing.verticalFrontPorch()).as("%s", row).isEqualTo(number(row, "vfp"));
        assertThat(timing.verticalSync()).as("%s", row).isEqualTo(number(row, "vsync"));
        assertThat(timing.verticalBackPorch()).as("%s", row).isEqualTo(number(row, "vbp"));
    }

    private static int number(Map<String, String> row, String column) {
        return Integer.parseInt(row.get(column));
    }

    private static Polarity polarity(Map<String, String> row, String column) {
        return row.get(column).equals("P") ? Polarity.POSITIVE : Polarity.NEGATIVE;
    }

    /** As the tables print rates: six decimals. */
    private static BigDecimal rounded(Rational value) {
        return new BigDecimal(rasterfit.Fractions.printed(value, 6));
    }
}
