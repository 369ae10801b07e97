package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A price: either {@code amount}, or {@code least} and {@code greatest}.
 *
 * @param currency code of ISO 4217
 */
public record PriceBody(
        @Nullable String amount,
        @Nullable String least,
        @Nullable String greatest,
        @Schema(pattern = "[A-Z]{3}") String currency,
        @Nullable LocalDate asOf) {}
