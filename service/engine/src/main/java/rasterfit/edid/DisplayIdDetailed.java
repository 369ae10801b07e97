package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * Timings that DisplayID spells out: types I, II and VI (DisplayID 1.3 §4.4) and VII (2.1a §4; clauses from memory). Every
 * count is stored less 1, clocks less one unit. Vertical counts are those of a frame, also where it is interlaced, so an
 * odd total is what ends a field on half a line (assumption: one open decoder reads it so, another takes them for those of
 * a field).
 */
final class DisplayIdDetailed {
    private static final int TYPE_I_BYTES = 20;
    private static final int TYPE_II_BYTES = 11;
    private static final int TYPE_VI_BYTES = 14;
    private static final int TYPE_VI_WITH_SIZE_BYTES = 17;
    private static final Frequency TEN_KHZ = Frequency.ofHz(10_000);
    private static final Frequency KHZ = Frequency.ofHz(1000);

    /** Type II counts horizontally in character cells. */
    private static final int CELL = 8;

    /** From this revision of type VII on bit 7 of the options says 4:2:0; before, and in type I, preferred. */
    private static final int REVISION_WITH_420 = 2;

    private DisplayIdDetailed() {}

    /** The counts of one direction. */
    private record Axis(int active, int blank, int frontPorch, int sync) {
        boolean isPossible() {
            return sync > 0 && frontPorch + sync <= blank;
        }

        int backPorch() {
            return blank - frontPorch - sync;
        }

        Axis cells() {
            return new Axis(active * CELL, blank * CELL, frontPorch * CELL, sync * CELL);
        }

        @Override
        public String toString() {
            return "active " + active + ", blanking " + blank + ", front porch " + frontPorch + ", sync " + sync;
        }
    }

    /**
     * Both have one layout: clock in three bytes, in 10 kHz (type I) or 1 kHz (type VII); a byte of options; eight counts of
     * two bytes, whose front porches carry the polarity in their top bit.
     */
    static List<DisplayIdTiming> typeIOrVii(DisplayIdBlock block, DefectLog log) {
        boolean isTypeI = block.tag() == DisplayIdBlock.TYPE_I;
        int bytes = TYPE_I_BYTES + (isTypeI ? 0 : block.furtherBytes());
        boolean has420 = !isTypeI && block.revision() >= REVISION_WITH_420;
        List<DisplayIdTiming> timings = new ArrayList<>();
        int end = block.endOfWhole(bytes, log);
        for (int at = block.payload(); at < end; at += bytes) {
            int options = block.block().at(at + 3);
            int horizontalPorch = block.low8AndHigh8(at + 8);
            int verticalPorch = block.low8AndHigh8(at + 16);
            Frequency unit = isTypeI ? TEN_KHZ : KHZ;
            boolean bit7 = bit(options, 7);
            timing(
                            block,
                            at,
                            unit.times(1 + block.threeBytes(at)),
                            new Axis(
                                    1 + block.low8AndHigh8(at + 4),
                                    1 + block.low8AndHigh8(at + 6),
                                    1 + (horizontalPorch & 0x7FFF),
                                    1 + block.low8AndHigh8(at + 10)),
                            new Axis(
                                    1 + block.low8AndHigh8(at + 12),
                                    1 + block.low8AndHigh8(at + 14),
                                    1 + (verticalPorch & 0x7FFF),
                                    1 + block.low8AndHigh8(at + 18)),
                            bit(options, 4),
                            polarity(bit(horizontalPorch, 15)),
                            polarity(bit(verticalPorch, 15)),
                            log)
                    .map(timing -> DisplayIdTiming.stated(
                            timing, bit7 && !has420, bit7 && has420 ? Chroma420.ALSO : Chroma420.NOT_LISTED))
                    .ifPresent(timings::add);
        }
        return timings;
    }

    static List<DisplayIdTiming> typeIi(DisplayIdBlock block, DefectLog log) {
        Block bytes = block.block();
        List<DisplayIdTiming> timings = new ArrayList<>();
        int end = block.endOfWhole(TYPE_II_BYTES, log);
        for (int at = block.payload(); at < end; at += TYPE_II_BYTES) {
            int options = bytes.at(at + 3);
            timing(
                            block,
                            at,
                            TEN_KHZ.times(1 + block.threeBytes(at)),
                            new Axis(
                                            1 + (bytes.at(at + 4) | (bytes.at(at + 5) & 1) << 8),
                                            1 + (bytes.at(at + 5) >> 1),
                                            1 + (bytes.at(at + 6) >> 4),
                                            1 + (bytes.at(at + 6) & 15))
                                    .cells(),
                            new Axis(
                                    1 + (bytes.at(at + 7) | (bytes.at(at + 8) & 15) << 8),
                                    1 + bytes.at(at + 9),
                                    1 + (bytes.at(at + 10) >> 4),
                                    1 + (bytes.at(at + 10) & 15)),
                            bit(options, 4),
                            polarity(bit(options, 3)),
                            polarity(bit(options, 2)),
                            log)
                    .map(timing -> DisplayIdTiming.stated(timing, bit(options, 7), Chroma420.NOT_LISTED))
                    .ifPresent(timings::add);
        }
        return timings;
    }

    /** 14 bytes, or 17 where bit 6 of the third says that the size of the image follows. */
    static List<DisplayIdTiming> typeVi(DisplayIdBlock block, DefectLog log) {
        Block bytes = block.block();
        List<DisplayIdTiming> timings = new ArrayList<>();
        int at = block.payload();
        while (at < block.end()) {
            boolean knowsLength = at + 3 <= block.end();
            int length = knowsLength && bytes.bit(at + 2, 6) ? TYPE_VI_WITH_SIZE_BYTES : TYPE_VI_BYTES;
            if (at + length > block.end()) {
                log.add(
                        DefectCode.DATA_BLOCK_TOO_SHORT,
                        bytes,
                        at,
                        (block.end() - at) + " bytes are no whole type VI timing");
                break;
            }
            boolean isPreferred = bytes.bit(at + 2, 7);
            timing(
                            block,
                            at,
                            KHZ.times(1 + (block.threeBytes(at) & 0x3FFFFF)),
                            new Axis(
                                    1 + (block.low8AndHigh8(at + 3) & 0x3FFF),
                                    1 + (bytes.at(at + 7) | (bytes.at(at + 9) & 15) << 8),
                                    1 + (bytes.at(at + 8) | bytes.at(at + 9) >> 4 << 8),
                                    1 + bytes.at(at + 10)),
                            new Axis(
                                    1 + (block.low8AndHigh8(at + 5) & 0x3FFF),
                                    1 + bytes.at(at + 11),
                                    1 + bytes.at(at + 12),
                                    1 + (bytes.at(at + 13) & 15)),
                            bytes.bit(at + 13, 7),
                            polarity(bytes.bit(at + 4, 7)),
                            polarity(bytes.bit(at + 6, 7)),
                            log)
                    .map(timing -> DisplayIdTiming.stated(timing, isPreferred, Chroma420.NOT_LISTED))
                    .ifPresent(timings::add);
            at += length;
        }
        return timings;
    }

    private static Optional<RasterTiming> timing(
            DisplayIdBlock block,
            int at,
            Frequency clock,
            Axis horizontal,
            Axis frame,
            boolean isInterlaced,
            Polarity horizontalPolarity,
            Polarity verticalPolarity,
            DefectLog log) {
        Scan scan = isInterlaced ? Scan.INTERLACED : Scan.PROGRESSIVE;
        int fields = scan.fieldsPerFrame();
        Axis field = new Axis(
                frame.active() / fields, frame.blank() / fields, frame.frontPorch() / fields, frame.sync() / fields);
        boolean hasWholeFields = frame.active() % fields == 0;
        if (!horizontal.isPossible() || !frame.isPossible() || !field.isPossible() || !hasWholeFields) {
            log.add(
                    DefectCode.DETAILED_TIMING_IMPOSSIBLE,
                    block.block(),
                    at,
                    "no " + (isInterlaced ? "interlaced " : "") + "raster has these counts: horizontal " + horizontal
                            + "; vertical " + frame);
            return Optional.empty();
        }
        return Optional.of(new RasterTiming(
                clock,
                horizontal.active(),
                horizontal.frontPorch(),
                horizontal.sync(),
                horizontal.backPorch(),
                frame.active(),
                field.frontPorch(),
                field.sync(),
                field.backPorch(),
                frame.active() + frame.blank(),
                scan,
                horizontalPolarity,
                verticalPolarity));
    }

    private static boolean bit(int value, int bit) {
        return (value >> bit & 1) != 0;
    }

    private static Polarity polarity(boolean isPositive) {
        return isPositive ? Polarity.POSITIVE : Polarity.NEGATIVE;
    }
}
