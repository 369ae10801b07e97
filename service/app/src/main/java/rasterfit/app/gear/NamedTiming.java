package rasterfit.app.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.timing.RasterTiming;

/**
 * A timing that gear names by standard and number.
 *
 * @param label in its one written form: {@code vic:16}, {@code dmt:0x52}
 * @param variants all line counts that go by this name, the one sent first in front
 * @param pictureAspect what a link signals with it; absent for a monitor timing, which has square pixels and signals none
 */
record NamedTiming(
        String label, List<RasterTiming> variants, @Nullable Rational pictureAspect) {
    RasterTiming timing() {
        return variants.get(0);
    }
}
