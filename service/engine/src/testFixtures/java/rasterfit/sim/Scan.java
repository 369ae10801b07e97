package rasterfit.sim;

/**
 * How the lines of one source field lie in the picture, and, for interlaced fields each shown as a picture of its own
 * (bob), where a row that is not filtered looks for its line.
 *
 * <p>Progressive: n lines of height 1/n; a row takes the line that contains its top edge. Interlaced: two fields of n
 * lines in a picture of 2n frame lines; a row takes the field line whose centre is nearest to a point a given distance
 * below the row's top edge. With distance nought this is the same rule as in the progressive case, since a point lies
 * in the line whose centre is nearest (on the border between two lines: the later one).
 */
public enum Scan {
    /** One field is the whole picture. */
    PROGRESSIVE(0),
    /** Bob; a row looks at its top edge: the progressive rule unchanged. */
    BOB_TOP_EDGE(0),
    /** Bob; a row looks half a frame line, 1/(4n) of the picture, below its top edge. */
    BOB_HALF_FRAME_LINE_BELOW(1),
    /** Bob; a row looks one frame line, 1/(2n) of the picture, below its top edge. */
    BOB_FRAME_LINE_BELOW(2);

    private final int halfFrameLinesBelow;

    Scan(int halfFrameLinesBelow) {
        this.halfFrameLinesBelow = halfFrameLinesBelow;
    }

    /** Whether fields alternate between the even and the odd frame lines. */
    public boolean interlaced() {
        return this != PROGRESSIVE;
    }

    int halfFrameLinesBelow() {
        return halfFrameLinesBelow;
    }
}
