package rasterfit.app.collection;

import java.time.LocalDate;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.DisplayTest;

/**
 * What an input of an owned display did with a raster.
 *
 * @param id that of the address, which may be repeated here
 * @param item id of an owned display
 * @param input id of its input
 * @param state menu state; the result holds in every state if absent
 * @param timing a numbered timing, such as {@code vic:16}; or {@code raster}
 * @param firmware of the display when it was tried
 */
record TestResultBody(
        @Nullable String id,
        String item,
        String input,
        @Nullable String state,
        @Nullable String timing,
        @Nullable RasterBody raster,
        DisplayTest.Outcome outcome,
        @Nullable String firmware,
        LocalDate on,
        @Nullable String note)
        implements NamesItems {

    @Override
    public Set<String> namedItems() {
        return Set.of(item);
    }
}
