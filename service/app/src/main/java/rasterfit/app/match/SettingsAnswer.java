package rasterfit.app.match;

import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Deinterlacer;
import rasterfit.match.Settings;
import rasterfit.quantity.Rational;

/**
 * What to set. Members that the processing does not have are absent.
 *
 * @param processing absent on a direct route
 * @param processingId which entry of the converter's list
 * @param outputTiming such as {@code vic:16}
 * @param outputActiveLines lines per frame
 * @param lineRepetition how often each line is sent
 * @param samplesPerLine of the digitiser
 * @param horizontalRepetition how often each sample is sent
 * @param captureFirstDot left edge of the captured window in dots from the leading edge of sync
 * @param captureDots width of the captured window in dots
 * @param pictureWidth columns of the output raster on which the captured window is drawn
 * @param pictureHeight rows of the output raster on which the captured lines are drawn
 * @param firstLine first captured line of the field
 * @param lines captured lines of the field
 * @param aspectControl of the display
 */
record SettingsAnswer(
        Settings.@Nullable Kind processing,
        @Nullable String processingId,
        @Nullable String outputTiming,
        @Nullable Integer outputActiveLines,
        @Nullable Integer lineRepetition,
        @Nullable Integer samplesPerLine,
        @Nullable Integer horizontalRepetition,
        @Nullable String captureFirstDot,
        @Nullable String captureDots,
        @Nullable Integer pictureWidth,
        @Nullable Integer pictureHeight,
        @Nullable Integer pictureLeft,
        @Nullable Integer pictureTop,
        @Nullable Integer firstLine,
        @Nullable Integer lines,
        @Nullable String rateLock,
        @Nullable String outputFieldRateHz,
        Deinterlacer.@Nullable Kind deinterlacer,
        AspectControl aspectControl) {

    private static @Nullable String text(@Nullable Rational exact) {
        return exact == null ? null : exact.toString();
    }

    // NullAway does not see the mark on a nested type that it reads from a class file; deinterlacer may be null.
    @SuppressWarnings("NullAway")
    static SettingsAnswer of(Settings settings) {
        return new SettingsAnswer(
                settings.processing(),
                settings.processingId(),
                settings.outputTiming(),
                settings.outputActiveLines(),
                settings.lineRepetition(),
                settings.samplesPerLine(),
                settings.horizontalRepetition(),
                text(settings.captureFirstDot()),
                text(settings.captureDots()),
                settings.pictureWidth(),
                settings.pictureHeight(),
                settings.pictureLeft(),
                settings.pictureTop(),
                settings.firstLine(),
                settings.lines(),
                settings.rateLock(),
                Plain.exactOrAbsent(settings.outputFieldRate()),
                settings.deinterlacer(),
                settings.aspectControl());
    }
}
