package rasterfit.upkeep;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Work that keeps old gear going, how often it is usually due, and what to beware of (common practice throughout). */
public enum UpkeepWork {
    CHECK_SAVE_BATTERY("See whether stored games are kept; a cell lasts one to two decades.", 12, Caution.BATTERIES),
    REPLACE_SAVE_BATTERY(
            "Replace the cell that keeps stored games, with one of its kind in a holder or with tabs.",
            180,
            Caution.BATTERIES,
            Caution.SOLDERING),
    INSPECT_CAPACITORS(
            "Look for leaking or bulging electrolytic capacitors and for a picture or sound that got worse.",
            24,
            Caution.MAINS,
            Caution.CHARGED_CAPACITORS),
    REPLACE_CAPACITORS(
            "Replace electrolytic capacitors that leak or have lost their value.",
            null,
            Caution.MAINS,
            Caution.CHARGED_CAPACITORS,
            Caution.SOLDERING),
    CHECK_SUPPLY(
            "Compare voltage, polarity and plug of the supply with what the device asks for, and look for damage.",
            12,
            Caution.MAINS),
    CLEAN_CONTACTS("Clean the contacts of cartridges, slots and plugs.", 12, Caution.SOLVENTS),
    CLEAN_LENS("Clean the lens of an optical drive.", 24, Caution.MAINS, Caution.LASER, Caution.SOLVENTS),
    ADJUST_TUBE(
            "Adjust geometry, convergence or focus of a tube display.",
            null,
            Caution.MAINS,
            Caution.CHARGED_CAPACITORS,
            Caution.TUBE),
    REMOVE_STORED_BATTERIES("Take the cells out of what is not used for months.", 6, Caution.BATTERIES),
    CHECK_FIRMWARE(
            "See whether converter or display has newer firmware; test results name the one they were made with.", 12),
    MEASURE_LAG("Measure the lag of a display input again after its firmware or picture preset has changed.", null),
    OTHER("Anything else, in words.", null, Caution.UNKNOWN_WORK);

    private final String statement;
    private final @Nullable Integer usualMonths;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say.
    private final List<Caution> cautions;

    UpkeepWork(String statement, @Nullable Integer usualMonths, Caution... cautions) {
        this.statement = statement;
        this.usualMonths = usualMonths;
        this.cautions = List.of(cautions);
    }

    public String statement() {
        return statement;
    }

    /** Months from one time to the next; absent where it is done on occasion. */
    public @Nullable Integer usualMonths() {
        return usualMonths;
    }

    public List<Caution> cautions() {
        return cautions;
    }
}
