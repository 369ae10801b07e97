package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import org.apache.commons.numbers.fraction.BigFraction;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.match.PixelAspectConvention;

/**
 * How wide a dot is meant to be against the height of a frame line: on a 4:3 tube the square-pixel rate against the dot
 * clock. Square pixels come at 135/11 MHz and 14.75 MHz in an interlaced frame (780 and 944 to the line, common
 * practice); a picture of half as many lines has lines twice as high; one that draws all lines in every field needs twice
 * the rate. CTA-861-I table 2 gives 8:9 and 16:15 at 13.5 MHz instead.
 */
final class DotShape {
    private DotShape() {}

    static BigFraction intended(Mode mode, PixelAspectConvention convention) {
        if (mode.shape() == PictureShape.SQUARE_DOTS) {
            return BigFraction.ONE;
        }
        BigFraction tube = onTube(mode, convention);
        // An anamorphic 16:9 picture is a third wider than 4:3.
        return mode.shape() == PictureShape.TUBE_16_9 ? tube.multiply(BigFraction.of(4, 3)) : tube;
    }

    static BigFraction onTube(Mode mode, PixelAspectConvention convention) {
        boolean vic1 = !mode.isInterlaced()
                && mode.active().dots() == 640
                && fraction(mode.dotsPerLine()).equals(BigFraction.of(800))
                && fraction(mode.linesPerField()).equals(BigFraction.of(525));
        if (mode.lineStandard() == LineStandard.OTHER || vic1) {
            return BigFraction.ONE; // VESA DMT; CTA-861-I table 2 for VIC 1
        }
        boolean is525 = mode.lineStandard() == LineStandard.L525_60;
        BigFraction squareHz = convention == PixelAspectConvention.BROADCAST
                ? is525 ? BigFraction.of(135_000_000, 11) : BigFraction.of(14_750_000)
                : BigFraction.of(13_500_000).multiply(is525 ? BigFraction.of(8, 9) : BigFraction.of(16, 15));
        BigFraction atDotClock = squareHz.divide(fraction(mode.dotClock().hz()));
        if (mode.isInterlaced()) {
            return atDotClock;
        }
        return mode.isHalfHeightProgressive() ? atDotClock.divide(2) : atDotClock.multiply(2);
    }
}
