package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Panel;
import rasterfit.quantity.Rational;

/** Columns that mix dots: by a trace of every panel column through both filters, and worked by hand. */
class BlendTest {
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
            for (Set<Integer> dots : new PanelTrace(map).mixtures(taps, weighs)) {
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
    void fourSamplesPerDotOnAsManyColumnsAreNeverMixed() {
        // 256 dots of 4 samples, one column a sample, one panel pixel a column: every filter finds a sample's very
        // centre.
        AxisMap map = wholeWindow(256, Rational.of(4), 1024, 1920, filled(1920, 1920));

        assertThat(new Blend(map, 4, Panel.Filter.INTERPOLATING).percent(Steps.SILENT))
                .isEqualTo(Rational.ZERO);
    }
}
