package rasterfit.match;

import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Deinterlacer;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * What to set. Members that the processing does not have are absent.
 *
 * @param processing absent on a direct route
 * @param processingId of the converter's list
 * @param outputTiming label of the output timing of a raster scaler
 * @param outputActiveLines lines per frame of the output
 * @param lineRepetition how often each line is sent
 * @param samplesPerLine of the digitiser
 * @param horizontalRepetition how often each sample is sent
 * @param captureFirstDot left edge of the captured window, in dots of the mode with the greatest share from the
 *     leading edge of sync
 * @param captureDots width of the captured window in such dots
 * @param pictureWidth columns of the output raster on which the captured window is drawn
 * @param pictureHeight rows of the output raster on which the captured lines are drawn
 * @param pictureLeft first of these columns; negative where as many fall off at the left
 * @param pictureTop first of these rows
 * @param firstLine first captured line of the field
 * @param lines captured lines of the field
 * @param rateLock {@code SOURCE_LOCKED}, {@code FREE_RUNNING} or {@code VARIABLE_REFRESH}
 * @param aspectControl of the display
 */
public record Settings(
        @Nullable Kind processing,
        @Nullable String processingId,
        @Nullable String outputTiming,
        @Nullable Integer outputActiveLines,
        @Nullable Integer lineRepetition,
        @Nullable Integer samplesPerLine,
        @Nullable Integer horizontalRepetition,
        @Nullable Rational captureFirstDot,
        @Nullable Rational captureDots,
        @Nullable Integer pictureWidth,
        @Nullable Integer pictureHeight,
        @Nullable Integer pictureLeft,
        @Nullable Integer pictureTop,
        @Nullable Integer firstLine,
        @Nullable Integer lines,
        @Nullable String rateLock,
        @Nullable Frequency outputFieldRate,
        Deinterlacer.@Nullable Kind deinterlacer,
        AspectControl aspectControl) {

    /** Settings of a raster that passes as it is. */
    public static Settings of(@Nullable Kind kind, @Nullable String processingId, AspectControl control) {
        return new Settings(
                kind,
                processingId,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                control);
    }

    public enum Kind {
        FORMAT_ONLY,
        LINE_REPEAT,
        RASTER_SCALE
    }
}
