package rasterfit.gear;

import org.jspecify.annotations.Nullable;

/**
 * What an adapter makes of one kind of signal.
 *
 * @param fromSync absent: any
 * @param fromLevel absent: any
 * @param toSync absent where the new format carries none
 */
public record Conversion(
        Format fromFormat,
        @Nullable SyncKind fromSync,
        @Nullable Level fromLevel,
        Format toFormat,
        @Nullable SyncKind toSync,
        Level toLevel) {

    public boolean takes(Format format, @Nullable SyncKind sync, Level level) {
        return format == fromFormat
                && (fromSync == null || fromSync == sync)
                && (fromLevel == null || fromLevel == level);
    }
}
