package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Mode;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.Window;
import rasterfit.match.Modes;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Which sample counts are tried: whole multiples, standard lines (ITU-R BT.601 and square pixels), square samples. */
class SampleCountsTest {
    /** 15/8 of the subcarrier, 427.5 dots per line. */
    private static final Mode BROKEN =
            Modes.of("73828125/11", "855/2", "262", Scan.PROGRESSIVE, new Window(320, 240, 70, 18));

    private static int[] counts(SamplesPerLine allowed, Mode... modes) {
        Captured captured = Captured.of(List.of(modes), PixelAspectConvention.BROADCAST);
        return SampleCounts.worthTrying(captured, allowed, List.of(Rational.of(2), Rational.of(4)));
    }

    private static SamplesPerLine range(int min, int max) {
        return new SamplesPerLine.FreeRange(min, max);
    }

    @Test
    void aBrokenNumberOfDotsIsWholeEverySecondMultiple() {
        int[] counts = counts(range(640, 2600), BROKEN);

        assertThat(counts).contains(855, 1710, 2565);
        // 1282.5 is no count.
        assertThat(counts).doesNotContain(1282, 1283);
    }

    @Test
    void nothingElseIsTried() {
        // 855, 1710; the standard lines; 2 · 427.5 · 32/35 = 781.71 is too few, 4 · 427.5 · 32/35 = 1563.43.
        assertThat(counts(range(800, 2000), BROKEN))
                .containsExactly(855, 858, 864, 944, 1560, 1563, 1710, 1716, 1728, 1888);
    }

    @Test
    void everyMultipleWithinTheRangeIsTried() {
        // 341 · 2 to 341 · 7; the range ends with the last one.
        assertThat(counts(range(683, 2387), Modes.half525()))
                .contains(1023, 1364, 1705, 2046, 2387)
                .doesNotContain(341, 682, 2728);
    }

    @Test
    void standardLinesAndTheirDoublesAreTriedWithinTheRange() {
        assertThat(counts(range(600, 2000), Modes.half525())).contains(780, 858, 864, 944, 1560, 1716, 1728, 1888);
        assertThat(counts(range(860, 1700), Modes.half525()))
                .contains(864, 944, 1560)
                .doesNotContain(780, 858, 1716);
    }

    @Test
    void countsThatMakeSamplesSquareAreTried() {
        // 2 · 341 · 8/7 = 779.43 → 779; 4 · 341 · 8/7 = 1558.86 → 1559.
        assertThat(counts(range(600, 2000), Modes.half525())).contains(779, 1559);
        // 2 · 427.5 · 32/35 = 781.71 → 782.
        assertThat(counts(range(600, 2000), BROKEN)).contains(782);
    }

    @Test
    void lookAlikeModesHaveTheMultiplesOfEach() {
        Mode wide = Modes.of("78750000/11", "456", "262", Scan.PROGRESSIVE, new Window(320, 240, 92, 18));
        Mode narrow = Modes.of("59062500/11", "342", "262", Scan.PROGRESSIVE, new Window(256, 240, 64, 18));

        assertThat(counts(range(600, 1400), narrow, wide)).contains(684, 1026, 1368, 912);
    }

    @Test
    void aFixedListIsTakenAsItStandsInRisingOrder() {
        SamplesPerLine list = new SamplesPerLine.FixedList(List.of(1716, 720, 858));

        assertThat(counts(list, Modes.half525())).containsExactly(720, 858, 1716);
    }

    @Test
    void aRangeWithoutAnySuchCountOffersItsGreatest() {
        assertThat(counts(range(100, 110), Modes.half525())).containsExactly(110);
    }
}
