package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cvt;
import rasterfit.timing.CvtBlanking;
import rasterfit.timing.CvtRequest;
import rasterfit.timing.Scan;

/**
 * Timings of which DisplayID gives a size and a rate and leaves the rest to CVT: types III and V (DisplayID 1.3 §4.4), IX
 * and X (2.1a §4; clauses from memory). Counts and rates are stored less 1. Where a timing is also taken at 1000/1001 of
 * its rate, that one follows it; only reduced blanking v2 defines a clock for it (CVT 1.2 §5.4).
 */
final class DisplayIdFormula {
    private static final int TYPE_III_BYTES = 3;
    private static final int TYPE_V_BYTES = 7;
    private static final int TYPE_IX_BYTES = 6;
    private static final int TYPE_X_LEAST_BYTES = 6;
    private static final int CELL = 8;

    /** Width / height by code (DisplayID 1.3 §4.4; 6 and 7 since 2.0; from memory). */
    private static final List<Rational> ASPECTS = List.of(
            Rational.ONE,
            Rational.of(5, 4),
            Rational.of(4, 3),
            Rational.of(15, 9),
            Rational.of(16, 9),
            Rational.of(16, 10),
            Rational.of(64, 27),
            Rational.of(256, 135));

    /** Bits 2–0 of the options of types IX and X; v3 in type X only. */
    private static final int FORMULA_CVT = 0;

    private static final int FORMULA_REDUCED_V1 = 1;
    private static final int FORMULA_REDUCED_V2 = 2;
    private static final int FORMULA_REDUCED_V3 = 3;

    private static final int WIDE_BLANKING_PIXELS = 160;
    /** Codes of added blanking that widen it; the two behind them narrow it. */
    private static final int MOST_WIDENING_CODE = 5;

    private static final int LEAST_BLANKING_STEP_US = 35;
    private static final int SHORT_BLANKING_STEP_US = 20;

    private DisplayIdFormula() {}

    /**
     * Options, width in cells of 8, rate. The height follows from the aspect; what is not whole is cut off, as in the CVT
     * codes of E-EDID (assumption).
     */
    static List<DisplayIdTiming> typeIii(DisplayIdBlock block, DefectLog log) {
        Collector collector = new Collector(block, log);
        int end = block.endOfWhole(TYPE_III_BYTES, log);
        for (int at = block.payload(); at < end; at += TYPE_III_BYTES) {
            int options = block.block().at(at);
            int aspect = options & 15;
            int formula = options >> 4 & 7;
            if (aspect >= ASPECTS.size() || formula > 1) {
                collector.reject(at, String.format("%02Xh names a reserved aspect or formula", options));
                continue;
            }
            int width = CELL * (1 + block.block().at(at + 1));
            int rate = block.block().at(at + 2);
            collector.add(
                    at,
                    width,
                    (int) Rational.of(width).dividedBy(ASPECTS.get(aspect)).floor(),
                    1 + (rate & 0x7F),
                    (rate & 0x80) != 0 ? Scan.INTERLACED : Scan.PROGRESSIVE,
                    formula == 0 ? CvtBlanking.ORDINARY : CvtBlanking.REDUCED_V1,
                    (options & 0x80) != 0,
                    Chroma420.NOT_LISTED);
        }
        return collector.timings;
    }

    /** Options, a reserved byte, width, height, rate; always reduced blanking v2. */
    static List<DisplayIdTiming> typeV(DisplayIdBlock block, DefectLog log) {
        Collector collector = new Collector(block, log);
        int end = block.endOfWhole(TYPE_V_BYTES, log);
        for (int at = block.payload(); at < end; at += TYPE_V_BYTES) {
            int options = block.block().at(at);
            if ((options & 3) != 0) {
                // 1 is a reduced blanking of the maker's own, which the block does not describe.
                collector.reject(at, "formula " + (options & 3) + " of a type V timing gives no raster");
                continue;
            }
            collector.addV2(
                    at,
                    1 + block.low8AndHigh8(at + 2),
                    1 + block.low8AndHigh8(at + 4),
                    1 + block.block().at(at + 6),
                    (options & 0x10) != 0,
                    (options & 0x80) != 0,
                    Chroma420.NOT_LISTED);
        }
        return collector.timings;
    }

    static List<DisplayIdTiming> typeIx(DisplayIdBlock block, DefectLog log) {
        Collector collector = new Collector(block, log);
        int end = block.endOfWhole(TYPE_IX_BYTES, log);
        for (int at = block.payload(); at < end; at += TYPE_IX_BYTES) {
            int options = block.block().at(at);
            addByFormula(collector, block, at, 1 + block.block().at(at + 5), (options & 7) == FORMULA_REDUCED_V3, null);
        }
        return collector.timings;
    }

    /** As type IX, with two more bits of rate and the widened blanking of v3 in up to two more bytes. */
    static List<DisplayIdTiming> typeX(DisplayIdBlock block, DefectLog log) {
        Collector collector = new Collector(block, log);
        int bytes = TYPE_X_LEAST_BYTES + block.furtherBytes();
        int end = block.endOfWhole(bytes, log);
        for (int at = block.payload(); at < end; at += bytes) {
            int sixth = bytes > 6 ? block.block().at(at + 6) : 0;
            int seventh = bytes > 7 ? block.block().at(at + 7) : 0;
            int rate = 1 + (block.block().at(at + 5) | (sixth & 3) << 8);
            CvtBlanking v3 = reducedV3(block.block().at(at), sixth, seventh);
            addByFormula(collector, block, at, rate, false, v3);
        }
        return collector.timings;
    }

    /**
     * DisplayID 2.1a §4. Options bit 4: 160 pixels in place of 80; bit 3: early vertical sync. Byte 6 bits 4–2 add up to
     * 56 pixels to 80, add up to 40 to 160 or take 8 or 16 off; bits 7–5 add to the least vertical blanking. Byte 7 bit 0:
     * 300 µs in place of 460.
     */
    private static CvtBlanking reducedV3(int options, int sixth, int seventh) {
        int delta = sixth >> 2 & 7;
        boolean isWide = (options & 0x10) != 0;
        int steps = isWide && delta > MOST_WIDENING_CODE ? MOST_WIDENING_CODE - delta : delta;
        boolean isShort = (seventh & 1) != 0;
        int added = sixth >> 5;
        return new CvtBlanking.ReducedV3(
                (isWide ? WIDE_BLANKING_PIXELS : CvtBlanking.ReducedV3.LEAST_PIXELS)
                        + steps * CvtBlanking.ReducedV3.PIXEL_STEP,
                isShort
                        ? CvtBlanking.ReducedV3.LEAST_MICROSECONDS + added * SHORT_BLANKING_STEP_US
                        : CvtBlanking.ReducedV3.USUAL_MICROSECONDS + added * LEAST_BLANKING_STEP_US,
                (options & 0x08) != 0);
    }

    /** The common first five bytes of types IX and X. Bit 7 of the options is reserved in type IX, 4:2:0 in type X. */
    private static void addByFormula(
            Collector collector,
            DisplayIdBlock block,
            int at,
            int rateHz,
            boolean v3IsReserved,
            @Nullable CvtBlanking v3) {
        int options = block.block().at(at);
        int width = 1 + block.low8AndHigh8(at + 1);
        int height = 1 + block.low8AndHigh8(at + 3);
        Chroma420 chroma420 =
                block.tag() == DisplayIdBlock.TYPE_X && (options & 0x80) != 0 ? Chroma420.ALSO : Chroma420.NOT_LISTED;
        int formula = options & 7;
        if (formula > FORMULA_REDUCED_V3 || v3IsReserved) {
            collector.reject(at, "formula " + formula + " is reserved");
        } else if (formula == FORMULA_REDUCED_V2) {
            collector.addV2(at, width, height, rateHz, (options & 0x10) != 0, false, chroma420);
        } else {
            CvtBlanking blanking = formula == FORMULA_CVT
                    ? CvtBlanking.ORDINARY
                    : formula == FORMULA_REDUCED_V1 || v3 == null ? CvtBlanking.REDUCED_V1 : v3;
            collector.add(at, width, height, rateHz, Scan.PROGRESSIVE, blanking, false, chroma420);
        }
    }

    /** Makes the timings of one block. */
    private static final class Collector {
        private final DisplayIdBlock block;
        private final DefectLog log;
        private final List<DisplayIdTiming> timings = new ArrayList<>();

        Collector(DisplayIdBlock block, DefectLog log) {
            this.block = block;
            this.log = log;
        }

        void reject(int at, String reason) {
            log.add(DefectCode.DETAILED_TIMING_IMPOSSIBLE, block.block(), at, reason);
        }

        void addV2(
                int at,
                int width,
                int height,
                int rateHz,
                boolean alsoVideoRate,
                boolean preferred,
                Chroma420 chroma420) {
            add(at, width, height, rateHz, Scan.PROGRESSIVE, CvtBlanking.REDUCED_V2, preferred, chroma420);
            if (alsoVideoRate) {
                add(at, width, height, rateHz, Scan.PROGRESSIVE, CvtBlanking.REDUCED_V2_VIDEO, false, chroma420);
            }
        }

        void add(
                int at,
                int width,
                int height,
                int rateHz,
                Scan scan,
                CvtBlanking blanking,
                boolean preferred,
                Chroma420 chroma420) {
            try {
                CvtRequest request = new CvtRequest(width, height, Frequency.ofHz(rateHz), scan, false, blanking);
                timings.add(DisplayIdTiming.byFormula(Cvt.timing(request), preferred, chroma420));
            } catch (IllegalArgumentException e) {
                reject(at, "CVT makes no " + width + " by " + height + " at " + rateHz + " Hz: " + e.getMessage());
            }
        }
    }
}
