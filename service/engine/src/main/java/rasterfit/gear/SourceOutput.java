package rasterfit.gear;

import org.jspecify.annotations.Nullable;

/**
 * One signal that a console gives.
 *
 * @param sync absent for digital links and where it is not stated
 * @param encoding of a composite kind; absent where it is not stated
 * @param level level of the sync; video level where not stated
 * @param bandwidthHz of the video amplifier
 */
public record SourceOutput(
        String id,
        Plug plug,
        Format format,
        @Nullable SyncKind sync,
        @Nullable ColourEncoding encoding,
        Level level,
        Fact bandwidthHz) {

    /** The same with another bandwidth. */
    public SourceOutput withBandwidthHz(Fact other) {
        return new SourceOutput(id, plug, format, sync, encoding, level, other);
    }
}
