package rasterfit.gear;

/** The class of a display, which decides its documented defaults. */
public enum DisplayClass {
    TUBE,
    MONITOR,
    TELEVISION,
    PROJECTOR
}
