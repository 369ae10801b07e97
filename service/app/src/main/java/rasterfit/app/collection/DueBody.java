package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.upkeep.UpkeepWork;

/**
 * Work that comes: once on a day, or again a number of months after the last time.
 *
 * @param id that of the address, which may be repeated here
 * @param text in words; needed where the work is OTHER
 * @param dueOn for work that is done once; done when a service note names it
 * @param everyMonths for work that recurs; as usual for that work if absent
 * @param lastDoneOn the day from which the months run; a service note that names this, or one of the same work and item, counts
 *     instead if it is later
 * @param nextOn read only: what is sent here is ignored
 * @param overdue read only
 * @param cautions read only: what to beware of, in sentences
 */
record DueBody(
        @Nullable String id,
        String item,
        UpkeepWork work,
        @Nullable String text,
        @Nullable LocalDate dueOn,

        @Schema(implementation = BigInteger.class) @Nullable BigDecimal everyMonths,

        @Nullable LocalDate lastDoneOn,

        @Schema(accessMode = Schema.AccessMode.READ_ONLY) @Nullable
        LocalDate nextOn,

        @Schema(accessMode = Schema.AccessMode.READ_ONLY) @Nullable
        Boolean overdue,

        @Schema(accessMode = Schema.AccessMode.READ_ONLY) @Nullable
        List<String> cautions)
        implements NamesItems {

    @Override
    public Set<String> namedItems() {
        return Set.of(item);
    }
}
