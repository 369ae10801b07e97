package rasterfit.timing;

/** The sign of a sync pulse. */
public enum Polarity {
    POSITIVE,
    NEGATIVE
}
