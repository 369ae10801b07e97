package rasterfit.app.timing;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.Scan;

/**
 * What was read off instruments or counted; any of it may be absent, but one rate, period or count is there.
 *
 * @param linePeriodUs a plain number, or an object like the others with plain numbers
 * @param linesPerField a whole number, or ending on a half if interlaced; exact unless a range
 * @param linesPerFrame exact unless a range
 * @param dotsPerLine exact unless a range; may be a fraction
 * @param top how many timings are answered at most; 10 if absent
 */
record MeasuredBody(
        @Nullable MeasuredQuantity lineRateHz,
        @Nullable MeasuredNumber linePeriodUs,
        @Nullable MeasuredQuantity fieldRateHz,
        @Nullable MeasuredQuantity linesPerField,
        @Nullable MeasuredQuantity linesPerFrame,
        @Nullable MeasuredQuantity dotsPerLine,
        @Nullable MeasuredQuantity dotClockHz,
        @Nullable Scan scan,
        @Nullable CountedPictureBody active,

        @Schema(implementation = BigInteger.class) @Nullable BigDecimal top) {

    /** 0-based, counted from the leading edges of sync; lines are those of a field. */
    record CountedPictureBody(
            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal dots,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal lines,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal firstDot,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal firstLine) {}
}
