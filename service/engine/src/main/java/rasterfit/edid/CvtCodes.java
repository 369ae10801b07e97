package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import rasterfit.quantity.Rational;
import rasterfit.timing.CvtBlanking;
import rasterfit.timing.Scan;

/** Reads the CVT codes of a descriptor (E-EDID §3.10.3.8, tables 3.33 and 3.34): three bytes for a size at up to five rates. */
final class CvtCodes {
    static final int BYTES = 3;

    /** In a descriptor. */
    static final int SLOTS = 4;

    private static final int CELL = 8;

    private static final List<Rational> ASPECTS =
            List.of(Rational.of(4, 3), Rational.of(16, 9), Rational.of(16, 10), Rational.of(15, 9));

    /** One bit of the third byte. */
    private record Rate(int hz, CvtBlanking blanking) {}

    /** From bit 4 down to bit 0. */
    private static final List<Rate> RATES = List.of(
            new Rate(50, CvtBlanking.ORDINARY),
            new Rate(60, CvtBlanking.ORDINARY),
            new Rate(75, CvtBlanking.ORDINARY),
            new Rate(85, CvtBlanking.ORDINARY),
            new Rate(60, CvtBlanking.REDUCED_V1));

    /** How many numbers the codes of one descriptor take. */
    static final int NUMBERS = SLOTS * RATES.size();

    private CvtCodes() {}

    /**
     * @param offset of the first code
     * @param firstNumber that of the first rate of the first code
     */
    static List<AcceptedTiming> read(Block block, int offset, int slots, int firstNumber, DefectLog log) {
        List<AcceptedTiming> timings = new ArrayList<>();
        for (int slot = 0; slot < slots; slot++) {
            int at = offset + BYTES * slot;
            boolean isUnused = block.at(at) == 0 && block.at(at + 1) == 0 && block.at(at + 2) == 0;
            if (!isUnused) {
                timings.addAll(timings(block, at, firstNumber + slot * RATES.size(), log));
            }
        }
        return timings;
    }

    private static List<AcceptedTiming> timings(Block block, int at, int firstNumber, DefectLog log) {
        int lines = 2 * ((block.at(at) | (block.at(at + 1) & 0xF0) << 4) + 1);
        Rational aspect = ASPECTS.get(block.at(at + 1) >> 2 & 3);
        int pixels = (int) aspect.times(lines).dividedBy(CELL).floor() * CELL;
        int rates = block.at(at + 2) & 31;
        if (pixels == 0 || rates == 0 || (block.at(at + 1) & 3) != 0 || block.bit(at + 2, 7)) {
            log.add(
                    DefectCode.CVT_CODE_RESERVED,
                    block,
                    at,
                    String.format(
                            "%02X %02X %02X states no rate or no size, or sets a reserved bit",
                            block.at(at), block.at(at + 1), block.at(at + 2)));
        }
        List<AcceptedTiming> timings = new ArrayList<>();
        for (int i = 0; i < RATES.size() && pixels > 0; i++) {
            if ((rates >> (RATES.size() - 1 - i) & 1) != 0) {
                timings.add(timing(pixels, lines, RATES.get(i), firstNumber + i));
            }
        }
        return timings;
    }

    private static AcceptedTiming timing(int pixels, int lines, Rate rate, int number) {
        NominalFormat format = new NominalFormat(pixels, lines, Scan.PROGRESSIVE, rate.hz());
        NominalRasters.Found found = NominalRasters.ofCvt(format, rate.blanking());
        return AcceptedTiming.ofNominal(TimingOrigin.CVT_CODE, number, format, found.timing(), found.basis());
    }
}
