package rasterfit.remedy;

import org.jspecify.annotations.Nullable;

/**
 * One thing done otherwise.
 *
 * @param id of what is used now: a link, converter, output, variant, input with its state, or the measure of a limit
 * @param instead what it takes the place of; absent where it comes in addition
 * @param value the new bound of a limit as it can be written in a request; absent for other changes, and where the limit
 *     is dropped
 * @param added whether the request has to gain it: it is neither among its equipment nor chosen by it
 * @param told the change in words
 */
public record Change(
        Kind kind,
        @Nullable String id,
        @Nullable String instead,
        @Nullable String value,
        boolean added,
        String told) {

    /** What is changed. */
    public enum Kind {
        RELAXED_LIMIT,
        OTHER_SETTINGS,
        OTHER_LINKS,
        OTHER_OUTPUT,
        OTHER_DISPLAY_INPUT,
        OTHER_MENU_STATE,
        OTHER_CONVERTER_PORTS,
        OTHER_CONVERTER,
        WITHOUT_CONVERTER,
        ADDED_CONVERTER,
        ADDED_LINK,
        OTHER_VARIANT
    }

    static Change of(Kind kind, String id, @Nullable String instead, boolean added, String told) {
        return new Change(kind, id, instead, null, added, told);
    }
}
