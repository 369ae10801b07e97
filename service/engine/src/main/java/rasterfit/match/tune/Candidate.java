package rasterfit.match.tune;

import rasterfit.match.AcceptanceGrade;

/**
 * One setting of one group of modes that no rule refuses.
 *
 * @param partial what it adds to a setup's score, without acceptance, mode-switch gap, effort and cost
 * @param picture what it adds to the picture axis
 * @param latency what it adds to the latency axis
 * @param rasterKey equal for settings whose output rasters are equal
 */
public record Candidate(
        Tables tables,
        int n,
        int p,
        int l,
        int d,
        int c,
        double partial,
        double picture,
        double latency,
        AcceptanceGrade grade,
        String rasterKey) {

    /** The output raster. */
    public rasterfit.timing.Raster raster() {
        return tables.output(n, p, l).output.raster();
    }
}
