package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one extension block of CTA-861 says (CTA-861-I §7.3, table 60), revisions 1 to 3.
 *
 * @param flags absent in revision 1
 * @param nativeDetailed how many detailed timings, counted from the first of the EDID, are native
 */
record CtaExtension(
        @Nullable CtaFlags flags, int nativeDetailed, CtaDataBlocks dataBlocks, List<DetailedTiming> detailed) {
    static final int TAG = 0x02;

    private static final int DATA_BLOCKS_OFFSET = 4;
    private static final int CHECKSUM_OFFSET = 127;
    private static final int WITH_FLAGS = 2;
    private static final int WITH_DATA_BLOCKS = 3;

    static CtaExtension read(Block block, DefectLog log) {
        int revision = block.at(1);
        int detailedOffset = block.at(2);
        // 0: neither data blocks nor detailed timings; 4: no data blocks.
        boolean isEmpty = detailedOffset == 0;
        boolean isValid = detailedOffset >= DATA_BLOCKS_OFFSET && detailedOffset <= CHECKSUM_OFFSET;
        if (!isEmpty && !isValid) {
            log.add(
                    DefectCode.EXTENSION_LAYOUT_INVALID,
                    block,
                    2,
                    detailedOffset + " is no offset of detailed timings; data blocks and timings are left out");
        }
        CtaDataBlocks dataBlocks = isValid && revision >= WITH_DATA_BLOCKS
                ? CtaDataBlocksReader.read(block, DATA_BLOCKS_OFFSET, detailedOffset, log)
                : CtaDataBlocks.NONE;
        return new CtaExtension(
                revision >= WITH_FLAGS ? flags(block) : null,
                revision >= WITH_FLAGS ? block.at(3) & 15 : 0,
                dataBlocks,
                isValid ? detailed(block, detailedOffset, log) : List.of());
    }

    private static CtaFlags flags(Block block) {
        return new CtaFlags(block.bit(3, 7), block.bit(3, 6), block.bit(3, 5), block.bit(3, 4));
    }

    /** Padding and display descriptors begin with two zero bytes and are passed over. */
    private static List<DetailedTiming> detailed(Block block, int from, DefectLog log) {
        List<DetailedTiming> detailed = new ArrayList<>();
        for (int offset = from; offset + DetailedTiming.BYTES <= CHECKSUM_OFFSET; offset += DetailedTiming.BYTES) {
            if (DetailedTiming.isAt(block, offset)) {
                DetailedTiming.read(block, offset, log).ifPresent(detailed::add);
            }
        }
        return List.copyOf(detailed);
    }
}
