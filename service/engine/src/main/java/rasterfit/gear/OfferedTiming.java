package rasterfit.gear;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.timing.RasterTiming;

/**
 * A timing under the label by which it is known ({@code vic:16}).
 *
 * @param pictureAspect the aspect that the link signals with it; absent where none is
 */
public record OfferedTiming(
        String label, RasterTiming timing, @Nullable Rational pictureAspect) {}
