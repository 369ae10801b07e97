package rasterfit.sensitivity;

/**
 * Which fact is meant.
 *
 * @param item id of the variant, link, converter or display
 * @param name of that item; of the console for a variant
 * @param of path of member names and element ids inside of the item's document, as in its provenance
 */
public record FactPath(Kind kind, String item, String name, String of) {
    /** Which kind of item. */
    public enum Kind {
        VARIANT,
        LINK,
        CONVERTER,
        DISPLAY
    }

    @Override
    public String toString() {
        return kind + " " + item + " " + of;
    }
}
