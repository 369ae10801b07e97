package rasterfit.gear;

import org.jspecify.annotations.Nullable;

/**
 * What is known of a display's own delay, in ms.
 *
 * @param timing label of the timing at which it holds; absent: any
 * @param referenceRow panel row at which it was read; absent: the top row
 */
public record LagReading(
        @Nullable String timing,
        Fact.Within ms,
        Method method,
        @Nullable Integer referenceRow,
        Basis basis) {

    /** How it was read. A reading from press to light contains the console too: an upper bound. */
    public enum Method {
        SPLIT_SIGNAL,
        PRESS_TO_LIGHT,
        NOT_STATED
    }
}
