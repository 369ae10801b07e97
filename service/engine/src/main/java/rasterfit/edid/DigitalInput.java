package rasterfit.edid;

import org.jspecify.annotations.Nullable;

/**
 * A digital video input (E-EDID table 3.11); both facts exist from EDID 1.4 on.
 *
 * @param bitsPerColour 6 to 16, absent where not stated
 * @param connectorStandard the interface that the display names, absent where not stated
 */
public record DigitalInput(
        @Nullable Integer bitsPerColour, @Nullable Standard connectorStandard) {
    /** Byte 14h bits 3–0. */
    public enum Standard {
        DVI,
        HDMI_A,
        HDMI_B,
        MDDI,
        DISPLAY_PORT
    }
}
