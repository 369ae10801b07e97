package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.Cta861;
import rasterfit.timing.Dmt;
import rasterfit.timing.HdmiVideo;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.VideoTiming;

/**
 * Timings that DisplayID names by number: type IV and the two bitmaps (DisplayID 1.3 §4.4, §4.5), type VIII (2.1a §4);
 * clauses from memory.
 */
final class DisplayIdCodes {
    private static final int DMT_BITMAP_BYTES = 10;
    private static final int VIC_BITMAP_BYTES = 8;

    /** What bits 7–6 of the flags say the codes are. */
    private static final List<TimingBasis> KINDS = List.of(TimingBasis.DMT, TimingBasis.CTA_861, TimingBasis.HDMI);

    /** Type VIII, since revision 1: all of the timings are also taken in 4:2:0. */
    private static final int FLAG_420 = 5;

    private static final int FLAG_TWO_BYTES = 3;

    private DisplayIdCodes() {}

    static List<DisplayIdTiming> typeIv(DisplayIdBlock block, DefectLog log) {
        return codes(block, 1, Chroma420.NOT_LISTED, log);
    }

    static List<DisplayIdTiming> typeViii(DisplayIdBlock block, DefectLog log) {
        boolean is420 = block.revision() >= 1 && block.flag(FLAG_420);
        return codes(block, block.flag(FLAG_TWO_BYTES) ? 2 : 1, is420 ? Chroma420.ALSO : Chroma420.NOT_LISTED, log);
    }

    static List<DisplayIdTiming> dmtBitmap(DisplayIdBlock block, DefectLog log) {
        return bitmap(block, DMT_BITMAP_BYTES, TimingBasis.DMT, log);
    }

    static List<DisplayIdTiming> vicBitmap(DisplayIdBlock block, DefectLog log) {
        return bitmap(block, VIC_BITMAP_BYTES, TimingBasis.CTA_861, log);
    }

    private static List<DisplayIdTiming> codes(
            DisplayIdBlock block, int codeBytes, Chroma420 chroma420, DefectLog log) {
        List<DisplayIdTiming> timings = new ArrayList<>();
        int kind = block.flagBits(6, 2);
        if (kind >= KINDS.size()) {
            log.add(
                    DefectCode.DATA_BLOCK_NOT_READ,
                    block.block(),
                    block.payload(),
                    "codes of kind " + kind + " are reserved");
            return timings;
        }
        int end = block.endOfWhole(codeBytes, log);
        for (int at = block.payload(); at < end; at += codeBytes) {
            int code = codeBytes == 2 ? block.low8AndHigh8(at) : block.block().at(at);
            coded(block, at, KINDS.get(kind), code, chroma420, log).ifPresent(timings::add);
        }
        return timings;
    }

    /** Bit 0 of the first byte is number 1. */
    private static List<DisplayIdTiming> bitmap(DisplayIdBlock block, int bytes, TimingBasis basis, DefectLog log) {
        List<DisplayIdTiming> timings = new ArrayList<>();
        if (block.length() < bytes) {
            log.add(
                    DefectCode.DATA_BLOCK_TOO_SHORT,
                    block.block(),
                    block.payload(),
                    block.length() + " bytes, but this bitmap has " + bytes);
        }
        for (int i = 0; i < 8 * Math.min(block.length(), bytes); i++) {
            int at = block.payload() + i / 8;
            if (block.block().bit(at, i % 8)) {
                coded(block, at, basis, i + 1, Chroma420.NOT_LISTED, log).ifPresent(timings::add);
            }
        }
        return timings;
    }

    private static Optional<DisplayIdTiming> coded(
            DisplayIdBlock block, int at, TimingBasis basis, int code, Chroma420 chroma420, DefectLog log) {
        if (code == 0) {
            log.add(DefectCode.VIC_RESERVED, block.block(), at, "0 is no number of a timing");
            return Optional.empty();
        }
        RasterTiming timing = published(basis, code);
        if (timing == null) {
            log.add(DefectCode.VIC_UNKNOWN, block.block(), at, basis + " number " + code + " has no published timing");
        }
        return Optional.of(DisplayIdTiming.coded(timing, basis, code, chroma420));
    }

    private static @Nullable RasterTiming published(TimingBasis basis, int code) {
        return switch (basis) {
            case DMT -> Dmt.find(code).map(Dmt.MonitorTiming::timing).orElse(null);
            case CTA_861 -> Cta861.find(code).map(VideoTiming::timing).orElse(null);
            case HDMI -> HdmiVideo.find(code).map(VideoTiming::timing).orElse(null);
            case STATED, GTF, CVT, MAKERS_TABLE, UNKNOWN ->
                throw new IllegalArgumentException(basis + " has no numbers");
        };
    }
}
