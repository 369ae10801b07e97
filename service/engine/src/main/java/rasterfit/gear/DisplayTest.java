package rasterfit.gear;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.Raster;

/**
 * What one input of an owner's own display did with one raster.
 *
 * @param firmware of the display when it was tried; absent where it was not noted
 */
public record DisplayTest(
        Raster raster, Outcome outcome, @Nullable String firmware, LocalDate on) {

    /** What was seen. */
    public enum Outcome {
        SHOWN,
        BLANK,
        /** Shown, with interruptions. */
        DROPS_OUT
    }
}
