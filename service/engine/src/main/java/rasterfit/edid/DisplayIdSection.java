package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A section of DisplayID 1.x or 2.x in an extension block of an EDID (tag 70h; DisplayID 1.3 and 2.1a, section structure
 * and the annex on use as an extension; layout and clauses from memory, checked against an open decoder). Behind the tag
 * stand version, length of the data blocks, product type, number of further sections, the data blocks, and a checksum;
 * zeros fill the rest.
 *
 * @param version 1 or 2; 0 where it is neither and nothing was read
 * @param timings in the order of the section
 * @param rangeLimits absent where not stated or not credible
 * @param ctaDataBlocks one for each CTA data block of the section, which holds blocks of CTA-861
 */
record DisplayIdSection(
        int version,
        List<DisplayIdTiming> timings,
        @Nullable DisplayIdRangeLimits rangeLimits,
        List<CtaDataBlocks> ctaDataBlocks) {
    static final int EXTENSION_TAG = 0x70;

    private static final int VERSION_OFFSET = 1;
    private static final int LENGTH_OFFSET = 2;
    private static final int DATA_OFFSET = 5;
    private static final int HEADER_BYTES = 3;
    /** What lies between the header of the section and the two checksums. */
    private static final int MOST_DATA_BYTES = 121;

    /** Blocks that concern which timings are taken, and are not read. */
    private static final Map<Integer, String> NOT_READ = Map.of(
            DisplayIdBlock.INTERFACE_FEATURES, "display interface features",
            DisplayIdBlock.ADAPTIVE_SYNC, "adaptive sync");

    DisplayIdSection {
        timings = List.copyOf(timings);
        ctaDataBlocks = List.copyOf(ctaDataBlocks);
    }

    static DisplayIdSection read(Block block, DefectLog log) {
        int version = block.at(VERSION_OFFSET) >> 4;
        if (version != 1 && version != 2) {
            log.add(
                    DefectCode.EXTENSION_NOT_READ,
                    block,
                    VERSION_OFFSET,
                    String.format("DisplayID of version %02Xh is not read", block.at(VERSION_OFFSET)));
            return new DisplayIdSection(0, List.of(), null, List.of());
        }
        int end = DATA_OFFSET + dataBytes(block, log);
        List<DisplayIdTiming> timings = new ArrayList<>();
        List<CtaDataBlocks> ctaDataBlocks = new ArrayList<>();
        DisplayIdRangeLimits rangeLimits = null;
        int offset = DATA_OFFSET;
        while (hasBlock(block, offset, end, log)) {
            DisplayIdBlock data = new DisplayIdBlock(
                    block, block.at(offset), block.at(offset + 1), offset + HEADER_BYTES, block.at(offset + 2));
            switch (data.tag()) {
                case DisplayIdBlock.RANGE_LIMITS, DisplayIdBlock.DYNAMIC_RANGE_LIMITS -> {
                    DisplayIdRangeLimits read =
                            DisplayIdRangeLimits.read(data, log).orElse(null);
                    rangeLimits = rangeLimits == null ? read : rangeLimits;
                    if (read != null && read.lines() == null) {
                        noteUnused(data, log);
                    }
                }
                case DisplayIdBlock.CTA_DATA_BLOCKS ->
                    ctaDataBlocks.add(CtaDataBlocksReader.read(block, data.payload(), data.end(), log));
                default -> {
                    timings.addAll(DisplayIdTimings.read(data, log));
                    noteUnread(data, log);
                }
            }
            offset = data.end();
        }
        return new DisplayIdSection(version, timings, rangeLimits, ctaDataBlocks);
    }

    /** What is said to be there, if it fits; the section then has its checksum behind it. */
    private static int dataBytes(Block block, DefectLog log) {
        int length = block.at(LENGTH_OFFSET);
        if (length > MOST_DATA_BYTES) {
            log.add(
                    DefectCode.EXTENSION_LAYOUT_INVALID,
                    block,
                    LENGTH_OFFSET,
                    length + " bytes of DisplayID do not fit in an extension; read as " + MOST_DATA_BYTES);
            return MOST_DATA_BYTES;
        }
        int sum = 0;
        for (int offset = VERSION_OFFSET; offset <= DATA_OFFSET + length; offset++) {
            sum += block.at(offset);
        }
        if (sum % 256 != 0) {
            log.add(
                    DefectCode.CHECKSUM_WRONG,
                    block,
                    DATA_OFFSET + length,
                    "the bytes of the DisplayID section do not add up to 0 modulo 256");
        }
        return length;
    }

    /** False at the end and in the zeros that fill it, and, with a defect, where what follows is no whole block. */
    private static boolean hasBlock(Block block, int offset, int end, DefectLog log) {
        int left = end - offset;
        boolean isFiller = left < HEADER_BYTES || (block.at(offset) == 0 && block.at(offset + 2) == 0);
        if (isFiller) {
            boolean isZero = left == 0 || (block.at(offset) == 0 && block.isUniform(offset, left));
            if (!isZero) {
                log.add(
                        DefectCode.EXTENSION_LAYOUT_INVALID,
                        block,
                        offset,
                        "the " + left + " bytes behind the last DisplayID block are not zero; left out");
            }
            return false;
        }
        int length = block.at(offset + 2);
        if (HEADER_BYTES + length > left) {
            log.add(
                    DefectCode.DATA_BLOCK_OVERRUN,
                    block,
                    offset,
                    String.format(
                            "%d bytes of DisplayID block %02Xh do not fit in its section; the rest is left out",
                            length, block.at(offset)));
            return false;
        }
        return true;
    }

    /** Acceptance needs line rates, which these limits do not have. */
    private static void noteUnused(DisplayIdBlock data, DefectLog log) {
        log.add(
                DefectCode.DATA_BLOCK_NOT_READ,
                data.block(),
                data.payload() - HEADER_BYTES,
                "the dynamic range limits have no line rates; nothing is concluded from them");
    }

    private static void noteUnread(DisplayIdBlock data, DefectLog log) {
        String name = NOT_READ.get(data.tag());
        if (name != null) {
            log.add(
                    DefectCode.DATA_BLOCK_NOT_READ,
                    data.block(),
                    data.payload() - HEADER_BYTES,
                    String.format("the DisplayID block %02Xh, %s, is not read", data.tag(), name));
        }
    }
}
