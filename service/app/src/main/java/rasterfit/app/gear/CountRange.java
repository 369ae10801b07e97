package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;

/** Whole numbers from {@code min} to {@code max}, both included. */
public record CountRange(
        @Schema(implementation = BigInteger.class) BigDecimal min,
        @Schema(implementation = BigInteger.class) BigDecimal max) {}
