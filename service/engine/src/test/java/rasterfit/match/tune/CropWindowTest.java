package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which lines are kept: the fewest drawn lines lost, then balanced, then the earliest. */
class CropWindowTest {
    @Test
    void of224DrawnLines216LoseFourAtEachEdge() {
        // A worked example: drawn lines 12 to 235; kept 16 to 231.
        assertThat(CropWindow.first(240, 216, 12, 224)).isEqualTo(16);
    }

    @Test
    void marginsAreBalancedWhereAllDrawnLinesFit() {
        // 100 drawn lines from 20 on in a window of 110: 5 above, 5 below.
        assertThat(CropWindow.first(240, 110, 20, 100)).isEqualTo(15);
    }

    @Test
    void theEarlierOfTwoEquallyBalancedWindowsIsTaken() {
        // 216 of 225: 4 + 5 or 5 + 4 lines are lost.
        assertThat(CropWindow.first(240, 216, 8, 225)).isEqualTo(12);
    }

    @Test
    void aWindowEndsWithTheLines() {
        // Lines 230 to 239 are drawn; balance would need lines beyond the last.
        assertThat(CropWindow.first(240, 100, 230, 10)).isEqualTo(140);
    }

    @Test
    void everyWindowIsTheBestByCountingLines() {
        Random random = new Random(20_240_620);
        for (int i = 0; i < 2000; i++) {
            int lines = 1 + random.nextInt(60);
            int kept = 1 + random.nextInt(lines);
            int used = 1 + random.nextInt(lines);
            int usedFirst = random.nextInt(lines - used + 1);
            int best = IntStream.rangeClosed(0, lines - kept)
                    .boxed()
                    .min(Comparator.comparingLong((Integer first) -> lost(first, kept, usedFirst, used))
                            .thenComparingInt(first -> imbalance(first, kept, usedFirst, used))
                            .thenComparingInt(first -> first))
                    .orElseThrow();

            assertThat(CropWindow.first(lines, kept, usedFirst, used))
                    .as("%d of %d lines, %d drawn from %d", kept, lines, used, usedFirst)
                    .isEqualTo(best);
        }
    }

    private static long lost(int first, int kept, int usedFirst, int used) {
        return IntStream.range(usedFirst, usedFirst + used)
                .filter(line -> line < first || line >= first + kept)
                .count();
    }

    /** Between what lies from the window's edge to the picture's above and below, outside counting as less than nothing. */
    private static int imbalance(int first, int kept, int usedFirst, int used) {
        return Math.abs((usedFirst - first) - (first + kept - usedFirst - used));
    }
}
