package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.fraction;
import static rasterfit.Fractions.rational;

import java.util.Random;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.quantity.Rational;
import rasterfit.sim.ResampleSim;
import rasterfit.sim.ResampleSim.Lines;
import rasterfit.sim.ResampleSim.Panel;
import rasterfit.sim.ResampleSim.Placement;
import rasterfit.sim.ResampleSim.Sampling;
import rasterfit.sim.ResampleSim.Seen;

/**
 * Widths, crop and scale of dots and lines against the dot-by-dot simulation ({@link ResampleSim}) on random chains:
 * dot-locked or not, fewer samples than dots, windows beyond the picture, pictures beyond the raster, overscan, one sample
 * per panel pixel.
 */
class AxisMapSimTest {
    private static final int PANEL_MARGIN = 7;

    /** Where the raster lands on the panel: filling with overscan, or one to one on a larger or smaller panel. */
    private static PanelAxis randomPanel(Random random, int rasterColumns) {
        if (random.nextInt(3) == 0) {
            int pixels = 1 + random.nextInt(2 * rasterColumns);
            int shown = Math.min(pixels, rasterColumns);
            int start = (rasterColumns - shown) / 2;
            return new PanelAxis(Rational.of(start), Rational.of(shown), Rational.of(shown), shown, PANEL_MARGIN);
        }
        Rational overscan = Rational.of(new int[] {0, 30, 35, 50}[random.nextInt(4)], 1000);
        int pixels = 1 + random.nextInt(3 * rasterColumns);
        Rational active = Rational.of(rasterColumns);
        return new PanelAxis(
                active.times(overscan),
                active.times(Rational.ONE.minus(overscan.times(2))),
                Rational.of(pixels),
                pixels,
                PANEL_MARGIN);
    }

    private static Panel simulated(PanelAxis panel) {
        return new Panel(
                panel.pixels() + 2 * PANEL_MARGIN,
                fraction(panel.start()),
                fraction(panel.length()),
                panel.pixels(),
                (int) panel.offset());
    }

    private static Placement randomPlacement(Random random, int window) {
        int columns = 1 + random.nextInt(4 * window);
        int rasterColumns = 1 + random.nextInt(2 * columns);
        int first = Math.floorDiv(rasterColumns - columns, 2) + random.nextInt(7) - 3;
        return new Placement(columns, first, rasterColumns);
    }

    private static void assertAgree(AxisMap map, Seen seen) {
        AxisMap.Shape shape = map.measure();
        assertThat(shape.least()).as("least of %s", map).isEqualTo(Math.max(0, seen.leastWidth()));
        assertThat(shape.greatest()).as("greatest of %s", map).isEqualTo(Math.max(0, seen.greatestWidth()));
        // The simulation counts dots, a cut one for itself; the engine measures how much of them is cut off.
        BigFraction cropped = fraction(shape.cropped());
        assertThat(cropped)
                .as("cropped of %s", map)
                .isBetween(BigFraction.of(seen.cropped()), BigFraction.of(seen.cropped() + seen.cut()));
        if (seen.cut() > 0) {
            assertThat(cropped).as("cropped of %s", map).isNotEqualTo(BigFraction.of(seen.cropped()));
        }
        assertThat(shape.drawn())
                .as("drawn of %s", map)
                .isEqualTo(Rational.of(map.count()).minus(shape.cropped()).times(shape.scale()));
    }

    /** A digitised line: anchor of the sample grid anywhere, window in whole samples from it. */
    private record Line(BigFraction dotsPerLine, BigFraction firstDot, int dots, int samples, int start, int window) {
        static Line random(Random random, boolean dotLocked) {
            int halfDots = 20 + random.nextInt(100);
            if (dotLocked && halfDots % 2 != 0) {
                halfDots++;
            }
            int dots = 1 + random.nextInt(halfDots / 2);
            int samples = dotLocked ? halfDots / 2 * (1 + random.nextInt(4)) : 8 + random.nextInt(250);
            return new Line(
                    BigFraction.of(halfDots, 2),
                    BigFraction.of(random.nextInt(40), dotLocked || random.nextBoolean() ? 1 : 7),
                    dots,
                    samples,
                    random.nextInt(30) - 15,
                    1 + random.nextInt(samples));
        }

        BigFraction perDot() {
            return BigFraction.of(samples).divide(dotsPerLine);
        }

        /** With the grid's anchor {@code anchor} dots into the line. */
        Sampling simulated(BigFraction anchor) {
            return new Sampling(
                    dotsPerLine,
                    firstDot,
                    dots,
                    samples,
                    anchor.divide(dotsPerLine).add(BigFraction.of(start, samples)),
                    window);
        }
    }

    private static AxisMap map(Line line, BigFraction anchor, Placement placement, PanelAxis panel) {
        Rational first = rational(line.firstDot().subtract(anchor));
        return new AxisMap(
                first,
                line.dots(),
                first,
                line.dots(),
                rational(line.perDot()),
                Rational.of(line.start()),
                Rational.of(line.window()),
                placement.first(),
                placement.columns(),
                Rational.of(placement.rasterColumns()),
                panel);
    }

    private static void assertScale(AxisMap map, BigFraction stages) {
        assertThat(fraction(map.scale())).as("scale of %s", map).isEqualTo(stages);
    }

    @Test
    void scaledPicturesOfSampledLinesAgreeWithTheSimulation() {
        Random random = new Random(20_240_610);
        int underSampled = 0;
        for (int i = 0; i < 3000; i++) {
            Line line = Line.random(random, i % 3 == 0);
            BigFraction anchor = i % 3 == 0 ? line.firstDot() : BigFraction.of(random.nextInt(60), 3);
            Placement placement = randomPlacement(random, line.window());
            PanelAxis panel = randomPanel(random, placement.rasterColumns());
            AxisMap map = map(line, anchor, placement, panel);

            assertAgree(map, ResampleSim.dots(line.simulated(anchor), placement, simulated(panel)));
            assertScale(
                    map,
                    line.perDot()
                            .multiply(BigFraction.of(placement.columns(), line.window()))
                            .multiply(fraction(panel.extent()).divide(fraction(panel.length()))));
            underSampled += line.perDot().compareTo(BigFraction.ONE) < 0 ? 1 : 0;
        }
        assertThat(underSampled).isGreaterThan(100);
    }

    @Test
    void repeatedSamplesAgreeWithTheSimulation() {
        // Line repetition: the window fills the raster, every sample sent h times.
        Random random = new Random(20_240_611);
        for (int i = 0; i < 1500; i++) {
            Line line = Line.random(random, i % 3 == 0);
            BigFraction anchor = i % 3 == 0 ? line.firstDot() : BigFraction.of(random.nextInt(60), 3);
            int columns = line.window() * (1 + random.nextInt(3));
            Placement placement = new Placement(columns, 0, columns);
            PanelAxis panel = randomPanel(random, columns);

            assertAgree(
                    map(line, anchor, placement, panel),
                    ResampleSim.dots(line.simulated(anchor), placement, simulated(panel)));
        }
    }

    @Test
    void keptLinesAgreeWithTheSimulation() {
        Random random = new Random(20_240_612);
        for (int i = 0; i < 3000; i++) {
            int lines = 1 + random.nextInt(60);
            int kept = 1 + random.nextInt(70);
            int firstKept = random.nextInt(40) - 20;
            int above = random.nextInt(5);
            Placement placement = randomPlacement(random, kept);
            PanelAxis panel = randomPanel(random, placement.rasterColumns());
            AxisMap map = new AxisMap(
                    Rational.of(above),
                    lines,
                    Rational.of(above),
                    lines,
                    null,
                    Rational.of(above + firstKept),
                    Rational.of(kept),
                    placement.first(),
                    placement.columns(),
                    Rational.of(placement.rasterColumns()),
                    panel);

            assertAgree(map, ResampleSim.lines(new Lines(lines, firstKept, kept), placement, simulated(panel)));
            assertScale(
                    map,
                    BigFraction.of(placement.columns(), kept)
                            .multiply(fraction(panel.extent()).divide(fraction(panel.length()))));
        }
    }

    @Test
    void theDrawnPartIsCroppedForItself() {
        // Crop counts against the drawn dots as the simulation counts dots of a picture that has no others.
        Random random = new Random(20_240_613);
        for (int i = 0; i < 1000; i++) {
            Line line = Line.random(random, false);
            int used = 1 + random.nextInt(line.dots());
            int usedFirst = random.nextInt(line.dots() - used + 1);
            BigFraction anchor = BigFraction.of(random.nextInt(60), 3);
            Placement placement = randomPlacement(random, line.window());
            PanelAxis panel = randomPanel(random, placement.rasterColumns());
            AxisMap whole = map(line, anchor, placement, panel);
            AxisMap map = new AxisMap(
                    whole.first(),
                    whole.count(),
                    whole.first().plus(Rational.of(usedFirst)),
                    used,
                    whole.samplesPerDot(),
                    whole.captureStart(),
                    whole.captureLength(),
                    whole.pictureLeft(),
                    whole.pictureWidth(),
                    whole.rasterActive(),
                    panel);
            Line drawn = new Line(
                    line.dotsPerLine(),
                    line.firstDot().add(usedFirst),
                    used,
                    line.samples(),
                    line.start(),
                    line.window());
            Seen seen = ResampleSim.dots(drawn.simulated(anchor), placement, simulated(panel));

            assertThat(fraction(map.measure().croppedUsed()))
                    .as("drawn dots cropped of %s", map)
                    .isBetween(BigFraction.of(seen.cropped()), BigFraction.of(seen.cropped() + seen.cut()));
        }
    }
}
