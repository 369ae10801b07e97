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
 * @param formula whose timings the display takes beyond those that it lists
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

    static DecodedLimits of(RangeLimits limits) {
        return new DecodedLimits(
                Span.of(limits.minFieldRate(), limits.maxFieldRate()),
                Span.of(limits.minLineRate(), limits.maxLineRate()),
                Plain.exactOrAbsent(limits.maxPixelClock()),
                limits.formula(),
                limits.secondaryGtf() == null ? null : SecondaryCurve.of(limits.secondaryGtf()),
                limits.cvt() == null ? null : CvtSupport.of(limits.cvt()));
    }

    record Span(BigDecimal min, BigDecimal max) {
        static Span of(Frequency min, Frequency max) {
            return new Span(Plain.of(min.hz()), Plain.of(max.hz()));
        }
    }

    /**
     * The blanking curve that holds above a line rate; the four constants as GTF 1.1 names them.
     *
     * @param c in percent
     * @param m in percent per kHz
     * @param k a number
     * @param j in percent
     */
    record SecondaryCurve(String startLineRateHz, String c, String m, String k, String j) {
        static SecondaryCurve of(RangeLimits.SecondaryGtf secondary) {
            GtfCurve curve = secondary.curve();
            return new SecondaryCurve(
                    Plain.exact(secondary.startLineRate()),
                    curve.c().toString(),
                    curve.m().toString(),
                    curve.k().toString(),
                    curve.j().toString());
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
