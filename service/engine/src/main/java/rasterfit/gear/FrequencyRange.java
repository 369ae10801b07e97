package rasterfit.gear;

import rasterfit.quantity.Frequency;

/** A capability: the frequencies from {@code min} to {@code max}, both included. */
public record FrequencyRange(Frequency min, Frequency max) {
    public FrequencyRange {
        if (min.compareTo(max) > 0) {
            throw new IllegalArgumentException("min " + min + " is above max " + max);
        }
    }

    public boolean contains(Frequency frequency) {
        return frequency.compareTo(min) >= 0 && frequency.compareTo(max) <= 0;
    }

    /** The end of the range that is violated or nearest. */
    public Frequency nearestEnd(Frequency frequency) {
        return frequency.compareTo(min) < 0 ? min : max;
    }
}
