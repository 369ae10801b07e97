package rasterfit.edid;

import java.io.ByteArrayOutputStream;

/**
 * Writes a section of DisplayID as an extension block of an EDID, after the tables of VESA DisplayID 1.3 and 2.1a (from
 * memory). It shares no code with the reader. {@link DisplayIdDescriptors} makes the payloads of timing blocks.
 */
public final class DisplayIdBuilder {
    private static final int BLOCK_BYTES = 128;
    private static final int MOST_DATA_BYTES = 121;

    private final ByteArrayOutputStream data = new ByteArrayOutputStream();
    private final int version;

    private DisplayIdBuilder(int version) {
        this.version = version;
    }

    /** A section of a version: high digit version, low digit revision, as in 0x12, 0x13, 0x20, 0x21. */
    public static DisplayIdBuilder version(int version) {
        return new DisplayIdBuilder(version);
    }

    /** A data block: tag, revision and flags, length, payload. */
    public DisplayIdBuilder block(int tag, int flags, int[]... payload) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int[] part : payload) {
            for (int value : part) {
                bytes.write(value);
            }
        }
        data.write(tag);
        data.write(flags);
        data.write(bytes.size());
        data.writeBytes(bytes.toByteArray());
        if (data.size() > MOST_DATA_BYTES) {
            throw new IllegalStateException("a section in an extension holds " + MOST_DATA_BYTES + " bytes");
        }
        return this;
    }

    /** Bytes as they stand, for what breaks the rules. */
    public DisplayIdBuilder bytes(int... values) {
        for (int value : values) {
            data.write(value);
        }
        return this;
    }

    /** Tag 09h of 1.x: clocks in 10 kHz less one, rates in kHz and Hz, least blanking, flags. */
    public DisplayIdBuilder rangeLimits(
            int minClock10KHz,
            int maxClock10KHz,
            int minLineKHz,
            int maxLineKHz,
            int minHorizontalBlanking,
            int minFieldHz,
            int maxFieldHz,
            int minVerticalBlanking,
            int flags) {
        return block(
                0x09,
                0,
                DisplayIdDescriptors.littleEndian(minClock10KHz - 1, 3),
                DisplayIdDescriptors.littleEndian(maxClock10KHz - 1, 3),
                new int[] {minLineKHz, maxLineKHz},
                DisplayIdDescriptors.littleEndian(minHorizontalBlanking, 2),
                new int[] {minFieldHz, maxFieldHz},
                DisplayIdDescriptors.littleEndian(minVerticalBlanking, 2),
                new int[] {flags});
    }

    /** Tag 25h of 2.x: clocks in kHz less one, rates in Hz, the greatest with two more bits since revision 1. */
    public DisplayIdBuilder dynamicRangeLimits(
            int revision, int minClockKHz, int maxClockKHz, int minFieldHz, int maxFieldHz, boolean seamless) {
        return block(
                0x25,
                revision,
                DisplayIdDescriptors.littleEndian(minClockKHz - 1, 3),
                DisplayIdDescriptors.littleEndian(maxClockKHz - 1, 3),
                new int[] {minFieldHz, maxFieldHz & 0xFF, (seamless ? 0x80 : 0) | (maxFieldHz >> 8)});
    }

    /** The 128 bytes, with the checksum of the section; that of the EDID block is left to {@link EdidBuilder}. */
    public byte[] build() {
        byte[] content = data.toByteArray();
        byte[] block = new byte[BLOCK_BYTES];
        block[0] = 0x70;
        block[1] = (byte) version;
        block[2] = (byte) MOST_DATA_BYTES;
        System.arraycopy(content, 0, block, 5, content.length);
        int sum = 0;
        for (int i = 1; i < 5 + MOST_DATA_BYTES; i++) {
            sum += block[i];
        }
        block[5 + MOST_DATA_BYTES] = (byte) -sum;
        return block;
    }
}
