package rasterfit.edid;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.GtfCurve;

/**
 * The display range limits: a descriptor (E-EDID table 3.26) or, without it, a block of DisplayID. The numbers are as
 * declared: whole Hz, kHz and 10 MHz, so a comparison has to allow for the rounding.
 *
 * @param maxPixelClock absent where not stated
 * @param formula the formula whose timings the display takes beyond those that it lists
 * @param secondaryGtf present with {@link Formula#SECONDARY_GTF}
 * @param cvt present with {@link Formula#CVT} in a descriptor
 */
public record RangeLimits(
        Frequency minFieldRate,
        Frequency maxFieldRate,
        Frequency minLineRate,
        Frequency maxLineRate,
        @Nullable Frequency maxPixelClock,
        Formula formula,
        @Nullable SecondaryGtf secondaryGtf,
        @Nullable CvtSupport cvt) {

    public RangeLimits {
        if (minFieldRate.compareTo(maxFieldRate) > 0 || minLineRate.compareTo(maxLineRate) > 0) {
            throw new IllegalArgumentException("a least rate is above the greatest");
        }
    }

    /** Byte 10 of the descriptor. */
    public enum Formula {
        /** Default GTF, if the feature support byte grants it. */
        DEFAULT_GTF,
        NONE,
        SECONDARY_GTF,
        CVT,
        UNKNOWN
    }

    /**
     * A blanking curve for fast timings (E-EDID table 3.27).
     *
     * @param startLineRate above it the curve holds, up to it the default one
     */
    public record SecondaryGtf(Frequency startLineRate, GtfCurve curve) {}

    /**
     * What the display says of CVT (E-EDID table 3.28, EDID 1.4).
     *
     * @param maxActivePixels per line, absent where there is no limit
     * @param aspects width / height of the pictures that are supported, in the order of the flags
     * @param preferredAspect absent where a reserved code stands
     * @param preferredFieldRateHz absent where not stated
     */
    public record CvtSupport(
            int version,
            int revision,
            @Nullable Integer maxActivePixels,
            List<Rational> aspects,
            @Nullable Rational preferredAspect,
            boolean standardBlanking,
            boolean reducedBlanking,
            @Nullable Integer preferredFieldRateHz) {

        public CvtSupport {
            aspects = List.copyOf(aspects);
        }
    }
}
