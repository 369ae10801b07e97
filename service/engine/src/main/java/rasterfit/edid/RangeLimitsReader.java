package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.RangeLimits.CvtSupport;
import rasterfit.edid.RangeLimits.Formula;
import rasterfit.edid.RangeLimits.SecondaryGtf;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.GtfCurve;

/** Reads the display range limits descriptor (E-EDID tables 3.26 to 3.28). */
final class RangeLimitsReader {
    private static final int OFFSET_255 = 255;

    /** Table 3.28: byte 14 from bit 7 down, byte 15 bits 7–5 from 0 up. */
    private static final List<Rational> CVT_ASPECTS =
            List.of(Rational.of(4, 3), Rational.of(16, 9), Rational.of(16, 10), Rational.of(5, 4), Rational.of(15, 9));

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
                formula == Formula.SECONDARY_GTF ? secondaryGtf(block, offset) : null,
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

    /** Table 3.27: 2 kHz, half percents, %/kHz with the low byte first. */
    private static SecondaryGtf secondaryGtf(Block block, int offset) {
        GtfCurve curve = new GtfCurve(
                Rational.of(block.at(offset + 13), 2),
                Rational.of(block.at(offset + 14) | block.at(offset + 15) << 8),
                Rational.of(block.at(offset + 16)),
                Rational.of(block.at(offset + 17), 2));
        return new SecondaryGtf(Frequency.ofHz(2000L * block.at(offset + 12)), curve);
    }

    private static CvtSupport cvt(Block block, int offset) {
        int cells = block.at(offset + 13) | (block.at(offset + 12) & 3) << 8;
        int preferredRate = block.at(offset + 17);
        int preferredAspect = block.at(offset + 15) >> 5;
        List<Rational> aspects = new ArrayList<>();
        for (int i = 0; i < CVT_ASPECTS.size(); i++) {
            if (block.bit(offset + 14, 7 - i)) {
                aspects.add(CVT_ASPECTS.get(i));
            }
        }
        return new CvtSupport(
                block.at(offset + 11) >> 4,
                block.at(offset + 11) & 15,
                cells == 0 ? null : 8 * cells,
                aspects,
                preferredAspect < CVT_ASPECTS.size() ? CVT_ASPECTS.get(preferredAspect) : null,
                block.bit(offset + 15, 3),
                block.bit(offset + 15, 4),
                preferredRate == 0 ? null : preferredRate);
    }
}
