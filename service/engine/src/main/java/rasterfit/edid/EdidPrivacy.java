package rasterfit.edid;

import java.util.Arrays;

/**
 * Takes out of an EDID what tells one unit of a display from another of its kind: the serial number and the serial number
 * descriptors of the base block (E-EDID A2 §3.4.3, §3.10.3.1), such descriptors behind the data blocks of CTA-861, and in
 * DisplayID the serial numbers of product identification and tiled topology, the serial number text, and the container
 * identifier (1.3 and 2.1a; layout from memory, checked against an open decoder). Identifiers inside of vendors' own data
 * blocks are not known and stay.
 *
 * <p>Numbers become zero bytes, texts the character 0, since a text of zero bytes is none. Every checksum over what changed
 * is moved by the same amount: a right one stays right, and a wrong one stays the defect that it is. Whatever {@link
 * EdidReader} reads is the same before and after.
 */
public final class EdidPrivacy {
    private static final int SERIAL_OFFSET = 0x0C;
    private static final int SERIAL_BYTES = 4;
    private static final int DESCRIPTORS_OFFSET = 0x36;
    private static final int CHECKSUM_OFFSET = 127;

    private static final int TAG_SERIAL_TEXT = 0xFF;
    private static final int TEXT_OFFSET = 5;
    private static final byte TEXT_ZERO = '0';

    private static final int CTA_DETAILED_AT = 2;
    private static final int CTA_LEAST_DETAILED = 4;

    private static final int DISPLAY_ID_DATA = 5;
    private static final int DISPLAY_ID_MOST_BYTES = 121;
    private static final int DISPLAY_ID_HEADER = 3;

    private final byte[] edid;

    private EdidPrivacy(byte[] edid) {
        this.edid = edid;
    }

    /** A copy without serial numbers. Bytes that are no EDID, or no whole number of blocks, come back as they are. */
    public static byte[] withoutSerialNumbers(byte[] edid) {
        byte[] copy = edid.clone();
        if (EdidReader.isWholeNumberOfBlocks(copy.length)
                && EdidReader.read(copy).hasHeader()) {
            new EdidPrivacy(copy).clear();
        }
        return copy;
    }

    /** Whether an EDID has a serial number that {@link #withoutSerialNumbers} would take out. */
    public static boolean hasSerialNumbers(byte[] edid) {
        return !Arrays.equals(edid, withoutSerialNumbers(edid));
    }

    private void clear() {
        fill(0, SERIAL_OFFSET, SERIAL_BYTES, (byte) 0, CHECKSUM_OFFSET);
        clearDescriptors(0, DESCRIPTORS_OFFSET, CHECKSUM_OFFSET - 1);
        for (int block = Block.BYTES; block < edid.length; block += Block.BYTES) {
            if (at(block) == CtaExtension.TAG && at(block + CTA_DETAILED_AT) >= CTA_LEAST_DETAILED) {
                clearDescriptors(block, at(block + CTA_DETAILED_AT), CHECKSUM_OFFSET);
            } else if (at(block) == DisplayIdSection.EXTENSION_TAG) {
                clearSection(block);
            }
        }
    }

    /** Descriptors of 18 bytes from one offset in a block to another. */
    private void clearDescriptors(int block, int from, int end) {
        for (int offset = from; offset + DetailedTiming.BYTES <= end; offset += DetailedTiming.BYTES) {
            int start = block + offset;
            if (at(start) == 0 && at(start + 1) == 0 && at(start + 2) == 0 && at(start + 3) == TAG_SERIAL_TEXT) {
                fill(block, offset + TEXT_OFFSET, DetailedTiming.BYTES - TEXT_OFFSET, TEXT_ZERO, CHECKSUM_OFFSET);
            }
        }
    }

    /** A section has a checksum of its own, which takes up the change, so that that of its block stays as it is. */
    private void clearSection(int block) {
        int version = at(block + 1) >> 4;
        if (version != 1 && version != 2) {
            return;
        }
        int end = DISPLAY_ID_DATA + Math.min(at(block + 2), DISPLAY_ID_MOST_BYTES);
        int offset = DISPLAY_ID_DATA;
        while (offset + DISPLAY_ID_HEADER <= end) {
            int tag = at(block + offset);
            int length = at(block + offset + 2);
            int content = offset + DISPLAY_ID_HEADER;
            if ((tag == 0 && length == 0) || content + length > end) {
                return;
            }
            for (SerialField field : SerialField.values()) {
                if (field.tag == tag && field.from < length) {
                    int bytes = Math.min(field.bytes, length - field.from);
                    fill(block, content + field.from, bytes, field.with, end);
                }
            }
            offset = content + length;
        }
    }

    /** Where data blocks of DisplayID hold what belongs to one unit. */
    private enum SerialField {
        PRODUCT_1(0x00, 5, 4, (byte) 0),
        PRODUCT_2(0x20, 5, 4, (byte) 0),
        TEXT(0x0A, 0, 255, TEXT_ZERO),
        TILED_1(0x12, 18, 4, (byte) 0),
        TILED_2(0x28, 18, 4, (byte) 0),
        CONTAINER(0x29, 0, 16, (byte) 0);

        private final int tag;
        private final int from;
        private final int bytes;
        private final byte with;

        SerialField(int tag, int from, int bytes, byte with) {
            this.tag = tag;
            this.from = from;
            this.bytes = bytes;
            this.with = with;
        }
    }

    private void fill(int block, int offset, int length, byte with, int checksum) {
        int change = 0;
        for (int i = block + offset; i < block + offset + length; i++) {
            change += with - at(i);
            edid[i] = with;
        }
        edid[block + checksum] = (byte) (at(block + checksum) - change);
    }

    private int at(int offset) {
        return edid[offset] & 0xFF;
    }
}
