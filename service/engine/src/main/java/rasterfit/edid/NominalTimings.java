package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import rasterfit.timing.Scan;

/**
 * Established timings I and II (E-EDID table 3.18) and standard timings (table 3.19) as sizes and rates. The rasters behind
 * them come with VESA DMT, CVT and GTF.
 */
final class NominalTimings {
    /** Bytes 23h to 25h from the most significant bit on; the last seven bits belong to manufacturers. */
    private static final List<NominalFormat> ESTABLISHED = List.of(
            progressive(720, 400, 70),
            progressive(720, 400, 88),
            progressive(640, 480, 60),
            progressive(640, 480, 67),
            progressive(640, 480, 72),
            progressive(640, 480, 75),
            progressive(800, 600, 56),
            progressive(800, 600, 60),
            progressive(800, 600, 72),
            progressive(800, 600, 75),
            progressive(832, 624, 75),
            new NominalFormat(1024, 768, Scan.INTERLACED, 87),
            progressive(1024, 768, 60),
            progressive(1024, 768, 70),
            progressive(1024, 768, 75),
            progressive(1280, 1024, 75),
            progressive(1152, 870, 75));

    private static final int ESTABLISHED_OFFSET = 0x23;

    private NominalTimings() {}

    static List<AcceptedTiming> established(Block base) {
        List<AcceptedTiming> timings = new ArrayList<>();
        for (int i = 0; i < ESTABLISHED.size(); i++) {
            if (base.bit(ESTABLISHED_OFFSET + i / 8, 7 - i % 8)) {
                timings.add(AcceptedTiming.ofNominal(
                        TimingOrigin.ESTABLISHED, i + 1, ESTABLISHED.get(i), null, TimingBasis.UNKNOWN, false));
            }
        }
        return timings;
    }

    /**
     * Reads slots of two bytes.
     *
     * @param firstNumber the number of the first slot
     */
    static List<AcceptedTiming> standard(
            Block block, int offset, int slots, int firstNumber, EdidVersion version, DefectLog log) {
        List<AcceptedTiming> timings = new ArrayList<>();
        for (int slot = 0; slot < slots; slot++) {
            int first = block.at(offset + 2 * slot);
            int second = block.at(offset + 2 * slot + 1);
            boolean isUnused = first == 0x01 && second == 0x01;
            // 20 20 is text padding in a place where 01 01 belongs; it would read as 504 by 315 at 92 Hz.
            boolean isReserved = first == 0x00 || (first == 0x20 && second == 0x20);
            if (isReserved) {
                log.add(
                        DefectCode.STANDARD_TIMING_RESERVED,
                        block,
                        offset + 2 * slot,
                        String.format("%02X %02X is no standard timing; an unused one reads 01 01", first, second));
            } else if (!isUnused) {
                NominalFormat format = standardFormat(first, second, version);
                timings.add(AcceptedTiming.ofNominal(
                        TimingOrigin.STANDARD, firstNumber + slot, format, null, TimingBasis.UNKNOWN, false));
            }
        }
        return timings;
    }

    /** Table 3.19 notes 2 to 4. A height that is not whole is cut off. */
    private static NominalFormat standardFormat(int first, int second, EdidVersion version) {
        int width = (first + 31) * 8;
        int rate = (second & 0x3F) + 60;
        int height = switch (second >> 6) {
            case 0 -> version.isAtLeast(3) ? width * 10 / 16 : width;
            case 1 -> width * 3 / 4;
            case 2 -> width * 4 / 5;
            default -> width * 9 / 16;
        };
        return progressive(width, height, rate);
    }

    private static NominalFormat progressive(int horizontalActive, int verticalActive, int fieldRateHz) {
        return new NominalFormat(horizontalActive, verticalActive, Scan.PROGRESSIVE, fieldRateHz);
    }
}
