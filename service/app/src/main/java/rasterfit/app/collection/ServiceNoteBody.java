package rasterfit.app.collection;

import java.time.LocalDate;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.PriceBody;
import rasterfit.upkeep.UpkeepWork;

/**
 * What was done to an owned item.
 *
 * @param id that of the address, which may be repeated here
 * @param done id of a due item of the same item that this finished
 * @param text in words; needed where the work is OTHER
 */
record ServiceNoteBody(
        @Nullable String id,
        String item,
        LocalDate on,
        UpkeepWork work,
        @Nullable String text,
        @Nullable PriceBody cost,
        @Nullable String done)
        implements NamesItems {

    @Override
    public Set<String> namedItems() {
        return Set.of(item);
    }
}
