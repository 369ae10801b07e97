package rasterfit.app.gear;

import java.util.Base64;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.EdidReader;
import rasterfit.edid.EdidReading;

/** Reads the EDIDs that are written inside of gear, in the alphabet of RFC 4648 clause 4. */
final class EdidText {
    private static final int MOST_BYTES = EdidReader.BLOCK_BYTES * EdidReader.MOST_BLOCKS;
    private static final int MOST_CHARACTERS = (MOST_BYTES + 2) / 3 * 4;

    private EdidText() {}

    /** Null, and a fault at the place, if it is no base64, no number of whole blocks, or has no header. */
    static @Nullable EdidReading read(Place at, String base64) {
        byte[] bytes = bytes(at, base64);
        return bytes == null ? null : read(at, bytes);
    }

    /** Null, and a fault at the place, if it is no base64 or too much of it. */
    static byte @Nullable [] bytes(Place at, String base64) {
        if (base64.length() > MOST_CHARACTERS) {
            at.outOfRange("An EDID has at most " + MOST_BYTES + " bytes.", Integer.toString(MOST_BYTES));
            return null;
        }
        try {
            return Base64.getDecoder().decode(base64);
        } catch (IllegalArgumentException malformed) {
            at.wrongForm("An EDID is written in base64 without line breaks (RFC 4648 clause 4).");
            return null;
        }
    }

    /** Null, and a fault at the place, if the bytes are no number of whole blocks or have no header. */
    static @Nullable EdidReading read(Place at, byte[] bytes) {
        if (!EdidReader.isWholeNumberOfBlocks(bytes.length)) {
            at.outOfRange(
                    "The EDID has " + bytes.length + " bytes; it has to be a multiple of " + EdidReader.BLOCK_BYTES
                            + ", up to " + MOST_BYTES + ".",
                    EdidReader.BLOCK_BYTES + ".." + MOST_BYTES);
            return null;
        }
        EdidReading reading = EdidReader.read(bytes);
        if (!reading.hasHeader()) {
            at.invalid("The EDID does not begin with the header 00 FF FF FF FF FF FF 00.");
            return null;
        }
        return reading;
    }
}
