package rasterfit.app.display;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.edid.RangeLimits;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.GtfCurve;

/**
 * The range limits of an EDID (E-EDID tables 3.26 to 3.28), rates in whole Hz as declared.
 *
 * @param formula whose timings the display takes beyond those that it lists; {@code NONE} for default GTF that the feature
 *     support byte does not grant (table 3.26)
 * @param secondaryGtf with that formula only
 * @param cvt with that formula only, and only where a descriptor of the base block states it
 */
record DecodedLimits(
        Span fieldRateHz,
        Span lineRateHz,
        @Nullable String maxPixelClockHz,
        RangeLimits.Formula formula,
        @Nullable SecondaryCurve secondaryGtf,
        @Nullable CvtSupport cvt) {

    static DecodedLimits of(RangeLimits limits, boolean grantsGtf) {
        boolean isGranted = limits.formula() != RangeLimits.Formula.DEFAULT_GTF || grantsGtf;
        return new DecodedLimits(
                Span.of(limits.minFieldRate(), limits.maxFieldRate()),
                Span.of(limits.minLineRate(), limits.maxLineRate()),
                Plain.exactOrAbsent(limits.maxPixelClock()),
                isGranted ? limits.formula() : RangeLimits.Formula.NONE,
                limits.secondaryGtf() == null ? null : SecondaryCurve.of(limits.secondaryGtf()),
                limits.cvt() == null ? null : CvtSupport.of(limits.cvt()));
    }

    record Span(BigDecimal min, BigDecimal max) {
        static Span of(Frequency min, Frequency max) {
            return new Span(Plain.of(min.hz()), Plain.of(max.hz()));
        }
    }

    /**
     * The blanking curve that holds above a line rate; the four constants as a request to generate a timing names them.
     */
    record SecondaryCurve(
            String startLineRateHz, BigDecimal cPercent, BigDecimal mPercentPerKhz, BigDecimal k, BigDecimal jPercent) {
        static SecondaryCurve of(RangeLimits.SecondaryGtf secondary) {
            GtfCurve curve = secondary.curve();
            return new SecondaryCurve(
                    Plain.exact(secondary.startLineRate()),
                    Plain.of(curve.c()),
                    Plain.of(curve.m()),
                    Plain.of(curve.k()),
                    Plain.of(curve.j()));
        }
    }

    /**
     * @param version of CVT, {@code 1.1}
     * @param maxActivePixels per line; absent where there is no limit
     * @param aspects width to height of the pictures that are supported
     */
    record CvtSupport(
            String version,
            @Nullable Integer maxActivePixels,
            List<String> aspects,
            @Nullable String preferredAspect,
            boolean standardBlanking,
            boolean reducedBlanking,
            @Nullable Integer preferredFieldRateHz) {
        static CvtSupport of(RangeLimits.CvtSupport cvt) {
            return new CvtSupport(
                    cvt.version() + "." + cvt.revision(),
                    cvt.maxActivePixels(),
                    cvt.aspects().stream().map(Rational::toString).toList(),
                    cvt.preferredAspect() == null ? null : cvt.preferredAspect().toString(),
                    cvt.standardBlanking(),
                    cvt.reducedBlanking(),
                    cvt.preferredFieldRateHz());
        }
    }
}
