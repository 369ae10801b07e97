package rasterfit.edid;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/**
 * The display range limits descriptor (E-EDID table 3.26). The numbers are as declared: whole Hz, kHz and 10 MHz, so a
 * comparison has to allow for the rounding.
 *
 * @param maxPixelClock absent where not stated
 * @param formula the formula whose timings the display takes beyond those that it lists
 */
public record RangeLimits(
        Frequency minFieldRate,
        Frequency maxFieldRate,
        Frequency minLineRate,
        Frequency maxLineRate,
        @Nullable Frequency maxPixelClock,
        Formula formula,
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
     * What the display says of CVT (E-EDID table 3.28, EDID 1.4).
     *
     * @param maxActivePixels per line, absent where there is no limit
     * @param preferredFieldRateHz absent where not stated
     */
    public record CvtSupport(
            int version,
            int revision,
            @Nullable Integer maxActivePixels,
            boolean standardBlanking,
            boolean reducedBlanking,
            @Nullable Integer preferredFieldRateHz) {}
}
