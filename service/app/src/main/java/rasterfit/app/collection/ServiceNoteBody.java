package rasterfit.app.collection;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.PriceBody;
import rasterfit.upkeep.UpkeepWork;

/**
 * What was done to an owned item.
 *
 * @param id that of the address, which may be repeated here
 * @param text in words; needed where the work is OTHER
 */
record ServiceNoteBody(
        @Nullable String id,
        String item,
        LocalDate on,
        UpkeepWork work,
        @Nullable String text,
        @Nullable PriceBody cost) {}
