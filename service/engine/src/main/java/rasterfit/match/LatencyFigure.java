package rasterfit.match;

/** Which figure of a latency is meant. */
public enum LatencyFigure {
    TOP,
    MIDDLE,
    BOTTOM,
    LEAST,
    TYPICAL,
    GREATEST
}
