package rasterfit.gear;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/** One output of a converter. */
public sealed interface ConverterOutput {
    String id();

    Plug plug();

    Format format();

    /**
     * @param maxTmdsClock 165 MHz where not stated (single-link DVI, HDMI 1.3a §8.3)
     * @param repetition whether pixels can be repeated to reach the least rate of the link (HDMI 1.3a §6.4)
     */
    record Digital(String id, Plug plug, LinkKind link, Frequency maxTmdsClock, boolean repetition)
            implements ConverterOutput {
        @Override
        public Format format() {
            return Format.TMDS;
        }
    }

    record Analog(
            String id,
            Plug plug,
            Format format,
            @Nullable SyncKind sync,
            Level level,
            @Nullable Frequency maxPixelClock)
            implements ConverterOutput {}
}
