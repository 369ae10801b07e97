package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.edid.RangeLimits.CvtSupport;
import rasterfit.edid.RangeLimits.Formula;
import rasterfit.edid.RangeLimits.SecondaryGtf;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.GtfCurve;

/** The display range limits descriptor: E-EDID tables 3.26 to 3.28. */
class RangeLimitsTest {
    @Test
    void limitsAreInHertzKilohertzAndTensOfMegahertz() {
        RangeLimits limits = EdidReader.read(
                        EdidBuilder.digital(4).rangeLimits(24, 75, 15, 81, 230).build())
                .rangeLimits();
        assertThat(limits)
                .isEqualTo(new RangeLimits(
                        Frequency.ofHz(24),
                        Frequency.ofHz(75),
                        Frequency.ofHz(15_000),
                        Frequency.ofHz(81_000),
                        Frequency.ofHz(230_000_000),
                        Formula.NONE,
                        null,
                        null));
    }

    @ParameterizedTest
    @CsvSource({
        // Table 3.26 byte 4: bits 1–0 field rate, bits 3–2 line rate; 10 adds 255 to the maximum, 11 to both.
        "0x00, 40, 200, 30, 190",
        "0x02, 40, 455, 30, 190",
        "0x03, 295, 455, 30, 190",
        "0x08, 40, 200, 30, 445",
        "0x0C, 40, 200, 285, 445",
        "0x0E, 40, 455, 285, 445",
        "0x0F, 295, 455, 285, 445"
    })
    void offsetsOfEdid14Add255(String flags, int minField, int maxField, int minLine, int maxLine) {
        EdidReading reading = read(4, Integer.decode(flags), 40, 200, 30, 190, 60, 0x01);
        assertThat(reading.defects()).isEmpty();
        assertThat(reading.rangeLimits().minFieldRate()).isEqualTo(Frequency.ofHz(minField));
        assertThat(reading.rangeLimits().maxFieldRate()).isEqualTo(Frequency.ofHz(maxField));
        assertThat(reading.rangeLimits().minLineRate()).isEqualTo(Frequency.ofHz(minLine * 1000L));
        assertThat(reading.rangeLimits().maxLineRate()).isEqualTo(Frequency.ofHz(maxLine * 1000L));
    }

    @Test
    void offsetsBefore14AreNotAppliedAndReported() {
        EdidReading reading = read(3, 0x0F, 40, 200, 30, 190, 60, 0x00);
        assertThat(reading.rangeLimits().maxFieldRate()).isEqualTo(Frequency.ofHz(200));
        assertThat(reading.rangeLimits().maxLineRate()).isEqualTo(Frequency.ofHz(190_000));
        assertThat(reading.defects())
                .singleElement()
                .satisfies(defect -> assertThat(defect.code()).isEqualTo(DefectCode.RANGE_OFFSETS_UNDEFINED));
    }

    @Test
    void reservedOffsetsAreNotAppliedAndReported() {
        EdidReading reading = read(4, 0x05, 40, 200, 30, 190, 60, 0x01);
        assertThat(reading.rangeLimits().minFieldRate()).isEqualTo(Frequency.ofHz(40));
        assertThat(reading.rangeLimits().maxLineRate()).isEqualTo(Frequency.ofHz(190_000));
        assertThat(reading.defects())
                .singleElement()
                .satisfies(defect -> assertThat(defect.code()).isEqualTo(DefectCode.RANGE_OFFSETS_UNDEFINED));
    }

    @ParameterizedTest
    @CsvSource({"75, 50, 30, 80", "50, 75, 80, 30", "0, 0, 30, 80", "50, 75, 0, 0"})
    void limitsWithoutAnyRateAreLeftOut(int minField, int maxField, int minLine, int maxLine) {
        EdidReading reading = read(3, 0, minField, maxField, minLine, maxLine, 17, 0);
        assertThat(reading.rangeLimits()).isNull();
        assertThat(reading.defects())
                .singleElement()
                .satisfies(defect -> assertThat(defect.code()).isEqualTo(DefectCode.RANGE_LIMITS_IMPOSSIBLE));
    }

    @ParameterizedTest
    @CsvSource({
        // Table 3.26 byte 10; CVT exists from EDID 1.4 on.
        "3, 0x00, DEFAULT_GTF",
        "4, 0x01, NONE",
        "3, 0x02, SECONDARY_GTF",
        "4, 0x04, CVT",
        "3, 0x04, UNKNOWN",
        "4, 0x03, UNKNOWN"
    })
    void byte10NamesTheFormula(int revision, String code, Formula formula) {
        assertThat(read(revision, 0, 50, 75, 30, 80, 17, Integer.decode(code))
                        .rangeLimits()
                        .formula())
                .isEqualTo(formula);
    }

    @Test
    void cvtSupportRefinesTheClockAndLimitsTheWidth() {
        // Table 3.28: byte 9 = 17, byte 12 bits 7–2 = 7: 170 − 7 · 0.25 = 168.25 MHz; bits 1–0 = 1 with byte 13 = 0:
        // 8 · 256 = 2048 pixels; byte 11 = 10h: CVT 1.0; byte 14 = C8h: 4:3, 16:9, 15:9; byte 15 = 58h: 16:10
        // preferred, bit 4 reduced, bit 3 standard; byte 17 = 60.
        RangeLimits limits = read(4, 0, 50, 75, 30, 80, 17, 0x04, 0x10, 0x1D, 0x00, 0xC8, 0x58, 0x00, 60)
                .rangeLimits();
        assertThat(limits.maxPixelClock()).isEqualTo(Frequency.ofHz(168_250_000));
        assertThat(limits.cvt())
                .isEqualTo(new CvtSupport(
                        1,
                        0,
                        2048,
                        List.of(Rational.of(4, 3), Rational.of(16, 9), Rational.of(5, 3)),
                        Rational.of(8, 5),
                        true,
                        true,
                        60));
        assertThat(limits.secondaryGtf()).isNull();
    }

    @Test
    void cvtSupportMayLeaveTheWidthOpen() {
        RangeLimits limits = read(4, 0, 50, 75, 30, 80, 17, 0x04, 0x10, 0x00, 0x00, 0x30, 0xB0, 0x00, 0)
                .rangeLimits();
        assertThat(limits.maxPixelClock()).isEqualTo(Frequency.ofHz(170_000_000));
        assertThat(limits.cvt())
                .isEqualTo(new CvtSupport(
                        1, 0, null, List.of(Rational.of(8, 5), Rational.of(5, 4)), null, false, true, null));
    }

    @Test
    void aSecondaryCurveHasItsOwnConstants() {
        // Table 3.27: byte 12 = 40: from 80 kHz; byte 13 = 81: C = 40.5; bytes 14, 15 = 58h 02h: M = 600; byte 16 =
        // 128:
        // K; byte 17 = 41: J = 20.5.
        RangeLimits limits = read(3, 0, 50, 75, 30, 110, 17, 0x02, 0, 40, 81, 0x58, 0x02, 128, 41)
                .rangeLimits();
        assertThat(limits.secondaryGtf())
                .isEqualTo(new SecondaryGtf(
                        Frequency.ofHz(80_000),
                        new GtfCurve(Rational.of(81, 2), Rational.of(600), Rational.of(128), Rational.of(41, 2))));
        assertThat(limits.cvt()).isNull();
    }

    @Test
    void aClockOfZeroIsNotStated() {
        assertThat(read(3, 0, 50, 75, 30, 80, 0, 0).rangeLimits().maxPixelClock())
                .isNull();
    }

    @Test
    void theFirstDescriptorCounts() {
        byte[] edid = EdidBuilder.digital(4)
                .rangeLimits(50, 75, 30, 80, 170)
                .rangeLimits(24, 120, 15, 135, 600)
                .build();
        assertThat(EdidReader.read(edid).rangeLimits().maxFieldRate()).isEqualTo(Frequency.ofHz(75));
    }

    private static EdidReading read(int revision, int... byte4AndContent) {
        return EdidReader.read(EdidBuilder.digital(revision)
                .displayDescriptor(0xFD, byte4AndContent)
                .build());
    }
}
