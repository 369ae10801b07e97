package rasterfit.edid;

/**
 * One data block of a DisplayID section (DisplayID 1.3 and 2.1a, data block structure; from memory): a tag, a byte of
 * revision and flags, a length, then the payload. The timing blocks of CTA-861 carry the same byte of flags and the same
 * payload behind their extended tag (CTA-861-I table 64).
 *
 * @param tag which kind of block
 * @param flags the whole second byte: bits 2–0 revision, the others as the kind of block has them
 * @param payload offset of the first byte behind the header
 * @param length of the payload; it lies inside the EDID block
 */
record DisplayIdBlock(Block block, int tag, int flags, int payload, int length) {
    static final int TYPE_I = 0x03;
    static final int TYPE_II = 0x04;
    static final int TYPE_III = 0x05;
    static final int TYPE_IV = 0x06;
    static final int DMT_BITMAP = 0x07;
    static final int VIC_BITMAP = 0x08;
    static final int RANGE_LIMITS = 0x09;
    static final int TYPE_V = 0x11;
    static final int TYPE_VI = 0x13;
    static final int TYPE_VII = 0x22;
    static final int TYPE_VIII = 0x23;
    static final int TYPE_IX = 0x24;
    static final int DYNAMIC_RANGE_LIMITS = 0x25;
    static final int INTERFACE_FEATURES = 0x26;
    static final int TYPE_X = 0x2A;
    static final int ADAPTIVE_SYNC = 0x2B;
    static final int CTA_DATA_BLOCKS = 0x81;

    int revision() {
        return flags & 7;
    }

    boolean flag(int bit) {
        return (flags >> bit & 1) != 0;
    }

    /** A field of {@link #flags}. */
    int flagBits(int lowestBit, int width) {
        return flags >> lowestBit & (1 << width) - 1;
    }

    /** Bits 6–4 of types VII and X say how many bytes a descriptor has beyond the least (2.1a §4, from memory). */
    int furtherBytes() {
        return flagBits(4, 3);
    }

    int end() {
        return payload + length;
    }

    /** The offset behind the last whole descriptor; what is left over is a defect. */
    int endOfWhole(int descriptorBytes, DefectLog log) {
        int rest = length % descriptorBytes;
        if (rest != 0) {
            log.add(
                    DefectCode.DATA_BLOCK_TOO_SHORT,
                    block,
                    end() - rest,
                    String.format(
                            "%d bytes of DisplayID block %02Xh are no whole timing of %d bytes",
                            rest, tag, descriptorBytes));
        }
        return end() - rest;
    }

    int low8AndHigh8(int offset) {
        return block.at(offset) | block.at(offset + 1) << 8;
    }

    int threeBytes(int offset) {
        return low8AndHigh8(offset) | block.at(offset + 2) << 16;
    }
}
