package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.Tables;
import rasterfit.quantity.Frequency;

/** The timings of the HDMI VICs against HDMI 1.4 as the reference table gives it. */
class HdmiVideoTest {
    @Test
    void everyTimingIsThatOfTheTable() {
        check(Tables.carriedOver("/rasterfit/timing/hdmi-vics.tsv"));
    }

    @Test
    void everyTimingIsThatOfTheSharedReference() {
        check(Tables.shared("reference/hdmi_vics.tsv"));
    }

    @Test
    void otherNumbersAreReserved() {
        assertThat(HdmiVideo.find(0)).isEmpty();
        assertThat(HdmiVideo.find(5)).isEmpty();
    }

    private static void check(List<Map<String, String>> rows) {
        assertThat(rows).hasSize(4);
        for (Map<String, String> row : rows) {
            VideoTiming found =
                    HdmiVideo.find(Integer.parseInt(row.get("hdmi_vic"))).orElseThrow();
            assertThat(found.timing()).as("%s", row).isEqualTo(timing(row));
            assertThat(found.pictureAspect()).hasToString(row.get("aspect").replace(':', '/'));
        }
    }

    private static RasterTiming timing(Map<String, String> row) {
        return new RasterTiming(
                Frequency.parseHz(row.get("pixclk_hz")),
                number(row, "w"),
                number(row, "hfp"),
                number(row, "hsync"),
                number(row, "hbp"),
                number(row, "h"),
                number(row, "vfp"),
                number(row, "vsync"),
                number(row, "vbp"),
                number(row, "vtotal_frame"),
                Scan.PROGRESSIVE,
                row.get("hpol").equals("P") ? Polarity.POSITIVE : Polarity.NEGATIVE,
                row.get("vpol").equals("P") ? Polarity.POSITIVE : Polarity.NEGATIVE);
    }

    private static int number(Map<String, String> row, String column) {
        return Integer.parseInt(row.get(column));
    }
}
