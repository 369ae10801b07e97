package rasterfit.edid;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/**
 * How large the image is, as far as the EDID says.
 *
 * @param sizeMm from the first detailed timing where it agrees with the screen size in centimetres, else from that;
 *     absent for a projector or where neither is stated
 * @param aspect width / height where the EDID gives a shape in place of a size (E-EDID table 3.12)
 */
public record ScreenSize(@Nullable SizeMm sizeMm, @Nullable Rational aspect) {
    /** A size in millimetres. */
    public record SizeMm(int width, int height) {
        public SizeMm {
            if (width <= 0 || height <= 0) {
                throw new IllegalArgumentException("an image has a positive size: " + width + " by " + height + " mm");
            }
        }
    }
}
