package rasterfit.match.tune;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.rule.Refusal;

/**
 * What is captured and where it is drawn in the output raster, without regard to the number of samples.
 *
 * @param firstLine first captured line of the field, counted from the first line of {@link Captured}; negative where
 *     lines above it are captured too
 * @param lines captured lines of the field
 * @param rows rows on which they are drawn
 * @param top first of these rows
 * @param vertical number of the vertical choice, which placements of equal vertical share
 * @param across how the line is captured and drawn
 * @param refusal a limit of the scaler that this breaks; absent if none
 */
record Placement(
        int firstLine,
        int lines,
        int rows,
        int top,
        int vertical,
        Across across,
        @Nullable Refusal refusal) {

    /** The horizontal part of a placement. */
    sealed interface Across {
        /** The captured stretch on a fixed number of columns. */
        record Columns(int columns) implements Across {}

        /** Every captured sample on a whole number of columns. */
        record WholeSamples(int columnsPerSample) implements Across {}

        /**
         * A window of the line, sample by sample.
         *
         * @param name what the window was chosen for
         * @param start in dots of the lead mode from the left edge of the captured stretch; absent: centred on it
         * @param dots width in dots of the lead mode; absent where {@code samples} fixes it
         * @param samples width in samples; absent where {@code dots} fixes it
         */
        record Stretch(
                String name,
                @Nullable Rational start,
                @Nullable Rational dots,
                @Nullable Integer samples) implements Across {}
    }
}
