package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;

/**
 * The extension of further timings, VESA Video Timing Block 1.0 (layout from memory, as {@code edid-decode} reads it): how many
 * detailed timings, CVT codes and standard timings there are, then these.
 */
record VideoTimingBlock(List<DetailedTiming> detailed, List<AcceptedTiming> cvtCodes, List<AcceptedTiming> standard) {
    static final int TAG = 0x10;
    static final VideoTimingBlock NONE = new VideoTimingBlock(List.of(), List.of(), List.of());

    private static final int CONTENT_OFFSET = 5;
    private static final int CHECKSUM_OFFSET = 127;

    /** The base block has room for 8 standard timings and four descriptors: each of 6 more, or of 20 CVT timings. */
    private static final int MOST_STANDARD_NUMBER_OF_BASE = 8 + 4 * 6;

    private static final int MOST_CVT_NUMBER_OF_BASE = 4 * 20;

    /**
     * @param lastCvtNumber of an extension in front of this one, or 0
     * @param lastStandardNumber likewise
     */
    static VideoTimingBlock read(
            Block block, BaseBlock base, int lastCvtNumber, int lastStandardNumber, DefectLog log) {
        int detailedCount = block.at(2);
        int cvtCount = block.at(3);
        int standardCount = block.at(4);
        int cvtOffset = CONTENT_OFFSET + DetailedTiming.BYTES * detailedCount;
        int standardOffset = cvtOffset + CvtCodes.BYTES * cvtCount;
        if (standardOffset + StandardTimings.BYTES * standardCount > CHECKSUM_OFFSET) {
            log.add(
                    DefectCode.EXTENSION_LAYOUT_INVALID,
                    block,
                    2,
                    detailedCount + " detailed timings, " + cvtCount + " CVT codes and " + standardCount
                            + " standard timings do not fit in a block; they are left out");
            return NONE;
        }
        List<DetailedTiming> detailed = new ArrayList<>();
        for (int i = 0; i < detailedCount; i++) {
            int offset = CONTENT_OFFSET + DetailedTiming.BYTES * i;
            if (DetailedTiming.isAt(block, offset)) {
                DetailedTiming.read(block, offset, log).ifPresent(detailed::add);
            }
        }
        int firstCvtNumber = 1 + Math.max(lastCvtNumber, MOST_CVT_NUMBER_OF_BASE);
        int firstStandardNumber = 1 + Math.max(lastStandardNumber, MOST_STANDARD_NUMBER_OF_BASE);
        return new VideoTimingBlock(
                List.copyOf(detailed),
                CvtCodes.read(block, cvtOffset, cvtCount, firstCvtNumber, log),
                StandardTimings.read(
                        block,
                        standardOffset,
                        standardCount,
                        firstStandardNumber,
                        base.product().version(),
                        new NominalRasters(base.descriptors().rangeLimits()),
                        log));
    }
}
