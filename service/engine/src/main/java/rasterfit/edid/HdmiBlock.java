package rasterfit.edid;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/**
 * The HDMI data block (identifier 00-0C-03; HDMI 1.3a table 8-6; latency and HDMI VICs as in HDMI 1.4, from memory).
 *
 * @param declaredMaxTmdsClock absent where the block does not say
 * @param deepColourBits bits per pixel beyond 24 that are taken, ascending: 30, 36, 48
 * @param deepColourYcbcr444 the same depths hold for YCbCr 4:4:4
 * @param latency for progressive formats, absent where not stated
 * @param interlacedLatency for interlaced formats, absent where it is not stated apart
 * @param hdmiVics as listed, reserved numbers left out
 */
public record HdmiBlock(
        @Nullable Frequency declaredMaxTmdsClock,
        List<Integer> deepColourBits,
        boolean deepColourYcbcr444,
        boolean dualLinkDvi,
        @Nullable Latency latency,
        @Nullable Latency interlacedLatency,
        List<Integer> hdmiVics) {

    public HdmiBlock {
        deepColourBits = List.copyOf(deepColourBits);
        hdmiVics = List.copyOf(hdmiVics);
    }

    /** Declared delays in ms, even numbers up to 500; absent where unknown or not supported. */
    public record Latency(
            @Nullable Integer videoMs, @Nullable Integer audioMs) {}
}
