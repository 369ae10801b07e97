package rasterfit.sim;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Which lines of a source field every output row needs, found by walking over the lines and comparing heights. Heights
 * are whole numbers of 1/(4 x lines x rows) of the picture, so every comparison is exact.
 */
public final class LinePicker {
    private final int lines;
    private final int rows;
    private final int taps;
    private final Scan scan;
    private final boolean bottomField;

    /** @param taps 1, or even: a filter over so many lines */
    public LinePicker(int lines, int rows, int taps, Scan scan, boolean bottomField) {
        if (lines < 1 || rows < 1) {
            throw new IllegalArgumentException("a picture has at least one line and one row");
        }
        if (taps != 1 && (taps < 2 || taps % 2 != 0)) {
            throw new IllegalArgumentException("taps must be 1 or even: " + taps);
        }
        if (bottomField && !scan.interlaced()) {
            throw new IllegalArgumentException("only an interlaced picture has a bottom field");
        }
        this.lines = lines;
        this.rows = rows;
        this.taps = taps;
        this.scan = scan;
        this.bottomField = bottomField;
    }

    /** The line that a row stands for: the one it would show without a filter. */
    int ownLine(int row) {
        long topEdge = 4L * lines * row;
        return scan.interlaced() ? nearest(topEdge + (long) scan.halfFrameLinesBelow() * rows) : containing(topEdge);
    }

    /** Every line that must be whole before the row can be computed: its own and all taps, each once, rising. */
    int[] neededLines(int row) {
        IntStream needed = IntStream.of(ownLine(row));
        if (taps > 1) {
            needed = IntStream.concat(needed, IntStream.of(tapLines(row)));
        }
        return needed.distinct().sorted().toArray();
    }

    /**
     * The lines under the filter: half of the taps above the row's centre and half below, a line that would lie beyond
     * the picture's edge being replaced by the edge line. A line exactly at the row's centre is taken as above it: the
     * two lines at the filter's ends are then equally far and the later one is taken.
     */
    int[] tapLines(int row) {
        long rowCentre = 2L * lines * (2L * row + 1);
        int lastAbove = -1;
        while (lastAbove + 1 < lines && centre(lastAbove + 1) <= rowCentre) {
            lastAbove++;
        }
        int[] tapped = new int[taps];
        for (int tap = 0; tap < taps; tap++) {
            int line = lastAbove - taps / 2 + 1 + tap;
            tapped[tap] = Math.max(0, Math.min(lines - 1, line));
        }
        return tapped;
    }

    /** The line that each row stands for. */
    public int[] ownLines() {
        return IntStream.range(0, rows).map(this::ownLine).toArray();
    }

    int[][] allNeededLines() {
        int[][] needed = new int[rows][];
        Arrays.setAll(needed, this::neededLines);
        return needed;
    }

    private int containing(long height) {
        for (int line = 0; line < lines; line++) {
            if (4L * rows * line <= height && height < 4L * rows * (line + 1)) {
                return line;
            }
        }
        throw new IllegalStateException("height outside the picture: " + height);
    }

    private int nearest(long height) {
        int best = 0;
        for (int line = 1; line < lines; line++) {
            if (Math.abs(centre(line) - height) <= Math.abs(centre(best) - height)) {
                best = line; // at equal distance the later line
            }
        }
        return best;
    }

    private long centre(int line) {
        if (!scan.interlaced()) {
            return 2L * rows * (2L * line + 1); // (line + 1/2) / lines
        }
        return (4L * line + (bottomField ? 3 : 1)) * rows; // (2 line + 1/2 or 3/2) / (2 lines)
    }
}
