package rasterfit.timing;

import rasterfit.quantity.Frequency;

/** What may be asked of the timing formulas CVT and GTF. Within these limits no count overflows. */
public final class FormulaLimits {
    /** One character cell (CVT 1.2 table 3-2, GTF 1.1 §4): less is rounded to nothing. */
    public static final int LEAST_PIXELS = 8;

    /** DisplayID 2.1a counts active pixels and lines in 16 bits, from 1. */
    public static final int MOST_PIXELS = 65_536;

    public static final int MOST_LINES = 65_536;
    public static final Frequency LEAST_FIELD_RATE = Frequency.ofHz(1);

    /** DisplayID 2.1a type X timings state rates in 10 bits, from 1 Hz. A field then outlasts every least blanking. */
    public static final Frequency MOST_FIELD_RATE = Frequency.ofHz(1024);

    private FormulaLimits() {}

    static void check(int horizontalActive, int verticalActive, Frequency fieldRate, Scan scan) {
        if (horizontalActive < LEAST_PIXELS || horizontalActive > MOST_PIXELS) {
            throw new IllegalArgumentException("active pixels lie from " + LEAST_PIXELS + " to " + MOST_PIXELS);
        }
        if (verticalActive < scan.fieldsPerFrame() || verticalActive > MOST_LINES) {
            throw new IllegalArgumentException(
                    "active lines of a frame lie from " + scan.fieldsPerFrame() + " to " + MOST_LINES);
        }
        if (fieldRate.compareTo(LEAST_FIELD_RATE) < 0 || fieldRate.compareTo(MOST_FIELD_RATE) > 0) {
            throw new IllegalArgumentException("field rates lie from " + LEAST_FIELD_RATE + " to " + MOST_FIELD_RATE);
        }
    }
}
