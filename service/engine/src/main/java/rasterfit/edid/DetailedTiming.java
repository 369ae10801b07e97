package rasterfit.edid;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.ScreenSize.SizeMm;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Cta861;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;
import rasterfit.timing.VideoTiming;

/**
 * A detailed timing descriptor (E-EDID tables 3.21 and 3.22), 18 bytes.
 *
 * @param sizeMm absent where the descriptor leaves it at zero
 */
record DetailedTiming(RasterTiming timing, @Nullable SizeMm sizeMm) {
    static final int BYTES = 18;

    private static final Frequency CLOCK_UNIT = Frequency.ofHz(10_000);

    /** The one interlaced timing of CTA-861-I whose frame is exactly two fields (§7.2.1). */
    private static final int WHOLE_FIELDS_VIC = 39;

    /** The counts as they stand in the descriptor, vertical ones per field. */
    private record Axis(int active, int blank, int frontPorch, int sync, int border) {
        int backPorch() {
            return blank - frontPorch - sync;
        }

        boolean isPossible() {
            return addressable() > 0 && sync > 0 && backPorch() >= 0;
        }

        /** What shows a picture. */
        int addressable() {
            return active - 2 * border;
        }

        int total() {
            return active + blank;
        }

        @Override
        public String toString() {
            return "active " + active + ", blanking " + blank + ", front porch " + frontPorch + ", sync " + sync
                    + ", border " + border;
        }
    }

    /** A descriptor whose first two bytes, the pixel clock, are zero holds something else. */
    static boolean isAt(Block block, int offset) {
        return block.at(offset) != 0 || block.at(offset + 1) != 0;
    }

    /** Empty, with a defect, where no raster can have these counts. */
    static Optional<DetailedTiming> read(Block block, int offset, DefectLog log) {
        if (block.isUniform(offset, BYTES)) {
            log.add(
                    DefectCode.DETAILED_TIMING_IMPOSSIBLE,
                    block,
                    offset,
                    String.format("%02Xh in all 18 bytes is filler, not a timing", block.at(offset)));
            return Optional.empty();
        }
        Axis horizontal = new Axis(
                low8AndHigh4(block, offset + 2, offset + 4, 4),
                low8AndHigh4(block, offset + 3, offset + 4, 0),
                block.at(offset + 8) | (block.at(offset + 11) >> 6 & 3) << 8,
                block.at(offset + 9) | (block.at(offset + 11) >> 4 & 3) << 8,
                block.at(offset + 15));
        Axis vertical = new Axis(
                low8AndHigh4(block, offset + 5, offset + 7, 4),
                low8AndHigh4(block, offset + 6, offset + 7, 0),
                block.at(offset + 10) >> 4 | (block.at(offset + 11) >> 2 & 3) << 4,
                (block.at(offset + 10) & 15) | (block.at(offset + 11) & 3) << 4,
                block.at(offset + 16));
        if (!horizontal.isPossible() || !vertical.isPossible()) {
            log.add(
                    DefectCode.DETAILED_TIMING_IMPOSSIBLE,
                    block,
                    offset,
                    "no raster has these counts: horizontal " + horizontal + "; vertical " + vertical);
            return Optional.empty();
        }
        return Optional.of(new DetailedTiming(timing(block, offset, horizontal, vertical), sizeMm(block, offset)));
    }

    /**
     * The active signal is a border, the addressable pixels and a border again (E-EDID §3.12; the descriptor gives one
     * side). Borders show no picture and so count to the porches here. An interlaced descriptor counts one field; the
     * second field has one line more of blanking (CTA-861-I §7.2.1).
     */
    private static RasterTiming timing(Block block, int offset, Axis horizontal, Axis vertical) {
        Frequency clock = CLOCK_UNIT.times(block.at(offset) | block.at(offset + 1) << 8);
        int flags = block.at(offset + 17);
        Scan scan = (flags & 0x80) != 0 ? Scan.INTERLACED : Scan.PROGRESSIVE;
        boolean endsOnHalfLine = scan == Scan.INTERLACED && !hasWholeFields(horizontal, vertical);
        return new RasterTiming(
                clock,
                horizontal.addressable(),
                horizontal.frontPorch() + horizontal.border(),
                horizontal.sync(),
                horizontal.backPorch() + horizontal.border(),
                vertical.addressable() * scan.fieldsPerFrame(),
                vertical.frontPorch() + vertical.border(),
                vertical.sync(),
                vertical.backPorch() + vertical.border(),
                vertical.total() * scan.fieldsPerFrame() + (endsOnHalfLine ? 1 : 0),
                scan,
                horizontalPolarity(flags),
                verticalPolarity(flags));
    }

    private static boolean hasWholeFields(Axis horizontal, Axis vertical) {
        return Cta861.find(WHOLE_FIELDS_VIC)
                .map(VideoTiming::timing)
                .filter(vic -> vic.horizontalActive() == horizontal.active()
                        && vic.horizontalTotal() == horizontal.total()
                        && vic.verticalActive() == 2 * vertical.active()
                        && vic.verticalTotal() == 2 * vertical.total())
                .isPresent();
    }

    /** Table 3.22: bit 4 = digital sync, whose bit 1 is the horizontal polarity; sync on an analog signal is negative. */
    private static Polarity horizontalPolarity(int flags) {
        return (flags & 0x12) == 0x12 ? Polarity.POSITIVE : Polarity.NEGATIVE;
    }

    /** Bits 4–3 = 11, separate sync: bit 2. Bits 4–3 = 10, composite sync: one polarity for both. */
    private static Polarity verticalPolarity(int flags) {
        boolean isSeparate = (flags & 0x18) == 0x18;
        if (!isSeparate) {
            return horizontalPolarity(flags);
        }
        return (flags & 0x04) != 0 ? Polarity.POSITIVE : Polarity.NEGATIVE;
    }

    private static @Nullable SizeMm sizeMm(Block block, int offset) {
        int width = low8AndHigh4(block, offset + 12, offset + 14, 4);
        int height = low8AndHigh4(block, offset + 13, offset + 14, 0);
        return width > 0 && height > 0 ? new SizeMm(width, height) : null;
    }

    private static int low8AndHigh4(Block block, int lowOffset, int highOffset, int highShift) {
        return block.at(lowOffset) | (block.at(highOffset) >> highShift & 15) << 8;
    }
}
