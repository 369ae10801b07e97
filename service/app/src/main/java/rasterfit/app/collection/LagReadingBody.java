package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.LagReading;

/**
 * Lag of a display input, read with a camera.
 *
 * @param id that of the address, which may be repeated here
 * @param item id of an owned display
 * @param input id of its input
 * @param state menu state; the reading holds in every state if absent
 * @param timing such as {@code vic:16}; any if absent
 * @param cameraFramesPerSecond exact
 * @param framesCounted camera frames between cause and picture, one count for each repetition
 * @param referenceRow panel row at which it was read; the top row if absent
 * @param statistics read only: what is sent here is ignored
 */
record LagReadingBody(
        @Nullable String id,
        String item,
        String input,
        @Nullable String state,
        @Nullable String timing,
        String cameraFramesPerSecond,
        List<BigDecimal> framesCounted,
        LagReading.Method method,

        @Schema(implementation = BigInteger.class) @Nullable BigDecimal referenceRow,

        LocalDate on,
        @Nullable String note,

        @Schema(accessMode = Schema.AccessMode.READ_ONLY) @Nullable
        LagStatisticsAnswer statistics)
        implements NamesItems {

    @Override
    public Set<String> namedItems() {
        return Set.of(item);
    }
}
