package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.fraction;

import java.util.Random;
import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.quantity.Rational;
import rasterfit.sim.ResampleSim;
import rasterfit.sim.ResampleSim.Lines;
import rasterfit.sim.ResampleSim.Panel;
import rasterfit.sim.ResampleSim.Placement;
import rasterfit.sim.ResampleSim.Sampling;
import rasterfit.sim.ResampleSim.Seen;

/**
 * Dot widths by edges, as the engine computes them, against the dot-by-dot simulation ({@link ResampleSim}), and against
 * the definition applied to every panel column where the simulation cannot go (windows of broken sample counts).
 */
class AxisMapTest {
    private static final Rational[] DOTS_PER_LINE = {
        Rational.of(341),
        Rational.of(342),
        Rational.of(855, 2),
        Rational.of(456),
        Rational.of(2736, 5),
        Rational.of(858)
    };

    @Test
    void sampledDotsAgreeWithTheSimulation() {
        Random random = new Random(341);
        int vanishing = 0;
        int uneven = 0;
        for (int i = 0; i < 3000; i++) {
            Rational dotsPerLine = DOTS_PER_LINE[random.nextInt(DOTS_PER_LINE.length)];
            int dots = 20 + random.nextInt((int) dotsPerLine.floor() - 40);
            int firstDot = random.nextInt((int) dotsPerLine.floor() - dots);
            int samples = random.nextInt(4) == 0
                    ? (int) dotsPerLine.times(2L * (1 + random.nextInt(3))).floor()
                    : 150 + random.nextInt(2500);
            Rational perDot = Rational.of(samples).dividedBy(dotsPerLine);
            int start = random.nextInt(40) - 20;
            int window = Math.max(1, (int) perDot.times(dots).ceil() + random.nextInt(41) - 20);
            AxisMap map = new AxisMap(
                    Rational.ZERO,
                    dots,
                    Rational.ZERO,
                    dots,
                    perDot,
                    Rational.of(start),
                    Rational.of(window),
                    random.nextInt(400) - 100,
                    1 + random.nextInt(2000),
                    Rational.of(300 + random.nextInt(1700)),
                    panel(random, 0));
            AxisMap placed = withPanelOf(map, random);
            Rational left = Rational.of(firstDot).dividedBy(dotsPerLine).plus(Rational.of(start, samples));
            Seen seen = ResampleSim.dots(
                    new Sampling(
                            fraction(dotsPerLine), BigFraction.of(firstDot), dots, samples, fraction(left), window),
                    new Placement((int) placed.pictureWidth(), (int) placed.pictureLeft(), (int)
                            placed.rasterActive().floor()),
                    simulated(placed.panel()));
            AxisMap.Shape shape = placed.measure();
            assertSame(shape, seen, dots, placed.toString());
            vanishing += seen.inside() > 0 && seen.leastWidth() == 0 ? 1 : 0;
            uneven += seen.leastWidth() > 0 && seen.leastWidth() < seen.greatestWidth() ? 1 : 0;
        }
        assertThat(vanishing).as("cases in which a dot vanishes").isGreaterThan(100);
        assertThat(uneven).as("cases of uneven dots").isGreaterThan(100);
    }

    @Test
    void linesAgreeWithTheSimulation() {
        Random random = new Random(262);
        for (int i = 0; i < 3000; i++) {
            int lines = 20 + random.nextInt(560);
            int firstKept = random.nextInt(60) - 30;
            int kept = Math.max(1, lines - random.nextInt(60));
            AxisMap map = withPanelOf(
                    new AxisMap(
                            Rational.ZERO,
                            lines,
                            Rational.ZERO,
                            lines,
                            null,
                            Rational.of(firstKept),
                            Rational.of(kept),
                            random.nextInt(300) - 100,
                            1 + random.nextInt(2000),
                            Rational.of(200 + random.nextInt(2000)),
                            panel(random, 0)),
                    random);
            Seen seen = ResampleSim.lines(
                    new Lines(lines, firstKept, kept),
                    new Placement((int) map.pictureWidth(), (int) map.pictureLeft(), (int)
                            map.rasterActive().floor()),
                    simulated(map.panel()));
            assertSame(map.measure(), seen, lines, map.toString());
        }
    }

    @Test
    void brokenWindowsAgreeWithTheDefinitionColumnByColumn() {
        Random random = new Random(855);
        for (int i = 0; i < 400; i++) {
            Rational dotsPerLine = DOTS_PER_LINE[random.nextInt(DOTS_PER_LINE.length)];
            int dots = 50 + random.nextInt(200);
            int samples = 200 + random.nextInt(2000);
            Rational perDot = Rational.of(samples).dividedBy(dotsPerLine);
            Rational first = Rational.of(random.nextInt(40) - 20, 3);
            AxisMap map = withPanelOf(
                    new AxisMap(
                            first,
                            dots,
                            first,
                            dots,
                            random.nextInt(3) == 0 ? null : perDot,
                            Rational.of(random.nextInt(50) - 25, 7),
                            perDot.times(dots).plus(Rational.of(random.nextInt(20), 11)),
                            random.nextInt(200) - 60,
                            200 + random.nextInt(1500),
                            Rational.of(640 + random.nextInt(1300)),
                            panel(random, 0)),
                    random);
            assertByDefinition(map);
        }
    }

    /** 216 visible lines of 5 rows: a worked crop; every line 5 rows high. */
    @Test
    void fiveRowsForEachOf216LinesOnAPanelOf1080() {
        AxisMap map = new AxisMap(
                Rational.ZERO,
                240,
                Rational.of(12),
                216,
                null,
                Rational.of(12),
                Rational.of(216),
                0,
                1080,
                Rational.of(1080),
                new PanelAxis(Rational.ZERO, Rational.of(1080), Rational.of(1080), 1080, 0));
        AxisMap.Shape shape = map.measure();
        assertThat(shape.scale()).isEqualTo(Rational.of(5));
        assertThat(shape.cropped()).isEqualTo(Rational.of(24));
        assertThat(shape.croppedUsed()).isEqualTo(Rational.ZERO);
        assertThat(shape.least()).isEqualTo(5);
        assertThat(shape.greatest()).isEqualTo(5);
    }

    @Test
    void overscanCutsAFractionOfALineFromEachEdge() {
        // 3 % of 1080 rows are 32.4 rows; 240 lines of 4.5 rows lose 7.2 lines at each edge, of which lines 0 to 7 and
        // 232
        // to 239 are not drawn.
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
        assertThat(shape.croppedUsed()).isEqualTo(Rational.ZERO);
        assertThat(shape.drawn()).isEqualTo(Rational.of(1080));
    }

    private static void assertSame(AxisMap.Shape shape, Seen seen, int count, String what) {
        if (seen.inside() == 0) {
            assertThat(shape.greatest()).as(what).isEqualTo(0);
        } else {
            assertThat(shape.least()).as(what).isEqualTo(seen.leastWidth());
            assertThat(shape.greatest()).as(what).isEqualTo(seen.greatestWidth());
        }
        // What is cropped lies between what is gone whole and what is at least cut.
        assertThat(shape.cropped())
                .as(what)
                .isBetween(Rational.of(seen.cropped()), Rational.of(seen.cropped() + seen.cut()));
        assertThat(seen.inside() + seen.cut() + seen.cropped()).isEqualTo(count);
    }

    private static void assertByDefinition(AxisMap map) {
        int[] widths = new int[map.count()];
        Integer pixels = map.panel().pixels();
        for (int column = 0; column < (pixels == null ? 0 : pixels); column++) {
            Integer dot = dotOn(map, column);
            if (dot != null) {
                widths[dot]++;
            }
        }
        Rational left = toDots(map, map.panel().start().max(Rational.of(Math.max(0, map.pictureLeft()))));
        Rational right = toDots(
                map,
                map.panel()
                        .start()
                        .plus(map.panel().length())
                        .min(Rational.of(map.pictureLeft() + map.pictureWidth()))
                        .min(map.rasterActive()));
        int least = Integer.MAX_VALUE;
        int greatest = 0;
        for (int dot = 0; dot < map.count(); dot++) {
            Rational from = map.first().plus(Rational.of(dot));
            if (!from.isLessThan(left) && !from.plus(Rational.ONE).isGreaterThan(right)) {
                least = Math.min(least, widths[dot]);
                greatest = Math.max(greatest, widths[dot]);
            }
        }
        AxisMap.Shape shape = map.measure();
        assertThat(shape.greatest()).as(map.toString()).isEqualTo(greatest);
        assertThat(shape.least()).as(map.toString()).isEqualTo(least == Integer.MAX_VALUE ? 0 : least);
    }

    /** The definition: the centre of a panel column, traced back to the nearest sample of every stage. */
    private static @Nullable Integer dotOn(AxisMap map, int column) {
        PanelAxis panel = map.panel();
        Rational inRaster = panel.start()
                .plus(Rational.of(2L * column + 1, 2).times(panel.length()).dividedBy(panel.extent()));
        long raster = inRaster.floor();
        long picture = raster - map.pictureLeft();
        if (raster < 0
                || !Rational.of(raster).isLessThan(map.rasterActive())
                || picture < 0
                || picture >= map.pictureWidth()) {
            return null;
        }
        Rational inCapture = map.captureStart()
                .plus(Rational.of(2 * picture + 1, 2).times(map.captureLength()).dividedBy(map.pictureWidth()));
        Rational perDot = map.samplesPerDot();
        Rational inDots = perDot == null
                ? inCapture
                : Rational.of(2 * inCapture.floor() + 1, 2).dividedBy(perDot);
        long dot = inDots.minus(map.first()).floor();
        return dot >= 0 && dot < map.count() ? (int) dot : null;
    }

    private static Rational toDots(AxisMap map, Rational rasterColumn) {
        Rational perDot = map.samplesPerDot() == null ? Rational.ONE : map.samplesPerDot();
        return rasterColumn
                .minus(Rational.of(map.pictureLeft()))
                .times(map.captureLength())
                .dividedBy(map.pictureWidth())
                .plus(map.captureStart())
                .dividedBy(perDot);
    }

    private static AxisMap withPanelOf(AxisMap map, Random random) {
        return new AxisMap(
                map.first(),
                map.count(),
                map.usedFirst(),
                map.usedCount(),
                map.samplesPerDot(),
                map.captureStart(),
                map.captureLength(),
                map.pictureLeft(),
                map.pictureWidth(),
                map.rasterActive(),
                panel(random, (int) map.rasterActive().floor()));
    }

    /** One-to-one, filled, or with overscan of up to 6 % at each edge. */
    private static PanelAxis panel(Random random, int active) {
        if (active == 0) {
            return new PanelAxis(Rational.ZERO, Rational.ONE, Rational.ONE, 1, 0);
        }
        int kind = random.nextInt(3);
        if (kind == 0) {
            return new PanelAxis(Rational.ZERO, Rational.of(active), Rational.of(active), active, 0);
        }
        int columns = 500 + random.nextInt(2000);
        Rational overscan = kind == 1 ? Rational.ZERO : Rational.of(random.nextInt(60), 1000);
        return new PanelAxis(
                overscan.times(active),
                Rational.of(active).times(Rational.ONE.minus(overscan.times(2))),
                Rational.of(columns),
                columns,
                0);
    }

    private static Panel simulated(PanelAxis panel) {
        int pixels = panel.pixels() == null ? 0 : panel.pixels();
        return new Panel(pixels, fraction(panel.start()), fraction(panel.length()), pixels, 0);
    }
}
