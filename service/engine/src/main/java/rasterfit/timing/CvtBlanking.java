package rasterfit.timing;

/** How much blanking CVT gives a timing. Only the first two may be interlaced or have margins (CVT 2.0 table 3-1). */
public sealed interface CvtBlanking {
    CvtBlanking ORDINARY = new Ordinary();
    CvtBlanking REDUCED_V1 = new ReducedV1();
    CvtBlanking REDUCED_V2 = new ReducedV2(false);
    CvtBlanking REDUCED_V2_VIDEO = new ReducedV2(true);
    CvtBlanking REDUCED_V3 = new ReducedV3(ReducedV3.LEAST_PIXELS, ReducedV3.USUAL_MICROSECONDS, false);

    /** Blanking that gives a tube time to fly back (CVT 1.2 §5.2). */
    record Ordinary() implements CvtBlanking {}

    /** 160 pixels, at least 460 µs (CVT 1.2 §5.3). */
    record ReducedV1() implements CvtBlanking {}

    /**
     * 80 pixels, at least 460 µs (CVT 1.2 §5.4).
     *
     * @param videoOptimised the clock is that of 1000/1001 of the rate asked for
     */
    record ReducedV2(boolean videoOptimised) implements CvtBlanking {}

    /**
     * Blanking that can be widened (CVT 2.0; stated in type X timings of DisplayID 2.1a §4).
     *
     * @param horizontalPixels of blanking: 80 to 200 in steps of 8
     * @param leastVerticalMicroseconds 460 + 35·k or 300 + 20·k in DisplayID, k from 0 to 7
     * @param earlySync vertical sync is sent near the middle of the blanking, not near its end
     */
    record ReducedV3(int horizontalPixels, int leastVerticalMicroseconds, boolean earlySync) implements CvtBlanking {
        public static final int LEAST_PIXELS = 80;
        public static final int MOST_PIXELS = 200;
        public static final int PIXEL_STEP = 8;
        public static final int LEAST_MICROSECONDS = 300;
        public static final int USUAL_MICROSECONDS = 460;
        public static final int MOST_MICROSECONDS = 705;

        public ReducedV3 {
            if (horizontalPixels < LEAST_PIXELS
                    || horizontalPixels > MOST_PIXELS
                    || horizontalPixels % PIXEL_STEP != 0) {
                throw new IllegalArgumentException("horizontal blanking lies from " + LEAST_PIXELS + " to "
                        + MOST_PIXELS + " pixels, in steps of " + PIXEL_STEP);
            }
            if (leastVerticalMicroseconds < LEAST_MICROSECONDS || leastVerticalMicroseconds > MOST_MICROSECONDS) {
                throw new IllegalArgumentException("the least vertical blanking lies from " + LEAST_MICROSECONDS
                        + " to " + MOST_MICROSECONDS + " microseconds");
            }
        }
    }
}
