package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Panel;
import rasterfit.quantity.Rational;

/** Windows that are no whole number of samples, blending by filters, and cases worked by hand. */
class AxisMapTest {
    private static PanelAxis filled(int raster, int pixels) {
        return new PanelAxis(Rational.ZERO, Rational.of(raster), Rational.of(pixels), pixels, 0);
    }

    private static AxisMap wholeWindow(int dots, Rational perDot, int width, int raster, PanelAxis panel) {
        return new AxisMap(
                Rational.ZERO,
                dots,
                Rational.ZERO,
                dots,
                perDot,
                Rational.ZERO,
                Rational.of(dots).times(perDot),
                (raster - width) / 2,
                width,
                Rational.of(raster),
                panel);
    }

    /** A window that ends anywhere, of any number of samples per dot, scaled and panned. */
    private static AxisMap random(Random random) {
        int dots = 2 + random.nextInt(40);
        Rational perDot = Rational.of(1 + random.nextInt(60), 1 + random.nextInt(15));
        Rational length = Rational.of(dots + random.nextInt(20)).times(perDot);
        int width = 1 + random.nextInt(120);
        int raster = Math.max(1, width + random.nextInt(40) - 20);
        Rational overscan = Rational.of(random.nextInt(4), 100);
        int pixels = 1 + random.nextInt(200);
        boolean oneToOne = random.nextInt(4) == 0;
        PanelAxis panel = oneToOne
                ? filled(raster, raster)
                : new PanelAxis(
                        overscan.times(raster),
                        Rational.ONE.minus(overscan.times(2)).times(raster),
                        Rational.of(pixels),
                        pixels,
                        0);
        Rational first = Rational.of(random.nextInt(20), 3);
        return new AxisMap(
                first,
                dots,
                first,
                dots,
                perDot,
                Rational.ZERO,
                length,
                Math.floorDiv(raster - width, 2),
                width,
                Rational.of(raster),
                panel);
    }

    @Test
    void windowsOfAFractionOfSamplesAgreeWithATraceFromThePanel() {
        Random random = new Random(20_240_614);
        int compared = 0;
        for (int i = 0; i < 1500; i++) {
            AxisMap map = random(random);
            AxisMap.Shape shape = map.measure();
            if (shape.cropped().signum() == 0) {
                int[] widths = new PanelTrace(map).widths();
                assertThat(shape.least())
                        .as("%s", map)
                        .isEqualTo(Arrays.stream(widths).min().orElseThrow());
                assertThat(shape.greatest())
                        .as("%s", map)
                        .isEqualTo(Arrays.stream(widths).max().orElseThrow());
                compared++;
            }
        }
        assertThat(compared).as("maps without crop").isGreaterThan(150);
    }

    @Test
    void blendedColumnsAgreeWithATraceFromThePanel() {
        Random random = new Random(20_240_615);
        for (int i = 0; i < 1500; i++) {
            AxisMap map = random(random);
            int taps = new int[] {1, 2, 4, 6}[random.nextInt(4)];
            boolean interpolating = random.nextBoolean();
            Panel.Filter filter = interpolating ? Panel.Filter.INTERPOLATING : Panel.Filter.NEAREST;
            // One sample per panel pixel leaves an interpolating panel nothing to interpolate.
            boolean sampleOnPixel = map.panel().extent().equals(map.panel().length())
                    && map.panel().start().isWhole();
            boolean weighs = interpolating && !sampleOnPixel;

            int picture = 0;
            int mixed = 0;
            for (var dots : new PanelTrace(map).mixtures(taps, weighs)) {
                boolean shows = dots.stream().anyMatch(dot -> dot >= 0 && dot < map.count());
                picture += shows ? 1 : 0;
                mixed += shows && dots.size() > 1 ? 1 : 0;
            }
            Rational expected = picture == 0 ? Rational.ZERO : Rational.of(100L * mixed, picture);
            assertThat(new Blend(map, taps, filter).percent(Steps.SILENT))
                    .as("%d taps, %s, %s", taps, filter, map)
                    .isEqualTo(expected);
        }
    }

    @Test
    void fourSamplesPerDotOnAPanelOfTheSameWidthMakeEqualDots() {
        // 256 dots of 4 samples, 4 columns a dot, one to one: every dot 4 wide, nothing mixed.
        AxisMap map = wholeWindow(256, Rational.of(4), 1024, 1920, filled(1920, 1920));

        assertThat(map.measure().least()).isEqualTo(4);
        assertThat(map.measure().greatest()).isEqualTo(4);
        assertThat(map.scale()).isEqualTo(Rational.of(4));
        assertThat(new Blend(map, 1, Panel.Filter.INTERPOLATING).percent(Steps.SILENT))
                .isEqualTo(Rational.ZERO);
    }

    @Test
    void sevenColumnsForThreeDotsMakeDotsOfTwoAndThree() {
        // Centres at 3/14, 9/14, 15/14, 21/14, 27/14, 33/14, 39/14 of a dot: 0 0 1 1 1 2 2.
        AxisMap map = wholeWindow(3, Rational.ONE, 7, 7, filled(7, 7));

        assertThat(map.measure().least()).isEqualTo(2);
        assertThat(map.measure().greatest()).isEqualTo(3);
    }

    @Test
    void aDotThatVanishesHasWidthNought() {
        // Three dots on two columns: centres at 3/4 and 9/4, so the middle one is lost.
        assertThat(wholeWindow(3, Rational.ONE, 2, 2, filled(2, 2)).measure().least())
                .isZero();
    }

    @Test
    void twoTapsOverTwiceTheDotsMixEveryColumnBetweenDots() {
        // Two dots on four columns: centres at 1/4, 3/4, 5/4, 7/4. The taps are the samples around: border and 0; 0 and
        // 1;
        // 0 and 1; 1 and border: all four are mixed.
        AxisMap map = wholeWindow(2, Rational.ONE, 4, 4, filled(4, 4));

        assertThat(new Blend(map, 2, Panel.Filter.NEAREST).percent(Steps.SILENT))
                .isEqualTo(Rational.of(100));
        assertThat(new Blend(map, 1, Panel.Filter.NEAREST).percent(Steps.SILENT))
                .isEqualTo(Rational.ZERO);
    }

    @Test
    void overscanCutsAFractionOfALineFromEachEdge() {
        // 3 % of 1080 rows is 32.4 rows; 240 lines of 4.5 rows lose 7.2 lines at each edge.
        AxisMap map = new AxisMap(
                Rational.ZERO,
                240,
                Rational.of(8),
                224,
                null,
                Rational.ZERO,
                Rational.of(240),
                0,
                1080,
                Rational.of(1080),
                new PanelAxis(Rational.parse("32.4"), Rational.parse("1015.2"), Rational.of(1080), 1080, 0));
        AxisMap.Shape shape = map.measure();

        assertThat(shape.cropped()).isEqualTo(Rational.parse("14.4"));
        // Lines 8 to 231 lie inside of 7.2 and 232.8.
        assertThat(shape.croppedUsed()).isEqualTo(Rational.ZERO);
        assertThat(shape.drawn()).isEqualTo(Rational.of(1080));
    }

    @Test
    void aTubeHasNoGridToCount() {
        AxisMap map = wholeWindow(3, Rational.ONE, 7, 7, filled(7, 7).withoutGrid());

        assertThat(map.measure().least()).isNull();
        assertThat(map.measure().greatest()).isNull();
        assertThat(map.measure().scale()).isEqualTo(Rational.of(7, 3));
    }
}
