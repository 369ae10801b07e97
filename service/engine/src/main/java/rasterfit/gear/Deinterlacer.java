package rasterfit.gear;

/**
 * @param addedFields delay beyond the newest lines, in source fields
 * @param wholeFrame whether the output shows frames, not fields (half of the motion)
 */
public record Deinterlacer(Kind kind, Fact addedFields, boolean wholeFrame) {
    /** Each field stretched | both fields interleaved | chosen by motion. */
    public enum Kind {
        BOB,
        WEAVE,
        MOTION_ADAPTIVE
    }

    /** The same with another delay. */
    public Deinterlacer withAddedFields(Fact other) {
        return new Deinterlacer(kind, other, wholeFrame);
    }
}
