package rasterfit.app.gear;

/** A capability from {@code min} to {@code max} in hertz, both exact and both included. */
public record RangeBody(String min, String max) {}
