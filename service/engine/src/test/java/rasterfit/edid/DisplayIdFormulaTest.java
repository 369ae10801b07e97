package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cvt;
import rasterfit.timing.CvtBlanking;
import rasterfit.timing.CvtRequest;
import rasterfit.timing.Dmt;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** Types III and V (DisplayID 1.3 §4.4), IX and X (2.1a §4; clauses from memory). CVT itself is tested where it is. */
class DisplayIdFormulaTest {
    private final DefectLog log = new DefectLog();

    @Test
    void typeIiiGivesTheTimingsThatDmtPublishesForTheSameFormula() {
        // VESA DMT 1.13: 2Ah is 1400 × 1050 at 60 Hz by CVT, 29h the same with reduced blanking.
        assertThat(timings(
                        0x05,
                        0,
                        DisplayIdDescriptors.typeIii(1400, 2, 60, false, false, false),
                        DisplayIdDescriptors.typeIii(1400, 2, 60, false, true, true)))
                .containsExactly(
                        Dmt.find(0x2A).orElseThrow().timing(),
                        Dmt.find(0x29).orElseThrow().timing());
        assertThat(read(0x05, 0, DisplayIdDescriptors.typeIii(1400, 2, 60, false, true, true)))
                .allMatch(timing -> timing.preferred() && timing.basis() == TimingBasis.CVT);
    }

    /** Codes from DisplayID 1.3 and 2.1a (from memory; an open decoder agrees); what is not whole is cut off (assumption). */
    @ParameterizedTest
    @CsvSource({"0, 1280", "1, 1024", "2, 960", "3, 768", "4, 720", "5, 800", "6, 540", "7, 675"})
    void theAspectGivesTheHeight(int code, int height) {
        assertThat(timings(0x05, 0, DisplayIdDescriptors.typeIii(1280, code, 60, false, false, false)))
                .extracting(RasterTiming::verticalActive)
                .containsExactly(height);
    }

    @Test
    void typeIiiMayBeInterlaced() {
        // VESA CVT 1.2 with interlace, from the project's reference table; lines of the frame, rate of the fields.
        assertThat(timings(0x05, 0, DisplayIdDescriptors.typeIii(1920, 4, 60, true, false, false)))
                .containsExactly(new RasterTiming(
                        Frequency.ofHz(82_000_000),
                        1920,
                        64,
                        192,
                        256,
                        1080,
                        3,
                        5,
                        14,
                        1125,
                        Scan.INTERLACED,
                        Polarity.NEGATIVE,
                        Polarity.POSITIVE));
    }

    @Test
    void reservedAspectsAndFormulasAreLeftOut() {
        assertRejected(0x05, new int[] {0x08, 100, 59});
        assertRejected(0x05, new int[] {0x0F, 100, 59});
        assertRejected(0x05, new int[] {0x24, 100, 59});
        assertRejected(0x11, new int[] {0x01, 0, 0x7F, 0x07, 0x37, 0x04, 59});
        assertRejected(0x11, new int[] {0x02, 0, 0x7F, 0x07, 0x37, 0x04, 59});
        assertRejected(0x24, new int[] {0x03, 0x7F, 0x07, 0x37, 0x04, 59});
        assertRejected(0x24, new int[] {0x04, 0x7F, 0x07, 0x37, 0x04, 59});
        assertRejected(0x2A, new int[] {0x07, 0x7F, 0x07, 0x37, 0x04, 59});
        // One pixel leaves no room for sync.
        assertRejected(0x24, new int[] {0x00, 0, 0, 0x37, 0x04, 59});
    }

    @Test
    void typeVIsReducedBlankingV2AndMayAddTheVideoRate() {
        // VESA DMT 1.13: 57h is 4096 × 2160 at 60 Hz by reduced blanking v2, 58h the same at 1000/1001.
        List<DisplayIdTiming> timings = read(0x11, 0, DisplayIdDescriptors.typeV(4096, 2160, 60, true, true));
        assertThat(timings)
                .extracting(DisplayIdTiming::timing)
                .containsExactly(
                        Dmt.find(0x57).orElseThrow().timing(),
                        Dmt.find(0x58).orElseThrow().timing());
        assertThat(timings).extracting(DisplayIdTiming::preferred).containsExactly(true, false);
    }

    @ParameterizedTest
    @CsvSource({"0x24", "0x2A"})
    void typesIxAndXNameTheFormula(int tag) {
        assertThat(timings(
                        tag,
                        0,
                        DisplayIdDescriptors.typeIx(1400, 1050, 60, 0, false),
                        DisplayIdDescriptors.typeIx(1400, 1050, 60, 1, true),
                        DisplayIdDescriptors.typeIx(4096, 2160, 60, 2, false),
                        DisplayIdDescriptors.typeIx(4096, 2160, 60, 2, true)))
                .containsExactly(
                        Dmt.find(0x2A).orElseThrow().timing(),
                        Dmt.find(0x29).orElseThrow().timing(),
                        Dmt.find(0x57).orElseThrow().timing(),
                        Dmt.find(0x57).orElseThrow().timing(),
                        Dmt.find(0x58).orElseThrow().timing());
    }

    @Test
    void onlyTypeXHas420() {
        int[] descriptor = DisplayIdDescriptors.typeX(6, 0x80, 1920, 1080, 60, 0, 0, false);
        assertThat(read(0x2A, 0, descriptor))
                .extracting(DisplayIdTiming::chroma420)
                .containsExactly(Chroma420.ALSO);
        assertThat(read(0x24, 0, descriptor))
                .extracting(DisplayIdTiming::chroma420)
                .containsExactly(Chroma420.NOT_LISTED);
    }

    @Test
    void whatTheOptionsDoNotSayIsNotSo() {
        // Neither preferred nor at the video rate: VESA CVT rb2 of 1920 × 1080 at 60 Hz (../shared/reference/cvt.tsv),
        // 133.32 MHz.
        assertThat(read(0x11, 0, DisplayIdDescriptors.typeV(1920, 1080, 60, false, false)))
                .singleElement()
                .satisfies(timing -> {
                    assertThat(timing.preferred()).isFalse();
                    assertThat(timing.timing()).isNotNull();
                    assertThat(timing.timing().pixelClock()).isEqualTo(Frequency.ofHz(133_320_000));
                });
        assertThat(read(0x05, 0, DisplayIdDescriptors.typeIii(1400, 2, 60, false, true, false)))
                .extracting(DisplayIdTiming::preferred)
                .containsExactly(false);
        assertThat(read(0x2A, 0, DisplayIdDescriptors.typeX(6, 0x00, 1920, 1080, 60, 0, 0, false)))
                .extracting(DisplayIdTiming::chroma420)
                .containsExactly(Chroma420.NOT_LISTED);
    }

    @Test
    void reducedBlankingV3HasSyncAtTheEndUnlessItIsEarly() {
        // VESA CVT 2.0 (from memory): 6 lines behind sync as in v2; early sync stands in the middle of the blanking.
        assertThat(timings(0x2A, 0, DisplayIdDescriptors.typeX(6, 0x03, 3840, 2160, 60, 0, 0, false)))
                .extracting(RasterTiming::verticalBackPorch)
                .containsExactly(6);
        assertThat(timings(0x2A, 0, DisplayIdDescriptors.typeX(6, 0x0B, 3840, 2160, 60, 0, 0, false)))
                .allSatisfy(timing -> assertThat(timing.verticalBackPorch())
                        .isEqualTo((timing.verticalTotal() - timing.verticalActive()) / 2));
    }

    /** DisplayID 2.1a tables 4-23 and 4-52: both examples have 3920 pixels per line. */
    @ParameterizedTest
    @CsvSource({"60, 522798000", "120, 1076182000"})
    void reducedBlankingV3GivesTheClocksOfTheExamples(int rateHz, long clockHz) {
        for (int bytes = 6; bytes <= 8; bytes++) {
            int[] descriptor = DisplayIdDescriptors.typeX(bytes, 0x03, 3840, 2160, rateHz, 0, 0, false);
            assertThat(timings(0x2A, (bytes - 6) << 4, descriptor)).allSatisfy(timing -> {
                assertThat(timing.horizontalTotal()).isEqualTo(3920);
                assertThat(timing.pixelClock()).isEqualTo(Frequency.ofHz(clockHz));
            });
        }
    }

    /** DisplayID 2.1a §4 (from memory; an open decoder agrees): 80 + 8 · code; or 160 + 8 · code up to 5, then 160 − 8 · (code − 5). */
    @ParameterizedTest
    @CsvSource({"0x03, 80, 88, 96, 104, 112, 120, 128, 136", "0x13, 160, 168, 176, 184, 192, 200, 152, 144"})
    void theCodeOfAddedHorizontalBlankingHasTwoScales(
            int options, int b0, int b1, int b2, int b3, int b4, int b5, int b6, int b7) {
        int[] blanking = {b0, b1, b2, b3, b4, b5, b6, b7};
        for (int code = 0; code < 8; code++) {
            RasterTiming timing = timings(
                            0x2A, 0x10, DisplayIdDescriptors.typeX(7, options, 3840, 2160, 60, code, 0, false))
                    .get(0);
            assertThat(timing.horizontalTotal() - timing.horizontalActive()).isEqualTo(blanking[code]);
        }
    }

    @ParameterizedTest
    @CsvSource({"false, 0, 460", "false, 1, 495", "false, 7, 705", "true, 0, 300", "true, 1, 320", "true, 7, 440"})
    void theCodeOfAddedVerticalBlankingCountsInMicroseconds(boolean shortest, int code, int microseconds) {
        assertThat(timings(0x2A, 0x20, DisplayIdDescriptors.typeX(8, 0x0B, 3840, 2160, 260, 3, code, shortest)))
                .containsExactly(Cvt.timing(CvtRequest.progressive(
                        3840, 2160, Frequency.ofHz(260), new CvtBlanking.ReducedV3(104, microseconds, true))));
    }

    @Test
    void theRateOfTypeXHasTenBits() {
        assertThat(rate(6, 1024)).isEqualTo(256);
        assertThat(rate(7, 1024)).isEqualTo(1024);
        assertThat(rate(8, 257)).isEqualTo(257);
    }

    private long rate(int bytes, int rateHz) {
        Rational rate = timings(
                        0x2A, (bytes - 6) << 4, DisplayIdDescriptors.typeX(bytes, 0x02, 640, 480, rateHz, 0, 0, false))
                .get(0)
                .fieldRate()
                .hz();
        return rate.round();
    }

    private void assertRejected(int tag, int[] descriptor) {
        DefectLog defects = new DefectLog();
        assertThat(DisplayIdTimings.read(block(tag, 0, descriptor), defects)).isEmpty();
        assertThat(defects.defects())
                .extracting(EdidDefect::code)
                .containsExactly(DefectCode.DETAILED_TIMING_IMPOSSIBLE);
    }

    private List<RasterTiming> timings(int tag, int flags, int[]... descriptors) {
        return read(tag, flags, descriptors).stream()
                .map(DisplayIdTiming::timing)
                .toList();
    }

    private List<DisplayIdTiming> read(int tag, int flags, int[]... descriptors) {
        List<DisplayIdTiming> timings = DisplayIdTimings.read(block(tag, flags, descriptors), log);
        assertThat(log.defects()).isEmpty();
        return timings;
    }

    private static DisplayIdBlock block(int tag, int flags, int[]... descriptors) {
        byte[] bytes =
                DisplayIdBuilder.version(0x21).block(tag, flags, descriptors).build();
        return new DisplayIdBlock(new Block(bytes, 0), tag, flags, 8, bytes[7]);
    }
}
