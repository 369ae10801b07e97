package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Dmt;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * Reads established timings: I and II of the base block (E-EDID table 3.18) and III of a descriptor (table 3.37). A bit each,
 * from the most significant bit of the first byte on.
 */
final class EstablishedTimings {
    private static final int OFFSET = 0x23;

    /** One bit: the size and rate that the table prints, and the raster behind them. */
    private record Established(NominalFormat format, RasterTiming timing, TimingBasis basis) {}

    /**
     * Bytes 23h to 25h; the last seven bits belong to manufacturers. The rasters of the five that are not of VESA DMT are
     * given as {@code edid-decode} prints them.
     */
    private static final List<Established> FIRST_AND_SECOND = List.of(
            maker(28_320, 720, 18, 108, 54, Polarity.NEGATIVE, 400, 21, 2, 26, Polarity.POSITIVE, 70),
            maker(35_500, 720, 18, 108, 54, Polarity.NEGATIVE, 400, 12, 2, 35, Polarity.POSITIVE, 88),
            dmt(0x04, 60),
            maker(30_240, 640, 64, 64, 96, Polarity.NEGATIVE, 480, 3, 3, 39, Polarity.NEGATIVE, 67),
            dmt(0x05, 72),
            dmt(0x06, 75),
            dmt(0x08, 56),
            dmt(0x09, 60),
            dmt(0x0A, 72),
            dmt(0x0B, 75),
            maker(57_284, 832, 32, 64, 224, Polarity.NEGATIVE, 624, 1, 3, 39, Polarity.NEGATIVE, 75),
            dmt(0x0F, 87),
            dmt(0x10, 60),
            dmt(0x11, 70),
            dmt(0x12, 75),
            dmt(0x24, 75),
            maker(100_000, 1152, 48, 128, 128, Polarity.POSITIVE, 870, 3, 3, 39, Polarity.POSITIVE, 75));

    /** Bytes 6 to 11 of the descriptor; the last four bits are reserved. */
    private static final List<Established> THIRD = List.of(
            dmt(0x01, 85),
            dmt(0x02, 85),
            dmt(0x03, 85),
            dmt(0x07, 85),
            dmt(0x0E, 60),
            dmt(0x0C, 85),
            dmt(0x13, 85),
            dmt(0x15, 75),
            dmt(0x16, 60),
            dmt(0x17, 60),
            dmt(0x18, 75),
            dmt(0x19, 85),
            dmt(0x20, 60),
            dmt(0x21, 85),
            dmt(0x23, 60),
            dmt(0x25, 85),
            dmt(0x27, 60),
            dmt(0x2E, 60),
            dmt(0x2F, 60),
            dmt(0x30, 75),
            dmt(0x31, 85),
            dmt(0x29, 60),
            dmt(0x2A, 60),
            dmt(0x2B, 75),
            dmt(0x2C, 85),
            dmt(0x39, 60),
            dmt(0x3A, 60),
            dmt(0x3B, 75),
            dmt(0x3C, 85),
            dmt(0x33, 60),
            dmt(0x34, 65),
            dmt(0x35, 70),
            dmt(0x36, 75),
            dmt(0x37, 85),
            dmt(0x3E, 60),
            dmt(0x3F, 75),
            dmt(0x41, 60),
            dmt(0x42, 75),
            dmt(0x44, 60),
            dmt(0x45, 60),
            dmt(0x46, 75),
            dmt(0x47, 85),
            dmt(0x49, 60),
            dmt(0x4A, 75));

    private EstablishedTimings() {}

    static List<AcceptedTiming> readFirstAndSecond(Block base) {
        return read(base, OFFSET, FIRST_AND_SECOND, 1);
    }

    /** @param offset of the first byte of flags */
    static List<AcceptedTiming> readThird(Block block, int offset) {
        return read(block, offset, THIRD, FIRST_AND_SECOND.size() + 1);
    }

    private static List<AcceptedTiming> read(Block block, int offset, List<Established> bits, int firstNumber) {
        List<AcceptedTiming> timings = new ArrayList<>();
        for (int i = 0; i < bits.size(); i++) {
            if (block.bit(offset + i / 8, 7 - i % 8)) {
                Established bit = bits.get(i);
                timings.add(AcceptedTiming.ofNominal(
                        TimingOrigin.ESTABLISHED, firstNumber + i, bit.format(), bit.timing(), bit.basis()));
            }
        }
        return timings;
    }

    private static Established dmt(int id, int fieldRateHz) {
        RasterTiming timing = Dmt.find(id).orElseThrow().timing();
        return established(timing, fieldRateHz, TimingBasis.DMT);
    }

    private static Established maker(
            int clockKHz,
            int horizontalActive,
            int horizontalFrontPorch,
            int horizontalSync,
            int horizontalBackPorch,
            Polarity horizontalPolarity,
            int verticalActive,
            int verticalFrontPorch,
            int verticalSync,
            int verticalBackPorch,
            Polarity verticalPolarity,
            int fieldRateHz) {
        RasterTiming timing = new RasterTiming(
                Frequency.ofHz(clockKHz * 1000L),
                horizontalActive,
                horizontalFrontPorch,
                horizontalSync,
                horizontalBackPorch,
                verticalActive,
                verticalFrontPorch,
                verticalSync,
                verticalBackPorch,
                verticalActive + verticalFrontPorch + verticalSync + verticalBackPorch,
                Scan.PROGRESSIVE,
                horizontalPolarity,
                verticalPolarity);
        return established(timing, fieldRateHz, TimingBasis.MAKERS_TABLE);
    }

    private static Established established(RasterTiming timing, int fieldRateHz, TimingBasis basis) {
        NominalFormat format =
                new NominalFormat(timing.horizontalActive(), timing.verticalActive(), timing.scan(), fieldRateHz);
        return new Established(format, timing, basis);
    }
}
