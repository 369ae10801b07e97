package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.Scan;

/**
 * A raster without a number, as a match tells its output; lines are those of a frame.
 *
 * @param verticalTotal exact
 * @param lineRateHz follows from the others and is ignored
 * @param fieldRateHz follows from the others and is ignored
 */
record RasterBody(
        String pixelClockHz,
        @Schema(implementation = BigInteger.class) BigDecimal horizontalActive,
        BigDecimal horizontalTotal,
        @Schema(implementation = BigInteger.class) BigDecimal verticalActive,
        BigDecimal verticalTotal,
        Scan scan,
        @Nullable String lineRateHz,
        @Nullable String fieldRateHz) {}
