package rasterfit.edid;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.RangeLimits.CvtSupport;
import rasterfit.edid.RangeLimits.Formula;
import rasterfit.quantity.Frequency;

/** Reads the display range limits descriptor (E-EDID tables 3.26 to 3.28). */
final class RangeLimitsReader {
    private static final int OFFSET_255 = 255;

    private RangeLimitsReader() {}

    /** Empty, with a defect, where the limits contradict each other. */
    static Optional<RangeLimits> read(Block block, int offset, EdidVersion version, DefectLog log) {
        int[] added = addedByFlags(block, offset + 4, version, log);
        int minField = block.at(offset + 5) + added[0];
        int maxField = block.at(offset + 6) + added[1];
        int minLine = block.at(offset + 7) + added[2];
        int maxLine = block.at(offset + 8) + added[3];
        String declared = minField + " to " + maxField + " Hz, " + minLine + " to " + maxLine + " kHz";
        if (minField > maxField || minLine > maxLine || maxField == 0 || maxLine == 0) {
            log.add(DefectCode.RANGE_LIMITS_IMPOSSIBLE, block, offset + 5, declared + " contains no rate; left out");
            return Optional.empty();
        }
        if (minField == 0 || minLine == 0) {
            log.add(DefectCode.RANGE_LIMITS_IMPOSSIBLE, block, offset + 5, declared + " begins at a reserved zero");
        }
        Formula formula = formula(block.at(offset + 10), version);
        return Optional.of(new RangeLimits(
                Frequency.ofHz(minField),
                Frequency.ofHz(maxField),
                Frequency.ofHz(minLine * 1000L),
                Frequency.ofHz(maxLine * 1000L),
                maxPixelClock(block, offset, formula),
                formula,
                formula == Formula.CVT ? cvt(block, offset) : null));
    }

    /** Table 3.26 byte 4: what to add to the least and greatest field rate, the least and greatest line rate. */
    private static int[] addedByFlags(Block block, int offset, EdidVersion version, DefectLog log) {
        int flags = block.at(offset);
        int field = flags & 3;
        int line = flags >> 2 & 3;
        boolean isReserved = field == 1 || line == 1 || flags >> 4 != 0;
        if (flags != 0 && !version.isAtLeast(4)) {
            log.add(
                    DefectCode.RANGE_OFFSETS_UNDEFINED,
                    block,
                    offset,
                    String.format("%02Xh: offsets of EDID 1.4 in an EDID %s, not applied", flags, version));
            return new int[4];
        }
        if (isReserved) {
            log.add(
                    DefectCode.RANGE_OFFSETS_UNDEFINED,
                    block,
                    offset,
                    String.format("%02Xh holds a reserved offset, not applied", flags));
        }
        return new int[] {
            field == 3 ? OFFSET_255 : 0,
            field >= 2 ? OFFSET_255 : 0,
            line == 3 ? OFFSET_255 : 0,
            line >= 2 ? OFFSET_255 : 0
        };
    }

    private static Formula formula(int code, EdidVersion version) {
        return switch (code) {
            case 0x00 -> Formula.DEFAULT_GTF;
            case 0x01 -> Formula.NONE;
            case 0x02 -> Formula.SECONDARY_GTF;
            case 0x04 -> version.isAtLeast(4) ? Formula.CVT : Formula.UNKNOWN;
            default -> Formula.UNKNOWN;
        };
    }

    /** Byte 9 in units of 10 MHz; with CVT, byte 12 bits 7–2 take off quarters of a MHz (table 3.28). */
    private static @Nullable Frequency maxPixelClock(Block block, int offset, Formula formula) {
        int tens = block.at(offset + 9);
        int quarters = formula == Formula.CVT ? block.at(offset + 12) >> 2 : 0;
        long hz = tens * 10_000_000L - quarters * 250_000L;
        return hz > 0 ? Frequency.ofHz(hz) : null;
    }

    private static CvtSupport cvt(Block block, int offset) {
        int cells = block.at(offset + 13) | (block.at(offset + 12) & 3) << 8;
        int preferredRate = block.at(offset + 17);
        return new CvtSupport(
                block.at(offset + 11) >> 4,
                block.at(offset + 11) & 15,
                cells == 0 ? null : 8 * cells,
                block.bit(offset + 15, 3),
                block.bit(offset + 15, 4),
                preferredRate == 0 ? null : preferredRate);
    }
}
