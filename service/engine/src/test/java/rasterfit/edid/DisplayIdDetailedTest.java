package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Cta861;
import rasterfit.timing.Cvt;
import rasterfit.timing.CvtBlanking;
import rasterfit.timing.CvtRequest;
import rasterfit.timing.Dmt;
import rasterfit.timing.RasterTiming;

/** Types I, II, VI (DisplayID 1.3 §4.4) and VII (2.1a §4; clauses from memory), bytes worked by hand from published timings. */
class DisplayIdDetailedTest {
    /** CTA-861-I table 1, VIC 16, as type I: 14850 · 10 kHz, 16:9, positive syncs. */
    private static final int[] VIC_16 = {
        0x01, 0x3A, 0x00, 0x04, 0x7F, 0x07, 0x17, 0x01, 0x57, 0x80, 0x2B, 0x00, 0x37, 0x04, 0x2C, 0x00, 0x03, 0x80,
        0x04, 0x00
    };

    /** VIC 5 as type VII: 74250 · 1 kHz, interlaced; a frame has 45 lines of blanking, 2 · 2 before and 2 · 5 of sync. */
    private static final int[] VIC_5 = {
        0x09, 0x22, 0x01, 0x14, 0x7F, 0x07, 0x17, 0x01, 0x57, 0x80, 0x2B, 0x00, 0x37, 0x04, 0x2C, 0x00, 0x03, 0x80,
        0x09, 0x00
    };

    /** VESA DMT 09h, 800 × 600 at 60 Hz, as type II: 4000 · 10 kHz, 100 + 32 cells, 5 of front porch, 16 of sync. */
    private static final int[] DMT_9 = {0x9F, 0x0F, 0x00, 0x0C, 0x63, 0x3E, 0x4F, 0x57, 0x02, 0x1B, 0x03};

    /** CTA-861-I table 1, VIC 39, as type VI: 72000 · 1 kHz; two whole fields of 625 lines, blanking 170, +/− syncs. */
    private static final int[] VIC_39 = {
        0x3F, 0x19, 0x01, 0x7F, 0x87, 0x37, 0x04, 0x7F, 0x1F, 0x01, 0xA7, 0xA9, 0x2D, 0x89
    };

    private final DefectLog log = new DefectLog();

    @Test
    void typeICountsInTenKilohertz() {
        DisplayIdTiming timing = only(0x03, 0, VIC_16);
        assertThat(timing.timing()).isEqualTo(vic(16));
        assertThat(timing.basis()).isEqualTo(TimingBasis.STATED);
        assertThat(timing.preferred()).isFalse();
        assertThat(timing.accepted(3).label()).isEqualTo("displayid:3");
    }

    @Test
    void typeIiCountsInCellsAndHasBothPolaritiesInItsOptions() {
        assertThat(only(0x04, 0, DMT_9).timing())
                .isEqualTo(Dmt.find(0x09).orElseThrow().timing());
        // DMT 06h, 640 × 480 at 75 Hz with both syncs negative would leave both bits clear; here each alone.
        RasterTiming horizontal = only(0x04, 0, with(DMT_9, 3, 0x08)).timing();
        RasterTiming vertical = only(0x04, 0, with(DMT_9, 3, 0x04)).timing();
        assertThat(horizontal.horizontalPolarity()).hasToString("POSITIVE");
        assertThat(horizontal.verticalPolarity()).hasToString("NEGATIVE");
        assertThat(vertical.horizontalPolarity()).hasToString("NEGATIVE");
        assertThat(vertical.verticalPolarity()).hasToString("POSITIVE");
    }

    @Test
    void anOddFrameEndsItsFieldsOnHalfALine() {
        assertThat(only(0x22, 2, VIC_5).timing()).isEqualTo(vic(5));
    }

    @Test
    void anEvenFrameHasWholeFields() {
        assertThat(only(0x13, 0, VIC_39).timing()).isEqualTo(vic(39));
    }

    @Test
    void typeViMayCarryAnImageSize() {
        int[] withSize = Arrays.copyOf(with(VIC_39, 2, 0x41), 17);
        List<DisplayIdTiming> timings = read(0x13, 0, withSize, with(VIC_39, 2, 0x81));
        assertThat(timings).extracting(DisplayIdTiming::timing).containsExactly(vic(39), vic(39));
        assertThat(timings).extracting(DisplayIdTiming::preferred).containsExactly(false, true);
    }

    @ParameterizedTest
    @CsvSource({
        "0x03, 1, true, NOT_LISTED",
        "0x03, 2, true, NOT_LISTED",
        "0x22, 0, true, NOT_LISTED",
        "0x22, 1, true, NOT_LISTED",
        "0x22, 2, false, ALSO",
    })
    void bit7SaysPreferredOrInLaterTypeVii420(int tag, int revision, boolean preferred, Chroma420 chroma420) {
        DisplayIdTiming timing = only(tag, revision, with(VIC_16, 3, 0x84));
        assertThat(timing.preferred()).isEqualTo(preferred);
        assertThat(timing.chroma420()).isEqualTo(chroma420);
        DisplayIdTiming without = only(tag, revision, VIC_16);
        assertThat(without.preferred()).isFalse();
        assertThat(without.chroma420()).isEqualTo(Chroma420.NOT_LISTED);
    }

    /** The example of a whole structure in VESA DisplayID 2.0, as an open decoder keeps it among its test data. */
    @Test
    void theExampleOfTheStandardHasThreeTimingsOfReducedBlankingV2() {
        List<DisplayIdTiming> timings = read(
                0x22,
                0,
                new int[] {
                    0xC7, 0x7E, 0x08, 0x88, 0xFF, 0x0F, 0x4F, 0x00, 0x07, 0x80, 0x1F, 0x00, 0x6F, 0x08, 0x3D, 0x00,
                    0x2F, 0x00, 0x07, 0x00
                },
                new int[] {
                    0x5D, 0x94, 0x03, 0x08, 0xFF, 0x09, 0x4F, 0x00, 0x07, 0x80, 0x1F, 0x00, 0x9F, 0x05, 0x28, 0x00,
                    0x1A, 0x00, 0x07, 0x00
                },
                new int[] {
                    0xC7, 0x08, 0x02, 0x08, 0x7F, 0x07, 0x4F, 0x00, 0x07, 0x80, 0x1F, 0x00, 0x37, 0x04, 0x1E, 0x00,
                    0x10, 0x00, 0x07, 0x00
                });
        // VESA DMT 1.13 prints the first; CVT 1.2 makes the others.
        assertThat(timings)
                .extracting(DisplayIdTiming::timing)
                .containsExactly(Dmt.find(0x57).orElseThrow().timing(), reducedV2(2560, 1440), reducedV2(1920, 1080));
        assertThat(timings).extracting(DisplayIdTiming::preferred).containsExactly(true, false, false);
    }

    @Test
    void typeViiSaysHowManyBytesItsDescriptorsHaveBeyond20() {
        assertThat(read(0x22, 0x22, Arrays.copyOf(VIC_5, 22), Arrays.copyOf(VIC_5, 22)))
                .extracting(DisplayIdTiming::timing)
                .containsExactly(vic(5), vic(5));
    }

    @Test
    void countsThatNoRasterHasAreLeftOut() {
        assertImpossible(0x03, new int[20]);
        int[] ones = new int[20];
        Arrays.fill(ones, 0xFF);
        assertImpossible(0x03, ones);
        // 280 of blanking hold 88 + 44; 88 + 193 are one too many, 88 + 192 leave no back porch.
        assertImpossible(0x03, with(VIC_16, 10, 192));
        assertThat(only(0x03, 0, with(VIC_16, 10, 191)).timing().horizontalBackPorch())
                .isZero();
        assertImpossible(0x03, with(VIC_16, 18, 41));
        // An interlaced frame of 1081 lines; one line of sync for two fields.
        assertImpossible(0x22, with(VIC_5, 12, 0x38));
        assertImpossible(0x22, with(VIC_5, 18, 0));
    }

    @Test
    void whatIsNoWholeTimingIsADefect() {
        assertThat(read(0x03, 0, VIC_16, new int[19])).hasSize(1);
        assertThat(read(0x04, 0, DMT_9, new int[10])).hasSize(1);
        assertThat(read(0x13, 0, VIC_39, new int[2])).hasSize(1);
        assertThat(read(0x13, 0, VIC_39, Arrays.copyOf(with(VIC_39, 2, 0x41), 16)))
                .hasSize(1);
        assertThat(log.defects())
                .extracting(EdidDefect::code)
                .containsOnly(DefectCode.DATA_BLOCK_TOO_SHORT)
                .hasSize(4);
    }

    private void assertImpossible(int tag, int[] descriptor) {
        DefectLog defects = new DefectLog();
        assertThat(DisplayIdTimings.read(block(tag, 2, descriptor), defects)).isEmpty();
        assertThat(defects.defects())
                .extracting(EdidDefect::code)
                .containsExactly(DefectCode.DETAILED_TIMING_IMPOSSIBLE);
    }

    private DisplayIdTiming only(int tag, int flags, int[] descriptor) {
        List<DisplayIdTiming> timings = read(tag, flags, descriptor);
        assertThat(log.defects()).isEmpty();
        assertThat(timings).hasSize(1);
        return timings.get(0);
    }

    private List<DisplayIdTiming> read(int tag, int flags, int[]... descriptors) {
        return DisplayIdTimings.read(block(tag, flags, descriptors), log);
    }

    private static DisplayIdBlock block(int tag, int flags, int[]... descriptors) {
        byte[] bytes =
                DisplayIdBuilder.version(0x12).block(tag, flags, descriptors).build();
        return new DisplayIdBlock(new Block(bytes, 0), tag, flags, 8, bytes[7]);
    }

    private static int[] with(int[] descriptor, int offset, int value) {
        int[] changed = descriptor.clone();
        changed[offset] = value;
        return changed;
    }

    private static RasterTiming reducedV2(int width, int height) {
        return Cvt.timing(CvtRequest.progressive(width, height, Frequency.ofHz(60), CvtBlanking.REDUCED_V2));
    }

    private static RasterTiming vic(int vic) {
        return Cta861.find(vic).orElseThrow().timing();
    }
}
