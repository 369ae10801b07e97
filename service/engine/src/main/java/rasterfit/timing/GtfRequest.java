package rasterfit.timing;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/**
 * What GTF makes a timing for.
 *
 * @param horizontalActive pixels; rounded to the nearest character cell of 8
 * @param verticalActive lines per frame
 * @param fieldRate fields per second, kept exactly
 * @param margins whether a border of 1.8 % is added on every side
 * @param secondaryCurve of a display that states one; the default curve if absent
 */
public record GtfRequest(
        int horizontalActive,
        int verticalActive,
        Frequency fieldRate,
        Scan scan,
        boolean margins,
        @Nullable GtfCurve secondaryCurve) {

    /** @throws IllegalArgumentException beyond {@link FormulaLimits} */
    public GtfRequest {
        FormulaLimits.check(horizontalActive, verticalActive, fieldRate, scan);
    }

    /** With the default curve. */
    public static GtfRequest progressive(int horizontalActive, int verticalActive, Frequency fieldRate) {
        return new GtfRequest(horizontalActive, verticalActive, fieldRate, Scan.PROGRESSIVE, false, null);
    }
}
