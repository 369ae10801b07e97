package rasterfit.app.display;

import java.util.Base64;
import rasterfit.edid.EdidPrivacy;
import rasterfit.edid.EdidReading;

/**
 * An EDID as it was sent, and as it is written.
 *
 * @param port {@code hdmi-1}, or {@code hdmi-1/older} for a menu state
 * @param base64 without serial numbers unless they are to be kept
 * @param removed whether there were any that are not kept
 */
record SentEdid(String port, EdidReading reading, String base64, boolean removed) {
    static SentEdid of(String port, EdidReading reading, byte[] bytes, boolean keepsSerialNumbers) {
        boolean removes = !keepsSerialNumbers && EdidPrivacy.hasSerialNumbers(bytes);
        byte[] written = removes ? EdidPrivacy.withoutSerialNumbers(bytes) : bytes;
        return new SentEdid(port, reading, Base64.getEncoder().encodeToString(written), removes);
    }
}
