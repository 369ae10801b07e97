package rasterfit.gear;

/** How a display maps the active raster to its panel. */
public enum AspectControl {
    /** Over the whole panel. */
    FILL,
    /** The largest area with the picture aspect that the link signals. */
    SIGNALLED,
    /** One sample per panel pixel, centred. */
    ONE_TO_ONE
}
