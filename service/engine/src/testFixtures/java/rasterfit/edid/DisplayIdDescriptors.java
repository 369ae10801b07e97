package rasterfit.edid;

import rasterfit.quantity.Frequency;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * The descriptors of DisplayID timing blocks as bytes, after the tables of VESA DisplayID 1.3 (types I to VI) and 2.1a (VII
 * to X; from memory). The blocks of CTA-861 that carry types VII, VIII and X use the same ones.
 */
public final class DisplayIdDescriptors {
    private DisplayIdDescriptors() {}

    /** Lowest byte first. */
    public static int[] littleEndian(long value, int bytes) {
        int[] result = new int[bytes];
        for (int i = 0; i < bytes; i++) {
            result[i] = (int) (value >> (8 * i) & 0xFF);
        }
        return result;
    }

    /**
     * Type I, 20 bytes, clock in 10 kHz.
     *
     * @param aspect 0 = 1:1, 1 = 5:4, 2 = 4:3, 3 = 15:9, 4 = 16:9, 5 = 16:10, 6 = 64:27, 7 = 256:135, 8 = not stated
     */
    public static int[] typeI(RasterTiming timing, int aspect, boolean preferred) {
        return long20(timing, 10_000, aspect | (preferred ? 0x80 : 0));
    }

    /** Type VII, 20 bytes, clock in 1 kHz; {@code bit7} is preferred before revision 2 of the block, 4:2:0 since. */
    public static int[] typeVii(RasterTiming timing, int aspect, boolean bit7) {
        return long20(timing, 1000, aspect | (bit7 ? 0x80 : 0));
    }

    /** Type II, 11 bytes: horizontal counts in cells of 8. */
    public static int[] typeIi(RasterTiming timing, boolean preferred) {
        int[] clock = clock(timing, 10_000);
        int active = timing.horizontalActive() / 8 - 1;
        int blank = horizontalBlank(timing) / 8 - 1;
        int lines = timing.verticalActive() - 1;
        return new int[] {
            clock[0],
            clock[1],
            clock[2],
            (preferred ? 0x80 : 0)
                    | (isInterlaced(timing) ? 0x10 : 0)
                    | (isPositive(timing.horizontalPolarity()) ? 0x08 : 0)
                    | (isPositive(timing.verticalPolarity()) ? 0x04 : 0),
            active & 0xFF,
            (active >> 8) | (blank << 1),
            ((timing.horizontalFrontPorch() / 8 - 1) << 4) | (timing.horizontalSync() / 8 - 1),
            lines & 0xFF,
            lines >> 8,
            verticalBlank(timing) - 1,
            ((frameLines(timing, timing.verticalFrontPorch()) - 1) << 4) | (frameLines(timing, timing.verticalSync()) - 1)
        };
    }

    /** Type III, 3 bytes. */
    public static int[] typeIii(
            int horizontalActive,
            int aspect,
            int rateHz,
            boolean interlaced,
            boolean reducedBlanking,
            boolean preferred) {
        return new int[] {
            (preferred ? 0x80 : 0) | (reducedBlanking ? 0x10 : 0) | aspect,
            horizontalActive / 8 - 1,
            (interlaced ? 0x80 : 0) | (rateHz - 1)
        };
    }

    /** Type V, 7 bytes. */
    public static int[] typeV(
            int horizontalActive, int verticalActive, int rateHz, boolean alsoVideoRate, boolean preferred) {
        int[] width = littleEndian(horizontalActive - 1, 2);
        int[] height = littleEndian(verticalActive - 1, 2);
        return new int[] {
            (preferred ? 0x80 : 0) | (alsoVideoRate ? 0x10 : 0), 0, width[0], width[1], height[0], height[1], rateHz - 1
        };
    }

    /** Type VI, 14 bytes, or 17 with an image size: aspect in 3/256, height in mm. */
    public static int[] typeVi(RasterTiming timing, boolean preferred, boolean withSize) {
        int[] clock = clock(timing, 1000);
        int[] width = littleEndian(timing.horizontalActive() - 1, 2);
        int[] height = littleEndian(timing.verticalActive() - 1, 2);
        int blank = horizontalBlank(timing) - 1;
        int porch = timing.horizontalFrontPorch() - 1;
        int[] head = {
            clock[0],
            clock[1],
            clock[2] | (withSize ? 0x40 : 0) | (preferred ? 0x80 : 0),
            width[0],
            width[1] | (isPositive(timing.horizontalPolarity()) ? 0x80 : 0),
            height[0],
            height[1] | (isPositive(timing.verticalPolarity()) ? 0x80 : 0),
            blank & 0xFF,
            porch & 0xFF,
            ((porch >> 8) << 4) | (blank >> 8),
            timing.horizontalSync() - 1,
            verticalBlank(timing) - 1,
            frameLines(timing, timing.verticalFrontPorch()) - 1,
            (isInterlaced(timing) ? 0x80 : 0) | (frameLines(timing, timing.verticalSync()) - 1)
        };
        if (!withSize) {
            return head;
        }
        int[] all = new int[17];
        System.arraycopy(head, 0, all, 0, 14);
        all[14] = 152;
        all[15] = 200;
        return all;
    }

    /**
     * Type IX, 6 bytes.
     *
     * @param formula 0 = CVT, 1 = reduced blanking, 2 = reduced blanking v2
     */
    public static int[] typeIx(
            int horizontalActive, int verticalActive, int rateHz, int formula, boolean alsoVideoRate) {
        int[] width = littleEndian(horizontalActive - 1, 2);
        int[] height = littleEndian(verticalActive - 1, 2);
        return new int[] {
            (alsoVideoRate ? 0x10 : 0) | formula, width[0], width[1], height[0], height[1], rateHz - 1
        };
    }

    /**
     * Type X with 6, 7 or 8 bytes.
     *
     * @param options bits 2–0 formula (3 = reduced blanking v3), bit 3 early sync, bit 4 1000/1001 (v2) or 160 pixels of
     *     blanking (v3), bit 7 4:2:0
     * @param delta code of added horizontal blanking
     * @param added code of added vertical blanking
     * @param shortest whether the least vertical blanking is 300 µs, not 460
     */
    public static int[] typeX(
            int bytes,
            int options,
            int horizontalActive,
            int verticalActive,
            int rateHz,
            int delta,
            int added,
            boolean shortest) {
        int[] width = littleEndian(horizontalActive - 1, 2);
        int[] height = littleEndian(verticalActive - 1, 2);
        int[] all = {
            options,
            width[0],
            width[1],
            height[0],
            height[1],
            (rateHz - 1) & 0xFF,
            ((rateHz - 1) >> 8) | (delta << 2) | (added << 5),
            shortest ? 1 : 0
        };
        int[] used = new int[bytes];
        System.arraycopy(all, 0, used, 0, bytes);
        return used;
    }

    private static int[] long20(RasterTiming timing, int unitHz, int options) {
        int[][] fields = {
            clock(timing, unitHz),
            {options | (isInterlaced(timing) ? 0x10 : 0)},
            littleEndian(timing.horizontalActive() - 1, 2),
            littleEndian(horizontalBlank(timing) - 1, 2),
            porch(timing.horizontalFrontPorch(), timing.horizontalPolarity()),
            littleEndian(timing.horizontalSync() - 1, 2),
            littleEndian(timing.verticalActive() - 1, 2),
            littleEndian(verticalBlank(timing) - 1, 2),
            porch(frameLines(timing, timing.verticalFrontPorch()), timing.verticalPolarity()),
            littleEndian(frameLines(timing, timing.verticalSync()) - 1, 2)
        };
        int[] all = new int[20];
        int at = 0;
        for (int[] field : fields) {
            System.arraycopy(field, 0, all, at, field.length);
            at += field.length;
        }
        return all;
    }

    private static int[] porch(int count, Polarity polarity) {
        return littleEndian((count - 1) | (isPositive(polarity) ? 0x8000 : 0), 2);
    }

    private static int[] clock(RasterTiming timing, int unitHz) {
        return littleEndian(
                timing.pixelClock().ratioTo(Frequency.ofHz(unitHz)).round() - 1, 3);
    }

    private static int horizontalBlank(RasterTiming timing) {
        return timing.horizontalTotal() - timing.horizontalActive();
    }

    private static int verticalBlank(RasterTiming timing) {
        return timing.verticalTotal() - timing.verticalActive();
    }

    /** Vertical counts of DisplayID are those of a frame. */
    private static int frameLines(RasterTiming timing, int linesOfField) {
        return linesOfField * timing.scan().fieldsPerFrame();
    }

    private static boolean isInterlaced(RasterTiming timing) {
        return timing.scan() == Scan.INTERLACED;
    }

    private static boolean isPositive(Polarity polarity) {
        return polarity == Polarity.POSITIVE;
    }
}
