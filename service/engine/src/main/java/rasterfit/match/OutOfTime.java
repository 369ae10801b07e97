package rasterfit.match;

/** A match took longer than its caller allows. */
public final class OutOfTime extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public OutOfTime() {
        super("the match did not end within the time allowed");
    }
}
