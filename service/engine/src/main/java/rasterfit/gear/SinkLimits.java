package rasterfit.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;

/**
 * What a display input says it takes, from its EDID or as typed in.
 *
 * @param listed the rasters it lists, in the order of its list
 * @param fieldRate absent where no limits are stated
 * @param lineRate absent where no limits are stated
 * @param maxPixelClock absent where no limits are stated
 * @param continuous whether any timing within the limits is promised (E-EDID A2 table 3.14)
 * @param maxTmdsClock absent on analog inputs
 */
public record SinkLimits(
        List<ListedRaster> listed,
        @Nullable FrequencyRange fieldRate,
        @Nullable FrequencyRange lineRate,
        @Nullable Frequency maxPixelClock,
        boolean continuous,
        @Nullable Frequency maxTmdsClock,
        @Nullable LinkKind link) {

    public SinkLimits {
        listed = List.copyOf(listed);
    }

    /**
     * @param label {@code vic:16}, {@code detailed:1}, ...
     * @param pictureAspect that of the VIC; absent for a timing that has none
     */
    public record ListedRaster(
            String label, Raster raster, @Nullable Rational pictureAspect) {}
}
