package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import rasterfit.timing.Scan;

/** Reads standard timings (E-EDID table 3.19), two bytes for each. */
final class StandardTimings {
    static final int BYTES = 2;

    private StandardTimings() {}

    /** @param firstNumber the number of the first slot */
    static List<AcceptedTiming> read(
            Block block,
            int offset,
            int slots,
            int firstNumber,
            EdidVersion version,
            NominalRasters rasters,
            DefectLog log) {
        List<AcceptedTiming> timings = new ArrayList<>();
        for (int slot = 0; slot < slots; slot++) {
            int at = offset + BYTES * slot;
            int first = block.at(at);
            int second = block.at(at + 1);
            boolean isUnused = first == 0x01 && second == 0x01;
            // 20 20 is text padding in a place where 01 01 belongs; it would read as 504 by 315 at 92 Hz.
            boolean isReserved = first == 0x00 || (first == 0x20 && second == 0x20);
            if (isReserved) {
                log.add(
                        DefectCode.STANDARD_TIMING_RESERVED,
                        block,
                        at,
                        String.format("%02X %02X is no standard timing; an unused one reads 01 01", first, second));
            } else if (!isUnused) {
                timings.add(timing(firstNumber + slot, first, second, version, rasters));
            }
        }
        return timings;
    }

    private static AcceptedTiming timing(
            int number, int first, int second, EdidVersion version, NominalRasters rasters) {
        NominalFormat format = format(first, second, version);
        NominalRasters.Found found = rasters.ofStandard(first << 8 | second, format);
        return AcceptedTiming.ofNominal(TimingOrigin.STANDARD, number, format, found.timing(), found.basis());
    }

    /** Table 3.19 notes 2 to 4. A height that is not whole is cut off. */
    private static NominalFormat format(int first, int second, EdidVersion version) {
        int width = (first + 31) * 8;
        int rate = (second & 0x3F) + 60;
        int height = switch (second >> 6) {
            case 0 -> version.isAtLeast(3) ? width * 10 / 16 : width;
            case 1 -> width * 3 / 4;
            case 2 -> width * 4 / 5;
            default -> width * 9 / 16;
        };
        return new NominalFormat(width, height, Scan.PROGRESSIVE, rate);
    }
}
