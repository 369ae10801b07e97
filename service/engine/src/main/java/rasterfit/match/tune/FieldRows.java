package rasterfit.match.tune;

/**
 * Which source line of a field an output row shows, and up to which line it must have arrived, in whole-number
 * arithmetic.
 *
 * <p>Row j looks at field line j·n/no (nearest, k = 1) or, with an even number of taps, at the k lines around
 * (j + 1/2)·n/no − 1/2. A field of an interlaced source lies a quarter of a field line higher (top) or lower (bottom)
 * than a progressive picture would.
 *
 * @param lines n, lines of the field that are shown
 * @param rows no, output rows on which they are drawn
 * @param taps k
 * @param quarter +1 for a top field, −1 for a bottom field, 0 for a progressive one
 */
record FieldRows(int lines, int rows, int taps, int quarter) {
    /** The source line that row j shows. */
    int own(long row) {
        long line = Math.floorDiv(4L * lines * row + (long) quarter * rows, 4L * rows);
        return clamp(line);
    }

    /** The last source line that must have arrived wholly before row j can begin. */
    int needed(long row) {
        return clamp(lastTap(row));
    }

    private long lastTap(long row) {
        if (taps == 1) {
            return Math.floorDiv(4L * lines * row + (long) quarter * rows, 4L * rows);
        }
        return Math.floorDiv(4L * lines * row + 2L * lines - 2L * rows + (long) quarter * rows, 4L * rows) + taps / 2;
    }

    /** The first row that shows a source line, or the first below it where none does. */
    int firstRowOf(int line) {
        if (line == 0) {
            // Rows above the first line's own show it too.
            return 0;
        }
        long row = -Math.floorDiv(-(4L * rows * line - (long) quarter * rows), 4L * lines);
        return (int) Math.min(rows - 1L, Math.max(0, row));
    }

    /** Rows after which the pattern of lines repeats. */
    int period() {
        return rows / gcd(lines, rows);
    }

    /**
     * Rows at either end outside of which {@link #own} and {@link #needed} are strictly periodic, because no line is
     * clamped to the picture.
     */
    int edge() {
        return (int) ((taps / 2 + 2L) * rows / lines) + 2;
    }

    private int clamp(long line) {
        return (int) Math.min(lines - 1L, Math.max(0, line));
    }

    private static int gcd(int a, int b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
