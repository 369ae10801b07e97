package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** Which counts make a raster, and what follows from them; the numbers are those of CTA-861-I table 1. */
class RasterCountsTest {
    private static final Frequency CLOCK_720P = Frequency.ofHz(74_250_000);

    /** VIC 4, 1280 × 720p: 1650 × 750, porches 110/40/220 and 5/5/20 (CTA-861-I table 1). */
    private static RasterTiming timing720p() {
        return timing(1280, 110, 40, 220, 720, 5, 5, 20, 750, Scan.PROGRESSIVE);
    }

    private static RasterTiming timing(
            int width,
            int before,
            int sync,
            int behind,
            int lines,
            int above,
            int vsync,
            int below,
            int total,
            Scan scan) {
        return new RasterTiming(
                CLOCK_720P,
                width,
                before,
                sync,
                behind,
                lines,
                above,
                vsync,
                below,
                total,
                scan,
                Polarity.POSITIVE,
                Polarity.POSITIVE);
    }

    private static Raster raster(long clockHz, int width, String lineTotal, int lines, String frameTotal) {
        return new Raster(
                Frequency.ofHz(clockHz),
                width,
                Rational.parse(lineTotal),
                lines,
                Rational.parse(frameTotal),
                Scan.PROGRESSIVE);
    }

    @Test
    void aRasterHasAClockAPictureAndBlankingInBothDirections() {
        // A line or frame without blanking has no room for sync, one without picture shows nothing.
        assertThatCode(() -> raster(1, 1, "2", 1, "2")).doesNotThrowAnyException();
        assertThatIllegalArgumentException().isThrownBy(() -> raster(0, 1, "2", 1, "2"));
        assertThatIllegalArgumentException().isThrownBy(() -> raster(1, 0, "2", 1, "2"));
        assertThatIllegalArgumentException().isThrownBy(() -> raster(1, 2, "2", 1, "2"));
        assertThatIllegalArgumentException().isThrownBy(() -> raster(1, 1, "2", 0, "2"));
        assertThatIllegalArgumentException().isThrownBy(() -> raster(1, 1, "2", 2, "2"));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 40, 220, 5, 5, 20",
        "110, 0, 220, 5, 5, 20",
        "110, 40, 0, 5, 5, 20",
        "110, 40, 220, 0, 5, 20",
        "110, 40, 220, 5, 0, 20",
        "110, 40, 220, 5, 5, 0"
    })
    void eachPartOfTheBlankingMayBeEmpty(int before, int sync, int behind, int above, int vsync, int below) {
        // E-EDID A2 table 3.21: porch and sync are counted from 0.
        int total = 720 + above + vsync + below;
        RasterTiming timing = timing(1280, before, sync, behind, 720, above, vsync, below, total, Scan.PROGRESSIVE);
        assertThat(timing.horizontalTotal()).isEqualTo(1280 + before + sync + behind);
    }

    @ParameterizedTest
    @CsvSource({
        "-1, 40, 220, 5, 5, 20",
        "110, -1, 220, 5, 5, 20",
        "110, 40, -1, 5, 5, 20",
        "110, 40, 220, -1, 5, 20",
        "110, 40, 220, 5, -1, 20",
        "110, 40, 220, 5, 5, -1"
    })
    void noPartOfTheBlankingIsNegative(int before, int sync, int behind, int above, int vsync, int below) {
        int total = 720 + above + vsync + below;
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> timing(1280, before, sync, behind, 720, above, vsync, below, total, Scan.PROGRESSIVE));
    }

    @Test
    void theLinesOfAFrameAddUpExactlyOrToHalfALinePerField() {
        // VIC 5: 1080 + 2·(2 + 5 + 15) = 1124, and each field ends on half a line: 1125. VIC 39: 1080 + 2·(23 + 5 + 57)
        // = 1250.
        assertThatCode(() -> timing(1920, 88, 44, 148, 1080, 2, 5, 15, 1125, Scan.INTERLACED))
                .doesNotThrowAnyException();
        assertThatCode(() -> timing(1920, 32, 168, 184, 1080, 23, 5, 57, 1250, Scan.INTERLACED))
                .doesNotThrowAnyException();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> timing(1920, 88, 44, 148, 1080, 2, 5, 15, 1126, Scan.INTERLACED));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> timing(1920, 88, 44, 148, 1080, 2, 5, 15, 1123, Scan.INTERLACED));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> timing(1280, 110, 40, 220, 720, 5, 5, 20, 751, Scan.PROGRESSIVE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> timing(1280, 110, 40, 220, 720, 5, 5, 20, 749, Scan.PROGRESSIVE));
    }

    @Test
    void anotherFrontPorchLengthensEveryField() {
        // The 240-line variants of VIC 8 have 4 or 5 lines of front porch, 262 or 263 in all (CTA-861-I table 1).
        RasterTiming shorter = timing(1440, 38, 124, 114, 240, 4, 3, 15, 262, Scan.PROGRESSIVE);
        assertThat(shorter.withVerticalFrontPorch(5))
                .isEqualTo(timing(1440, 38, 124, 114, 240, 5, 3, 15, 263, Scan.PROGRESSIVE));
        // Two fields of two lines more each.
        assertThat(timing(1920, 88, 44, 148, 1080, 2, 5, 15, 1125, Scan.INTERLACED)
                        .withVerticalFrontPorch(4))
                .isEqualTo(timing(1920, 88, 44, 148, 1080, 4, 5, 15, 1129, Scan.INTERLACED));
    }

    @Test
    void sameCountsAreSameActiveAndSameTotals() {
        // 1920 × 1080 by CTA-861-I table 1: VIC 16 and 31 differ in the line total alone, VIC 5 in scan, VIC 4 in both
        // actives.
        Raster vic16 = Cta861.find(16).orElseThrow().timing().raster();
        Raster vic31 = Cta861.find(31).orElseThrow().timing().raster();
        Raster vic5 = Cta861.find(5).orElseThrow().timing().raster();
        assertThat(vic16.hasSameCountsAs(vic16.atFieldRate(Frequency.ofHz(50)))).isTrue();
        assertThat(vic16.hasSameActiveAs(vic31)).isTrue();
        assertThat(vic16.hasSameCountsAs(vic31)).isFalse();
        assertThat(vic16.hasSameActiveAs(vic5)).isFalse();
        assertThat(vic16.hasSameCountsAs(vic5)).isFalse();
        assertThat(raster(1, 2, "4", 2, "4").hasSameActiveAs(raster(1, 3, "4", 2, "4")))
                .isFalse();
        assertThat(raster(1, 2, "4", 2, "4").hasSameActiveAs(raster(1, 2, "4", 3, "4")))
                .isFalse();
        assertThat(raster(1, 2, "4", 2, "4").hasSameCountsAs(raster(1, 2, "4", 2, "5")))
                .isFalse();
    }

    @Test
    void thePictureBeginsBehindSyncAndBackPorch() {
        // CTA-861-I figures of VIC 4 and 16: lines 26 to 745 of 750 and 42 to 1121 of 1125, counted from the first of
        // sync.
        assertThat(timing720p().firstActiveLine()).isEqualTo(25);
        assertThat(timing(1920, 88, 44, 148, 1080, 4, 5, 36, 1125, Scan.PROGRESSIVE)
                        .firstActiveLine())
                .isEqualTo(41);
    }

    @Test
    void theSignsOfTheTablesAreThePolaritiesOfSync() {
        assertThat(Polarity.ofSign('+')).isEqualTo(Polarity.POSITIVE);
        assertThat(Polarity.ofSign('-')).isEqualTo(Polarity.NEGATIVE);
    }

    @Test
    void aNumberedTimingHasAPositiveCodeARasterAndAShapeForEachRepetition() {
        // CTA-861-I table 3: code 0 means that there is no code.
        List<RasterTiming> one = List.of(timing720p());
        List<Rational> square = List.of(Rational.ONE);
        assertThatCode(() -> numbered(1, one, List.of(1), square)).doesNotThrowAnyException();
        assertThatIllegalArgumentException().isThrownBy(() -> numbered(0, one, List.of(1), square));
        assertThatIllegalArgumentException().isThrownBy(() -> numbered(4, List.of(), List.of(1), square));
        assertThatIllegalArgumentException().isThrownBy(() -> numbered(4, one, List.of(), List.of()));
        assertThatIllegalArgumentException().isThrownBy(() -> numbered(4, one, List.of(1, 2), square));
    }

    private static VideoTiming numbered(
            int vic, List<RasterTiming> variants, List<Integer> repetitions, List<Rational> aspects) {
        return new VideoTiming(vic, variants, null, repetitions, Rational.parse("16/9"), aspects);
    }
}
