package rasterfit.gear;

/** The broadcast family from which a raster derives. */
public enum LineStandard {
    L525_60,
    L625_50,
    OTHER
}
