package rasterfit.edid;

import java.util.List;

/** Reads the timing blocks of DisplayID, wherever they stand: in a section of their own or in CTA-861. */
final class DisplayIdTimings {
    /** CTA-861-I, from memory: a type VII block in CTA-861 is one of revision 2. */
    private static final int CTA_TYPE_VII_REVISION = 2;

    private DisplayIdTimings() {}

    /** In the order of the block; empty for blocks of other kinds. */
    static List<DisplayIdTiming> read(DisplayIdBlock block, DefectLog log) {
        return switch (block.tag()) {
            case DisplayIdBlock.TYPE_I, DisplayIdBlock.TYPE_VII -> DisplayIdDetailed.typeIOrVii(block, log);
            case DisplayIdBlock.TYPE_II -> DisplayIdDetailed.typeIi(block, log);
            case DisplayIdBlock.TYPE_VI -> DisplayIdDetailed.typeVi(block, log);
            case DisplayIdBlock.TYPE_III -> DisplayIdFormula.typeIii(block, log);
            case DisplayIdBlock.TYPE_V -> DisplayIdFormula.typeV(block, log);
            case DisplayIdBlock.TYPE_IX -> DisplayIdFormula.typeIx(block, log);
            case DisplayIdBlock.TYPE_X -> DisplayIdFormula.typeX(block, log);
            case DisplayIdBlock.TYPE_IV -> DisplayIdCodes.typeIv(block, log);
            case DisplayIdBlock.TYPE_VIII -> DisplayIdCodes.typeViii(block, log);
            case DisplayIdBlock.DMT_BITMAP -> DisplayIdCodes.dmtBitmap(block, log);
            case DisplayIdBlock.VIC_BITMAP -> DisplayIdCodes.vicBitmap(block, log);
            default -> List.of();
        };
    }

    /**
     * The timings of a CTA-861 data block of extended tag 34, 35 or 42 (CTA-861-I table 64), which are the
     * DisplayID tags of types VII, VIII and X.
     *
     * @param payload offset of the byte behind the extended tag
     * @param length bytes from there on
     */
    static List<DisplayIdTiming> ofCta(Block block, int extendedTag, int payload, int length, DefectLog log) {
        if (length == 0) {
            log.add(
                    DefectCode.DATA_BLOCK_TOO_SHORT,
                    block,
                    payload - 1,
                    "a DisplayID timing block (extended tag " + extendedTag + ") without its revision");
            return List.of();
        }
        int flags = block.at(payload);
        if (extendedTag == DisplayIdBlock.TYPE_VII) {
            flags = (flags & ~7) | CTA_TYPE_VII_REVISION;
        }
        return read(new DisplayIdBlock(block, extendedTag, flags, payload + 1, length - 1), log);
    }
}
