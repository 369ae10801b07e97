package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.LinkKind;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.SinkLimitsReader;
import rasterfit.match.AcceptanceGrade;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/**
 * Grades of acceptance at their edges. Sources: CTA-861-I table 1 (timings; note c: ±0.5 %), §4 (n·6 and n·6/1.001 Hz,
 * line-count variants), E-EDID A2 table 3.26 (rounding of range limits).
 */
class AcceptorTest {
    private static final FrequencyRange FIELDS = new FrequencyRange(Frequency.ofHz(48), Frequency.ofHz(62));
    private static final FrequencyRange LINES = new FrequencyRange(Frequency.ofHz(15_000), Frequency.ofHz(68_000));
    private static final Frequency CLOCK = Frequency.ofHz(150_000_000);

    private static SinkLimits sink(boolean continuous, @Nullable FrequencyRange fields, int... vics) {
        List<SinkLimits.ListedRaster> listed = new ArrayList<>();
        for (int vic : vics) {
            listed.addAll(SinkLimitsReader.listed("vic:" + vic, Cta861.find(vic).orElseThrow()));
        }
        return new SinkLimits(
                listed,
                fields,
                fields == null ? null : LINES,
                fields == null ? null : CLOCK,
                continuous,
                Frequency.ofHz(165_000_000),
                LinkKind.HDMI);
    }

    private static Acceptor.Verdict verdict(SinkLimits sink, Raster raster) {
        return new Acceptor(sink).grade(raster, "", Rational.of(4, 3), Steps.SILENT);
    }

    private static AcceptanceGrade grade(SinkLimits sink, Raster raster) {
        return verdict(sink, raster).grade();
    }

    private static Raster vic(int vic) {
        return Cta861.find(vic).orElseThrow().timing().raster();
    }

    private static Raster raster(long clock, int hActive, int hTotal, int vActive, int vTotal) {
        return new Raster(
                Frequency.ofHz(clock), hActive, Rational.of(hTotal), vActive, Rational.of(vTotal), Scan.PROGRESSIVE);
    }

    @Test
    void halfAPercentOfClockIsListedAndNoMore() {
        SinkLimits sink = sink(false, FIELDS, 31);
        // VIC 31, 148.5 MHz at 50 Hz, has no 1/1.001 kin: 148.5 · 1.005 = 149.2425 MHz.
        assertThat(grade(sink, raster(149_242_500, 1920, 2640, 1080, 1125))).isEqualTo(AcceptanceGrade.LISTED);
        assertThat(grade(sink, raster(149_242_501, 1920, 2640, 1080, 1125)))
                .isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
        assertThat(grade(sink, raster(147_757_500, 1920, 2640, 1080, 1125))).isEqualTo(AcceptanceGrade.LISTED);
        assertThat(grade(sink, raster(147_757_499, 1920, 2640, 1080, 1125)))
                .isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
    }

    /** Arithmetic: 59.6949 / 60 = −0.508 %, 59.6949 / 59.94006 = −0.409 %. */
    @Test
    void fiftyNineSixtyNineIsOutsideOfSixtyAndInsideOfItsKin() {
        Raster raster = vic(16).atFieldRate(Frequency.ofHz(3_281_250, 54_967));
        Acceptor.Verdict verdict = verdict(sink(false, FIELDS, 16), raster);
        assertThat(verdict.grade()).isEqualTo(AcceptanceGrade.LISTED);
        assertThat(verdict.listedAs()).isEqualTo("vic:16");
        assertThat(Objects.requireNonNull(verdict.deviations()).against()).startsWith("vic:16 at 59.94");
        assertThat(rasterfit.Fractions.printed(
                        Objects.requireNonNull(verdict.deviations()).pixelClockPercent(), 3))
                .isEqualTo("-0.409");
    }

    /** A worked example: 240 lines doubled at N = 858, 720 active: 524 lines, 27.0198 MHz, +0.073 %. */
    @Test
    void aDoubledRasterIsNearVic2() {
        Frequency clock =
                Frequency.parseHz("59062500/11").dividedBy(Rational.of(341)).times(858L * 2);
        Raster raster = new Raster(clock, 720, Rational.of(858), 480, Rational.of(524), Scan.PROGRESSIVE);
        Acceptor.Verdict verdict = verdict(sink(false, FIELDS, 3, 2, 16), raster);
        assertThat(verdict.grade()).isEqualTo(AcceptanceGrade.NEAR_LISTED);
        assertThat(verdict.listedAs()).isEqualTo("vic:2");
        assertThat(rasterfit.Fractions.printed(clock.hz(), 0)).isEqualTo("27019795");
        assertThat(rasterfit.Fractions.printed(
                        Objects.requireNonNull(verdict.deviations()).pixelClockPercent(), 3))
                .isEqualTo("0.073");
    }

    @Test
    void twoLinesAwayIsNoLongerNear() {
        Frequency clock = Frequency.ofHz(27_000_000).times(Rational.of(523, 525));
        Raster raster = new Raster(clock, 720, Rational.of(858), 480, Rational.of(523), Scan.PROGRESSIVE);
        assertThat(grade(sink(false, FIELDS, 2), raster)).isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
    }

    @Test
    void halfHeightTimingsAreListedWithAllTheirLineCounts() {
        for (int lines : new int[] {262, 263}) {
            assertThat(grade(sink(false, FIELDS, 8), raster(27_000_000, 1440, 1716, 240, lines)))
                    .isEqualTo(AcceptanceGrade.LISTED);
        }
        for (int lines : new int[] {312, 313, 314}) {
            assertThat(grade(sink(false, FIELDS, 23), raster(27_000_000, 1440, 1728, 288, lines)))
                    .isEqualTo(AcceptanceGrade.LISTED);
        }
        assertThat(grade(sink(false, FIELDS, 23), raster(27_000_000, 1440, 1728, 288, 316)))
                .isNotEqualTo(AcceptanceGrade.LISTED);
    }

    @Test
    void aLargerRasterIsGradedSoUnlessTheDisplayPromisesAllWithinItsLimits() {
        // 240 → 1200 lines at 60.1 Hz: more than 1080 rows, inside of every limit.
        Raster raster = raster(120_000_000, 1600, 1910, 1200, 1310);
        assertThat(raster.fieldRate().hz().floor()).isEqualTo(47);
        Raster inside = raster.atFieldRate(Frequency.ofHz(50));
        assertThat(grade(sink(false, FIELDS, 16), inside)).isEqualTo(AcceptanceGrade.LARGER_THAN_LISTED);
        assertThat(grade(sink(true, FIELDS, 16), inside)).isEqualTo(AcceptanceGrade.WITHIN_LIMITS_CONTINUOUS);
        assertThat(grade(sink(false, null, 16), inside)).isEqualTo(AcceptanceGrade.LARGER_THAN_LISTED);
        assertThat(grade(sink(false, null, 16), raster(40_000_000, 800, 1056, 600, 628)))
                .isEqualTo(AcceptanceGrade.LIMITS_UNKNOWN);
    }

    @Test
    void rangeLimitsGiveWayByHalfOfTheirUnit() {
        SinkLimits sink = sink(false, FIELDS, 16);
        Raster base = raster(40_000_000, 800, 1056, 600, 628);
        assertThat(grade(sink, base.atFieldRate(Frequency.ofHz(125, 2))))
                .isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
        assertThat(grade(sink, base.atFieldRate(Frequency.ofHz(6251, 100)))).isEqualTo(AcceptanceGrade.OUTSIDE_LIMITS);
        assertThat(grade(sink, base.atFieldRate(Frequency.ofHz(95, 2))))
                .isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
        assertThat(grade(sink, base.atFieldRate(Frequency.ofHz(4749, 100)))).isEqualTo(AcceptanceGrade.OUTSIDE_LIMITS);
        // 155 MHz and 68.5 kHz are the last; 60 Hz · 1141 lines = 68.46 kHz, · 1142 = 68.52 kHz.
        assertThat(grade(sink, raster(68_460L * 2000, 800, 2000, 600, 1141)))
                .isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
        assertThat(grade(sink, raster(68_520L * 2000, 800, 2000, 600, 1142))).isEqualTo(AcceptanceGrade.OUTSIDE_LIMITS);
        assertThat(grade(sink, raster(155_000_000, 800, 3000, 600, 861)))
                .isEqualTo(AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED);
        assertThat(grade(sink, raster(155_000_001, 800, 3000, 600, 861))).isEqualTo(AcceptanceGrade.OUTSIDE_LIMITS);
    }
}
