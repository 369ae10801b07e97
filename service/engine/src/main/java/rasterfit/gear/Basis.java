package rasterfit.gear;

/** What a number rests on, strongest first. */
public enum Basis {
    MEASURED,
    PUBLISHED,
    DECLARED,
    COMPUTED,
    ASSUMED
}
