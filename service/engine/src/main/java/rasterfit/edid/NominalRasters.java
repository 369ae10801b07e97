package rasterfit.edid;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.RangeLimits.Formula;
import rasterfit.edid.RangeLimits.SecondaryGtf;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Cvt;
import rasterfit.timing.CvtBlanking;
import rasterfit.timing.CvtRequest;
import rasterfit.timing.Dmt;
import rasterfit.timing.Gtf;
import rasterfit.timing.GtfCurve;
import rasterfit.timing.GtfRequest;
import rasterfit.timing.RasterTiming;

/**
 * The rasters of the standard timings of one EDID, which give only a size and a rate: that of VESA DMT where it lists the
 * code, else that of a formula. The formula is CVT where the range limits of an EDID 1.4 declare it and GTF otherwise, with
 * the secondary curve above its start where the limits have one (E-EDID §3.9, tables 3.26 to 3.28; that GTF holds for a
 * display without range limits as well is how {@code edid-decode} reads it).
 */
record NominalRasters(@Nullable RangeLimits limits) {

    /** @param timing absent where the formula leaves no room for blanking */
    record Found(@Nullable RasterTiming timing, TimingBasis basis) {}

    /** @param code the two bytes of a standard timing, first byte high */
    Found ofStandard(int code, NominalFormat format) {
        return Dmt.findByStandardCode(code)
                .map(Dmt.MonitorTiming::timing)
                // Before EDID 1.3 some codes of 16:10 timings meant square ones.
                .filter(timing -> timing.verticalActive() == format.verticalActive())
                .map(timing -> new Found(timing, TimingBasis.DMT))
                .orElseGet(() -> ofFormula(format));
    }

    static Found ofCvt(NominalFormat format, CvtBlanking blanking) {
        return found(
                TimingBasis.CVT,
                () -> Cvt.timing(CvtRequest.progressive(
                        format.horizontalActive(), format.verticalActive(), rate(format), blanking)));
    }

    private Found ofFormula(NominalFormat format) {
        boolean byCvt = limits != null && limits.formula() == Formula.CVT;
        return byCvt ? ofCvt(format, CvtBlanking.ORDINARY) : found(TimingBasis.GTF, () -> gtf(format));
    }

    private static Found found(TimingBasis basis, Supplier<RasterTiming> formula) {
        try {
            return new Found(formula.get(), basis);
        } catch (IllegalArgumentException noRoom) {
            return new Found(null, TimingBasis.UNKNOWN);
        }
    }

    private RasterTiming gtf(NominalFormat format) {
        RasterTiming byDefault = gtf(format, null);
        SecondaryGtf secondary = limits == null ? null : limits.secondaryGtf();
        if (secondary == null || byDefault.lineRate().compareTo(secondary.startLineRate()) <= 0) {
            return byDefault;
        }
        return gtf(format, secondary.curve());
    }

    private static RasterTiming gtf(NominalFormat format, @Nullable GtfCurve curve) {
        return Gtf.timing(new GtfRequest(
                format.horizontalActive(), format.verticalActive(), rate(format), format.scan(), false, curve));
    }

    private static Frequency rate(NominalFormat format) {
        return Frequency.ofHz(format.fieldRateHz());
    }
}
