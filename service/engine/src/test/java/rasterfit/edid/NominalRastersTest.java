package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cvt;
import rasterfit.timing.CvtBlanking;
import rasterfit.timing.CvtRequest;
import rasterfit.timing.Dmt;
import rasterfit.timing.Gtf;
import rasterfit.timing.GtfCurve;
import rasterfit.timing.GtfRequest;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** The rasters behind timings of which an EDID gives only a size and a rate: E-EDID §3.9, §3.10.3.8, §3.10.3.9. */
class NominalRastersTest {
    /** Table 3.37 from memory: bits in their order. */
    private static final List<String> ESTABLISHED_THIRD = List.of(
            "640x350@85",
            "640x400@85",
            "720x400@85",
            "640x480@85",
            "848x480@60",
            "800x600@85",
            "1024x768@85",
            "1152x864@75",
            "1280x768@60RB",
            "1280x768@60",
            "1280x768@75",
            "1280x768@85",
            "1280x960@60",
            "1280x960@85",
            "1280x1024@60",
            "1280x1024@85",
            "1360x768@60",
            "1440x900@60RB",
            "1440x900@60",
            "1440x900@75",
            "1440x900@85",
            "1400x1050@60RB",
            "1400x1050@60",
            "1400x1050@75",
            "1400x1050@85",
            "1680x1050@60RB",
            "1680x1050@60",
            "1680x1050@75",
            "1680x1050@85",
            "1600x1200@60",
            "1600x1200@65",
            "1600x1200@70",
            "1600x1200@75",
            "1600x1200@85",
            "1792x1344@60",
            "1792x1344@75",
            "1856x1392@60",
            "1856x1392@75",
            "1920x1200@60RB",
            "1920x1200@60",
            "1920x1200@75",
            "1920x1200@85",
            "1920x1440@60",
            "1920x1440@75");

    private static final int[] NO_LIMITS = {};
    private static final int[] DEFAULT_GTF = {0, 50, 160, 30, 130, 25, 0x00, 0x0A};
    private static final int[] CVT = {0, 50, 160, 30, 130, 25, 0x04, 0x11, 0x00, 0x00, 0xF8, 0x18, 0x00, 60};
    /** From 70 kHz on: C = 50, M = 500, K = 128, J = 20. */
    private static final int[] SECONDARY_GTF = {0, 50, 160, 30, 130, 25, 0x02, 0, 35, 100, 0xF4, 0x01, 128, 40};

    @Test
    void eachBitOfEstablishedTimingsIIIIsATimingOfDmt() {
        for (int bit = 0; bit < 48; bit++) {
            int[] content = new int[14];
            content[1] = 0x0A;
            content[2 + bit / 8] = 0x80 >> bit % 8;
            EdidReading reading = EdidReader.read(
                    EdidBuilder.digital(4).displayDescriptor(0xF7, content).build());
            if (bit >= ESTABLISHED_THIRD.size()) {
                assertThat(reading.timings()).as("reserved bit %d", bit).isEmpty();
                continue;
            }
            AcceptedTiming timing = reading.timings().get(0);
            assertThat(reading.timings()).hasSize(1);
            assertThat(timing.label()).isEqualTo("established:" + (18 + bit));
            assertThat(timing.basis()).isEqualTo(TimingBasis.DMT);
            assertThat(written(timing)).isEqualTo(ESTABLISHED_THIRD.get(bit));
            assertThat(timing.nominal().fieldRateHz())
                    .isEqualTo((int) timing.timing().fieldRate().hz().round());
            assertThat(Dmt.all()).anyMatch(dmt -> dmt.timing().equals(timing.timing()));
        }
    }

    @Test
    void twoDescriptorsOfEstablishedTimingsIIIAddUp() {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(4)
                .displayDescriptor(0xF7, 0, 0x0A, 0xC0)
                .displayDescriptor(0xF7, 0, 0x0A, 0x60)
                .build());
        assertThat(reading.timings())
                .extracting(AcceptedTiming::label)
                .containsExactly("established:18", "established:19", "established:20");
    }

    @Test
    void everyStandardCodeOfDmtGivesItsTimingWhateverTheFormula() {
        List<Dmt.MonitorTiming> coded = Dmt.all().stream()
                .filter(timing -> timing.standardCode() != null)
                .toList();
        assertThat(coded).hasSize(49);
        for (Dmt.MonitorTiming dmt : coded) {
            for (int[] limits : List.of(NO_LIMITS, DEFAULT_GTF, CVT, SECONDARY_GTF)) {
                AcceptedTiming timing = standard(4, Objects.requireNonNull(dmt.standardCode()), limits);
                assertThat(timing.timing()).as("0x%02x", dmt.id()).isEqualTo(dmt.timing());
                assertThat(timing.basis()).isEqualTo(TimingBasis.DMT);
            }
        }
    }

    @Test
    void aCodeOf16By10MeansASquareBeforeEdid13() {
        // B3 00 is 1680 × 1050 at 60 Hz of DMT from EDID 1.3 on; before, the same two bits meant 1:1.
        assertThat(standard(3, 0xB300, NO_LIMITS).basis()).isEqualTo(TimingBasis.DMT);
        AcceptedTiming square = standard(2, 0xB300, NO_LIMITS);
        assertThat(square.timing().verticalActive()).isEqualTo(1680);
        assertThat(square.basis()).isEqualTo(TimingBasis.GTF);
    }

    @Test
    void otherCodesFollowFromGtf() {
        // 1440 × 900 at 77 Hz is no code of DMT. GTF 1.1 by hand: a field lasts 12,987.01 µs; (12,987.01 − 550) / 901 =
        // 13.803 µs; 550 / 13.803 = 39.85, rounded 40 lines of sync and back porch; total 900 + 40 + 1 = 941, at 77 Hz
        // 72,457 lines/s or 13.8013 µs; blanked 30 − 300 · 0.0138013 = 25.8596 %; 1440 · 25.8596 / 74.1404 = 502.26,
        // in steps of 16 rounded 496.
        AcceptedTiming timing = standard(3, code(1440, 0, 77), NO_LIMITS);
        assertThat(timing.basis()).isEqualTo(TimingBasis.GTF);
        assertThat(timing.timing().verticalTotal()).isEqualTo(941);
        assertThat(timing.timing().lineRate()).isEqualTo(Frequency.ofHz(72_457));
        assertThat(timing.timing().fieldRate()).isEqualTo(Frequency.ofHz(77));
        assertThat(timing.timing().horizontalTotal()).isEqualTo(1440 + 496);
        assertThat(standard(3, code(1440, 0, 77), DEFAULT_GTF)).isEqualTo(timing);
    }

    @Test
    void rangeLimitsWithCvtMakeThemCvt() {
        // 1440 × 900 at 77 Hz is no code of DMT.
        AcceptedTiming timing = standard(4, code(1440, 0, 77), CVT);
        assertThat(timing.basis()).isEqualTo(TimingBasis.CVT);
        assertThat(timing.timing())
                .isEqualTo(Cvt.timing(CvtRequest.progressive(1440, 900, Frequency.ofHz(77), CvtBlanking.ORDINARY)));
        assertThat(standard(3, code(1440, 0, 77), CVT).basis())
                .as("CVT in range limits is of EDID 1.4")
                .isEqualTo(TimingBasis.GTF);
    }

    @ParameterizedTest
    @CsvSource({
        // 1440 × 900 at 66 Hz: (15,151.5 − 550) / 901 = 16.206 µs, 33.9 → 34 lines, 935 · 66 = 61,710 lines/s, below 70
        // kHz.
        "66, false",
        // At 77 Hz 72,457 lines/s, above.
        "77, true"
    })
    void theSecondaryCurveHoldsAboveItsStart(int rate, boolean isAbove) {
        GtfCurve curve = new GtfCurve(Rational.of(50), Rational.of(500), Rational.of(128), Rational.of(20));
        RasterTiming expected = Gtf.timing(
                new GtfRequest(1440, 900, Frequency.ofHz(rate), Scan.PROGRESSIVE, false, isAbove ? curve : null));
        RasterTiming timing = standard(3, code(1440, 0, rate), SECONDARY_GTF).timing();
        assertThat(timing).isEqualTo(expected);
        // GTF 1.1: timings of a secondary curve have positive horizontal and negative vertical sync, by which they are
        // told.
        assertThat(timing.horizontalPolarity()).isEqualTo(isAbove ? Polarity.POSITIVE : Polarity.NEGATIVE);
    }

    @Test
    void everyCvtCodeOfDmtGivesItsTiming() {
        // Two of the published codes hold values that break the formula: see MonitorCodesTest.
        List<Integer> misprinted = List.of(0x31, 0x3C);
        List<Dmt.MonitorTiming> coded = Dmt.all().stream()
                .filter(timing -> timing.cvtCode() != null && !misprinted.contains(timing.id()))
                .toList();
        assertThat(coded).hasSize(26);
        for (Dmt.MonitorTiming dmt : coded) {
            int code = Objects.requireNonNull(dmt.cvtCode());
            List<AcceptedTiming> timings =
                    cvtCodes(code >> 16, code >> 8 & 0xFF, code & 0xFF).timings();
            assertThat(timings).as("0x%02x", dmt.id()).hasSize(1);
            assertThat(timings.get(0).basis()).isEqualTo(TimingBasis.CVT);
            assertThat(timings.get(0).timing()).as("0x%02x", dmt.id()).isEqualTo(dmt.timing());
        }
    }

    @Test
    void aCvtCodeStatesUpToFiveRates() {
        // 1080 lines: 1080 / 2 − 1 = 539 = 21Bh; 16:9: 1; 60 Hz preferred: 1; all five rates: 1Fh. Second slot of four.
        EdidReading reading = cvtCodes(0, 0, 0, 0x1B, 0x24, 0x3F);
        assertThat(reading.timings().stream().map(AcceptedTiming::label))
                .containsExactly("cvt-code:6", "cvt-code:7", "cvt-code:8", "cvt-code:9", "cvt-code:10");
        assertThat(reading.timings().stream().map(NominalRastersTest::written))
                .containsExactly("1920x1080@50", "1920x1080@60", "1920x1080@75", "1920x1080@85", "1920x1080@60RB");
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void aWidthOfACvtCodeIsCutToCells() {
        // 768 lines at 16:9: 1365.3 pixels, in cells of 8: 1360. 768 / 2 − 1 = 383 = 17Fh.
        assertThat(cvtCodes(0x7F, 0x14, 0x28).timings().stream().map(NominalRastersTest::written))
                .containsExactly("1360x768@60");
    }

    @ParameterizedTest
    @CsvSource({
        "0x1B, 0x24, 0x20, 0", // no rate
        "0x1B, 0x25, 0x28, 1", // reserved bits
        "0x1B, 0x24, 0xA8, 1"
    })
    void aCvtCodeWithReservedValuesIsReported(String first, String second, String third, int timings) {
        EdidReading reading = cvtCodes(Integer.decode(first), Integer.decode(second), Integer.decode(third));
        assertThat(reading.timings()).hasSize(timings);
        assertThat(reading.defects())
                .singleElement()
                .satisfies(defect -> assertThat(defect.code()).isEqualTo(DefectCode.CVT_CODE_RESERVED));
    }

    @Test
    void aCvtCodeTooSmallForAClockHasNoRaster() {
        // 6 lines: 6 / 2 − 1 = 2; 4:3: 8 pixels; CVT 1.2 §5.3 makes 201.6 kHz of them, less than its step of 250 kHz.
        EdidReading reading = cvtCodes(0x02, 0x00, 0x01);
        assertThat(reading.timings()).singleElement().satisfies(timing -> {
            assertThat(timing.timing()).isNull();
            assertThat(timing.basis()).isEqualTo(TimingBasis.UNKNOWN);
        });
        assertThat(reading.defects()).isEmpty();
    }

    private static EdidReading cvtCodes(int... codes) {
        int[] content = new int[14];
        content[1] = 0x01;
        System.arraycopy(codes, 0, content, 2, codes.length);
        return EdidReader.read(
                EdidBuilder.digital(4).displayDescriptor(0xF8, content).build());
    }

    /** E-EDID table 3.19. */
    private static int code(int width, int aspect, int rateHz) {
        return (width / 8 - 31) << 8 | aspect << 6 | (rateHz - 60);
    }

    private static AcceptedTiming standard(int revision, int code, int[] rangeLimits) {
        EdidBuilder builder = EdidBuilder.digital(revision).patch(0x26, code >> 8, code & 0xFF);
        if (rangeLimits.length > 0) {
            builder.displayDescriptor(0xFD, rangeLimits);
        }
        EdidReading reading = EdidReader.read(builder.build());
        assertThat(reading.timings()).hasSize(1);
        return reading.timings().get(0);
    }

    private static String written(AcceptedTiming timing) {
        RasterTiming raster = timing.timing();
        int blanking = raster.horizontalTotal() - raster.horizontalActive();
        boolean isReduced = blanking == 160
                && raster.horizontalPolarity() == Polarity.POSITIVE
                && raster.verticalPolarity() == Polarity.NEGATIVE
                && raster.horizontalSync() == 32;
        return raster.horizontalActive() + "x" + raster.verticalActive() + "@"
                + raster.fieldRate().hz().round() + (isReduced ? "RB" : "");
    }
}
