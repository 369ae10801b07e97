package rasterfit.match;

import java.util.function.BooleanSupplier;

/**
 * How much one match may cost.
 *
 * @param maxSettings settings to enumerate over all routes
 * @param outOfTime asked now and then; true ends the match with {@link OutOfTime}
 */
public record WorkLimit(long maxSettings, BooleanSupplier outOfTime) {
    /** Two million settings (assumption) and no clock. */
    public static final WorkLimit DEFAULT = new WorkLimit(2_000_000, () -> false);

    /** Asks the clock. */
    public void check() {
        if (outOfTime.getAsBoolean()) {
            throw new OutOfTime();
        }
    }

    /** Asks whether so many settings are allowed. */
    public void checkSettings(long settings) {
        if (settings > maxSettings) {
            throw new TooMuchWork(settings, maxSettings);
        }
    }
}
