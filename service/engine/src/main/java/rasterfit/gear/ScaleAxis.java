package rasterfit.gear;

/**
 * What a scaler can do in one direction.
 *
 * @param factors whole factors only, or any
 * @param taps of the filter: 1 = nearest, otherwise even
 * @param maxCrop lines or dots that may be cut off in all
 */
public record ScaleAxis(Factors factors, int taps, int maxCrop) {
    /** The factors that a scaler offers. */
    public enum Factors {
        WHOLE,
        ANY
    }

    public ScaleAxis {
        if (taps != 1 && (taps <= 0 || taps % 2 != 0)) {
            throw new IllegalArgumentException("filter taps are 1 or an even number: " + taps);
        }
        if (maxCrop < 0) {
            throw new IllegalArgumentException("crop must not be negative");
        }
    }
}
