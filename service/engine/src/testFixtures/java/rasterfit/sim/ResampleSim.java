package rasterfit.sim;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * Follows numbered dots of one source line (or numbered lines of one source field) through the stages of a chain, each
 * of which takes the nearest thing at the centre of its own cell: dots, samples, columns of the output raster, columns
 * of the panel. Positions are exact fractions. When a centre falls exactly on a border, the later cell is taken.
 *
 * <p>What each dot's place would be without any rounding is followed beside it, edge by edge, to tell a dot that was
 * cut off from one that vanished in between.
 */
public final class ResampleSim {
    /** Marks a cell that shows no part of the picture. */
    public static final int NO_DOT = -1;

    private ResampleSim() {}

    /**
     * A digitised line of dots.
     *
     * @param dotsPerLine dots in a whole line, blanking included; may be broken, such as 855/2
     * @param firstDot dots from the start of the line to the left edge of active dot 0
     * @param dots active dots
     * @param samplesPerLine samples in a whole line; may be broken where a digital line is taken dot by dot
     * @param windowLeft left edge of the window, as part of the line; sample 0 begins exactly there
     * @param windowSamples width of the window in samples; where it is broken, only a part of the last sample is used
     */
    public record Sampling(
            BigFraction dotsPerLine,
            BigFraction firstDot,
            int dots,
            BigFraction samplesPerLine,
            BigFraction windowLeft,
            BigFraction windowSamples) {
        public Sampling(
                BigFraction dotsPerLine,
                BigFraction firstDot,
                int dots,
                int samplesPerLine,
                BigFraction windowLeft,
                int windowSamples) {
            this(
                    dotsPerLine,
                    firstDot,
                    dots,
                    BigFraction.of(samplesPerLine),
                    windowLeft,
                    BigFraction.of(windowSamples));
        }
    }

    /**
     * Lines of a field that need no sampling: each line is one cell already.
     *
     * @param lines lines of the picture, numbered from 0
     * @param firstKept first line kept; below 0 when the window begins above the picture
     * @param kept lines kept
     */
    public record Lines(int lines, int firstKept, int kept) {}

    /**
     * Where the scaled picture lies in the output raster.
     *
     * @param columns columns that the window is scaled to
     * @param first raster column of the first; may be below 0
     * @param rasterColumns columns of the raster
     */
    public record Placement(int columns, int first, int rasterColumns) {}

    /**
     * What the panel does with the raster.
     *
     * @param panelColumns columns of the panel
     * @param start left edge of the raster part shown, in raster columns
     * @param length width of the raster part shown, in raster columns
     * @param columns panel columns on which that part is shown
     * @param first first of these; may be below 0
     */
    public record Panel(int panelColumns, BigFraction start, BigFraction length, int columns, int first) {}

    /**
     * What is seen.
     *
     * @param panel dot number on every panel column, {@link #NO_DOT} where there is no picture
     * @param widths panel columns taken by every dot
     * @param inside dots whose place is wholly within the visible part
     * @param firstInside first of these, or NO_DOT
     * @param lastInside last of these, or NO_DOT
     * @param cut dots of whose place a part only is within the visible part
     * @param cropped dots whose place is wholly outside the visible part
     * @param vanished dots inside that got no column at all
     * @param leastWidth least width of the dots inside, 0 when one vanished; NO_DOT when none is inside
     * @param greatestWidth greatest width of the dots inside; NO_DOT when none is inside
     * @param edges where on the panel each dot would begin without any rounding, and where the last would end
     * @param visibleFrom left end of the visible part of the picture, on the panel
     * @param visibleTo right end of the same; not to the right of the left end when nothing is visible
     */
    public record Seen(
            List<Integer> panel,
            List<Integer> widths,
            int inside,
            int firstInside,
            int lastInside,
            int cut,
            int cropped,
            int vanished,
            int leastWidth,
            int greatestWidth,
            List<BigFraction> edges,
            BigFraction visibleFrom,
            BigFraction visibleTo) {}

    /** Follows the dots of one line. */
    public static Seen dots(Sampling sampling, Placement placement, Panel panel) {
        int[] samples = new int[-floor(sampling.windowSamples.negate())];
        Centres dots = Centres.of(
                sampling.windowLeft.multiply(sampling.dotsPerLine).subtract(sampling.firstDot),
                sampling.dotsPerLine.divide(sampling.samplesPerLine));
        for (int sample = 0; sample < samples.length; sample++) {
            int dot = dots.under(sample);
            samples[sample] = dot >= 0 && dot < sampling.dots ? dot : NO_DOT;
        }
        BigFraction[] edgesInWindow = new BigFraction[sampling.dots + 1];
        Arrays.setAll(
                edgesInWindow,
                dot -> sampling.firstDot
                        .add(dot)
                        .divide(sampling.dotsPerLine)
                        .subtract(sampling.windowLeft)
                        .multiply(sampling.samplesPerLine));
        return seen(samples, sampling.windowSamples, edgesInWindow, placement, panel);
    }

    /** Follows the lines of one field: the same chain turned upright, without the sampling stage. */
    public static Seen lines(Lines lines, Placement placement, Panel panel) {
        int[] kept = new int[lines.kept];
        for (int place = 0; place < kept.length; place++) {
            int line = lines.firstKept + place;
            kept[place] = line >= 0 && line < lines.lines ? line : NO_DOT;
        }
        BigFraction[] edges = new BigFraction[lines.lines + 1];
        Arrays.setAll(edges, line -> BigFraction.of(line - lines.firstKept));
        return seen(kept, BigFraction.of(kept.length), edges, placement, panel);
    }

    private static Seen seen(
            int[] window, BigFraction length, BigFraction[] edgesInWindow, Placement placement, Panel panel) {
        int[] shown = show(place(window, length, placement), panel);
        BigFraction[] edges = new BigFraction[edgesInWindow.length];
        Arrays.setAll(edges, i -> onPanel(inRaster(edgesInWindow[i], length, placement), panel));
        BigFraction left = max(
                BigFraction.ZERO,
                BigFraction.of(panel.first),
                onPanel(BigFraction.ZERO, panel),
                onPanel(inRaster(BigFraction.ZERO, length, placement), panel));
        BigFraction right = min(
                BigFraction.of(panel.panelColumns),
                BigFraction.of(panel.first + panel.columns),
                onPanel(BigFraction.of(placement.rasterColumns), panel),
                onPanel(inRaster(length, length, placement), panel));
        return measure(shown, edges, left, right);
    }

    /** Scales the window to its columns and lays them in the raster. */
    private static int[] place(int[] window, BigFraction length, Placement placement) {
        int[] raster = new int[placement.rasterColumns];
        Arrays.fill(raster, NO_DOT);
        Centres cells = Centres.of(BigFraction.ZERO, length.divide(placement.columns));
        for (int column = 0; column < placement.columns; column++) {
            int at = placement.first + column;
            if (at >= 0 && at < raster.length) {
                raster[at] = window[cells.under(column)];
            }
        }
        return raster;
    }

    /** Draws the shown part of the raster on the panel. */
    private static int[] show(int[] raster, Panel panel) {
        int[] shown = new int[panel.panelColumns];
        Arrays.fill(shown, NO_DOT);
        Centres columns = Centres.of(panel.start, panel.length.divide(panel.columns));
        for (int column = 0; column < panel.columns; column++) {
            int at = panel.first + column;
            int from = columns.under(column);
            if (at >= 0 && at < shown.length && from >= 0 && from < raster.length) {
                shown[at] = raster[from];
            }
        }
        return shown;
    }

    private static Seen measure(int[] shown, BigFraction[] edges, BigFraction left, BigFraction right) {
        int[] widths = new int[edges.length - 1];
        for (int dot : shown) {
            if (dot != NO_DOT) {
                widths[dot]++;
            }
        }
        int cropped = 0;
        int[] inside = IntStream.range(0, widths.length)
                .filter(dot -> compare(edges[dot], left) >= 0 && compare(edges[dot + 1], right) <= 0)
                .toArray();
        for (int dot = 0; dot < widths.length; dot++) {
            cropped += compare(edges[dot + 1], left) <= 0 || compare(edges[dot], right) >= 0 ? 1 : 0;
        }
        return new Seen(
                IntStream.of(shown).boxed().toList(),
                IntStream.of(widths).boxed().toList(),
                inside.length,
                inside.length == 0 ? NO_DOT : inside[0],
                inside.length == 0 ? NO_DOT : inside[inside.length - 1],
                widths.length - inside.length - cropped,
                cropped,
                (int) IntStream.of(inside).filter(dot -> widths[dot] == 0).count(),
                IntStream.of(inside).map(dot -> widths[dot]).min().orElse(NO_DOT),
                IntStream.of(inside).map(dot -> widths[dot]).max().orElse(NO_DOT),
                List.of(edges),
                left,
                right);
    }

    private static BigFraction inRaster(BigFraction windowCells, BigFraction windowLength, Placement placement) {
        return windowCells.multiply(placement.columns).divide(windowLength).add(placement.first);
    }

    private static BigFraction onPanel(BigFraction rasterColumns, Panel panel) {
        return rasterColumns
                .subtract(panel.start)
                .multiply(panel.columns)
                .divide(panel.length)
                .add(panel.first);
    }

    /**
     * The cells of one stage on those of the stage before: cell c has its centre at offset + (c + 1/2) · step of them, which
     * is (first + c · next) / scale in whole numbers.
     */
    private record Centres(long first, long next, long scale) {
        static Centres of(BigFraction offset, BigFraction step) {
            BigFraction first = offset.add(step.divide(2));
            BigInteger scale = first.getDenominator().multiply(step.getDenominator());
            return new Centres(
                    first.multiply(scale).getNumerator().longValueExact(),
                    step.multiply(scale).getNumerator().longValueExact(),
                    scale.longValueExact());
        }

        /** The cell of the stage before in which the centre lies. */
        int under(int cell) {
            return Math.toIntExact(Math.floorDiv(Math.addExact(first, Math.multiplyExact(cell, next)), scale));
        }
    }

    private static int floor(BigFraction value) {
        int towardsZero = value.intValue();
        return compare(BigFraction.of(towardsZero), value) > 0 ? towardsZero - 1 : towardsZero;
    }

    private static BigFraction max(BigFraction... values) {
        return Arrays.stream(values).max(ResampleSim::compare).orElseThrow();
    }

    private static BigFraction min(BigFraction... values) {
        return Arrays.stream(values).min(ResampleSim::compare).orElseThrow();
    }

    /** Not the library's comparison: version 1.2 orders two negative fractions by magnitude. */
    private static int compare(BigFraction a, BigFraction b) {
        return a.subtract(b).signum();
    }
}
