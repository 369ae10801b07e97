package rasterfit.edid;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/**
 * What a DisplayID section says of the timings that the display takes beyond the listed ones: the video timing range limits
 * of 1.x (DisplayID 1.3, tag 09h) or the dynamic video timing range limits of 2.x (2.1a, tag 25h). Numbers are as
 * declared.
 *
 * @param lines absent in 2.x, which says nothing of lines and formulas
 * @param seamless the rate may change inside the limits without a break (2.x; false in 1.x)
 */
record DisplayIdRangeLimits(
        Frequency minPixelClock,
        Frequency maxPixelClock,
        Frequency minFieldRate,
        Frequency maxFieldRate,
        @Nullable LineLimits lines,
        boolean seamless) {

    DisplayIdRangeLimits {
        if (minPixelClock.compareTo(maxPixelClock) > 0 || minFieldRate.compareTo(maxFieldRate) > 0) {
            throw new IllegalArgumentException("a least value is above the greatest");
        }
    }

    /**
     * What only 1.x says.
     *
     * @param minHorizontalBlanking pixels
     * @param minVerticalBlanking lines
     * @param discrete only the listed rates are taken, not all between the limits
     */
    record LineLimits(
            Frequency minLineRate,
            Frequency maxLineRate,
            int minHorizontalBlanking,
            int minVerticalBlanking,
            boolean interlaced,
            boolean cvt,
            boolean cvtReduced,
            boolean discrete) {

        LineLimits {
            if (minLineRate.compareTo(maxLineRate) > 0) {
                throw new IllegalArgumentException("the least line rate is above the greatest");
            }
        }
    }

    private static final int BYTES_1 = 15;
    private static final int BYTES_2 = 9;
    private static final Frequency TEN_KHZ = Frequency.ofHz(10_000);
    private static final Frequency KHZ = Frequency.ofHz(1000);

    /** Empty, with a defect, where the block is too short or its limits contain nothing. */
    static Optional<DisplayIdRangeLimits> read(DisplayIdBlock block, DefectLog log) {
        boolean isDynamic = block.tag() == DisplayIdBlock.DYNAMIC_RANGE_LIMITS;
        int least = isDynamic ? BYTES_2 : BYTES_1;
        if (block.length() < least) {
            log.add(
                    DefectCode.DATA_BLOCK_TOO_SHORT,
                    block.block(),
                    block.payload(),
                    block.length() + " bytes, but these range limits have " + least);
            return Optional.empty();
        }
        try {
            return Optional.of(isDynamic ? dynamic(block) : classic(block));
        } catch (IllegalArgumentException e) {
            log.add(DefectCode.RANGE_LIMITS_IMPOSSIBLE, block.block(), block.payload(), e.getMessage() + "; left out");
            return Optional.empty();
        }
    }

    /** In the form of a descriptor of the base block; empty without line rates. */
    Optional<RangeLimits> asOfDescriptor() {
        if (lines == null) {
            return Optional.empty();
        }
        return Optional.of(new RangeLimits(
                minFieldRate,
                maxFieldRate,
                lines.minLineRate(),
                lines.maxLineRate(),
                maxPixelClock,
                lines.cvt() ? RangeLimits.Formula.CVT : RangeLimits.Formula.NONE,
                null,
                null));
    }

    private static DisplayIdRangeLimits classic(DisplayIdBlock block) {
        Block bytes = block.block();
        int at = block.payload();
        return new DisplayIdRangeLimits(
                TEN_KHZ.times(1 + block.threeBytes(at)),
                TEN_KHZ.times(1 + block.threeBytes(at + 3)),
                Frequency.ofHz(bytes.at(at + 10)),
                Frequency.ofHz(bytes.at(at + 11)),
                new LineLimits(
                        KHZ.times(bytes.at(at + 6)),
                        KHZ.times(bytes.at(at + 7)),
                        block.low8AndHigh8(at + 8),
                        block.low8AndHigh8(at + 12),
                        bytes.bit(at + 14, 7),
                        bytes.bit(at + 14, 6),
                        bytes.bit(at + 14, 5),
                        bytes.bit(at + 14, 4)),
                false);
    }

    /** From revision 1 on the greatest rate has two more bits. */
    private static DisplayIdRangeLimits dynamic(DisplayIdBlock block) {
        Block bytes = block.block();
        int at = block.payload();
        int highBits = block.revision() >= 1 ? bytes.at(at + 8) & 3 : 0;
        return new DisplayIdRangeLimits(
                KHZ.times(1 + block.threeBytes(at)),
                KHZ.times(1 + block.threeBytes(at + 3)),
                Frequency.ofHz(bytes.at(at + 6)),
                Frequency.ofHz(bytes.at(at + 7) | highBits << 8),
                null,
                bytes.bit(at + 8, 7));
    }
}
