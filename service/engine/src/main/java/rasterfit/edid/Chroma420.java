package rasterfit.edid;

/** Whether a timing is taken in YCbCr 4:2:0 (CTA-861-I §7.5.10, §7.5.11; DisplayID 2.1a §4.3, from memory). */
public enum Chroma420 {
    NOT_LISTED,
    /** In 4:2:0 beside the other colour formats of the display. */
    ALSO,
    /** In 4:2:0 alone. */
    ONLY
}
