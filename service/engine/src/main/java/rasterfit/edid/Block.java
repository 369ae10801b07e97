package rasterfit.edid;

/** One block of 128 bytes inside an EDID; offsets count from its start and values are unsigned. */
final class Block {
    static final int BYTES = 128;

    private static final int CHECKSUM_OFFSET = 127;

    private final byte[] edid;
    private final int index;

    /** The block must lie wholly inside the data. */
    Block(byte[] edid, int index) {
        this.edid = edid;
        this.index = index;
    }

    int index() {
        return index;
    }

    int at(int offset) {
        return edid[index * BYTES + offset] & 0xFF;
    }

    boolean bit(int offset, int bit) {
        return (at(offset) >> bit & 1) != 0;
    }

    /** E-EDID §3.11: all bytes add up to 0 modulo 256. */
    boolean hasRightChecksum() {
        int sum = 0;
        for (int offset = 0; offset < BYTES; offset++) {
            sum += at(offset);
        }
        return sum % 256 == 0;
    }

    /** Notes a wrong checksum. */
    boolean checkSum(DefectLog log) {
        boolean isRight = hasRightChecksum();
        if (!isRight) {
            log.add(
                    DefectCode.CHECKSUM_WRONG,
                    this,
                    CHECKSUM_OFFSET,
                    "the bytes of block " + index + " do not add up to 0 modulo 256");
        }
        return isRight;
    }

    /** True when all bytes of a range have one value: filler, not data. */
    boolean isUniform(int offset, int length) {
        for (int i = 1; i < length; i++) {
            if (at(offset + i) != at(offset)) {
                return false;
            }
        }
        return true;
    }
}
