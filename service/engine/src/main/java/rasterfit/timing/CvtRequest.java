package rasterfit.timing;

import rasterfit.quantity.Frequency;

/**
 * What CVT makes a timing for.
 *
 * @param horizontalActive pixels; rounded down to character cells of 8 where the formula does so
 * @param verticalActive lines per frame
 * @param fieldRate fields per second that are asked for; the rate of the timing may differ, as its clock is rounded
 * @param margins whether a border of 1.8 % is added on every side
 */
public record CvtRequest(
        int horizontalActive,
        int verticalActive,
        Frequency fieldRate,
        Scan scan,
        boolean margins,
        CvtBlanking blanking) {

    /** @throws IllegalArgumentException beyond {@link FormulaLimits}, and if the blanking forbids the scan or margins */
    public CvtRequest {
        FormulaLimits.check(horizontalActive, verticalActive, fieldRate, scan);
        boolean forTubes = blanking instanceof CvtBlanking.Ordinary || blanking instanceof CvtBlanking.ReducedV1;
        if (!forTubes && (margins || scan == Scan.INTERLACED)) {
            throw new IllegalArgumentException(
                    "reduced blanking of version 2 and 3 is for progressive timings without margins");
        }
    }

    public static CvtRequest progressive(
            int horizontalActive, int verticalActive, Frequency fieldRate, CvtBlanking blanking) {
        return new CvtRequest(horizontalActive, verticalActive, fieldRate, Scan.PROGRESSIVE, false, blanking);
    }
}
