package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;

/** Whole numbers from {@code min} to {@code max}, both included. */
public record CountRange(
        @Schema(type = "integer") BigDecimal min,
        @Schema(type = "integer") BigDecimal max) {}
