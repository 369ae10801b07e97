package rasterfit.edid;

import rasterfit.timing.Scan;

/**
 * A size and a rate without blanking, which is all that standard timings, CVT codes and established timings give.
 *
 * @param verticalActive per frame
 * @param fieldRateHz rounded by the EDID
 */
public record NominalFormat(int horizontalActive, int verticalActive, Scan scan, int fieldRateHz) {}
