package rasterfit.gear;

/** What an input makes of a half-height progressive raster (about 240 or 288 lines in every field). */
public enum HalfHeight {
    SHOWN,
    AS_INTERLACED,
    UNSTABLE,
    REFUSED
}
