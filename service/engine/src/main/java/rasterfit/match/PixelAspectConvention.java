package rasterfit.match;

/** Which shape a dot of a broadcast-derived raster is taken to have. */
public enum PixelAspectConvention {
    /** The square-pixel rates of both systems (135/11 and 14.75 MHz) against the dot clock. */
    BROADCAST,
    /** CTA-861-I table 2: 720 samples of 13.5 MHz are as wide as a 4:3 picture. */
    CTA_861
}
