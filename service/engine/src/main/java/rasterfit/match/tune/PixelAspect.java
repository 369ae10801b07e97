package rasterfit.match.tune;

import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Broadcast;

/**
 * The intended shape of a dot, width to height, the height being that of a frame line.
 *
 * <p>On a 4:3 tube a dot is as wide as the square-pixel rate is to the dot clock; half of that for half-height
 * progressive rasters, whose lines lie twice as far apart; twice that for full-height progressive rasters of the
 * 13.5 MHz family, whose lines take half of the time. Rasters outside of the broadcast families have square pixels
 * (VESA DMT; CTA-861-I table 2 for VIC 1).
 */
public final class PixelAspect {
    private static final Rational CTA_525 = Rational.of(8, 9);
    private static final Rational CTA_625 = Rational.of(16, 15);
    private static final Rational ANAMORPHIC = Rational.of(4, 3);

    private PixelAspect() {}

    /** The intended aspect, artwork and anamorphic pictures included. */
    public static Rational intended(Mode mode, PixelAspectConvention convention, Steps steps) {
        if (mode.shape() == PictureShape.SQUARE_DOTS) {
            steps.tell(
                    "pixelAspectRatio",
                    step -> step.in("shape", "SQUARE_DOTS")
                            .by("1", "definition: the artwork was drawn for square dots")
                            .gives(Rational.ONE, ""));
            return Rational.ONE;
        }
        Rational onTube = onTube(mode, convention, steps);
        if (mode.shape() == PictureShape.TUBE_4_3) {
            return onTube;
        }
        Rational wide = onTube.times(ANAMORPHIC);
        steps.tell(
                "pixelAspectRatio",
                step -> step.in("on a 4:3 tube", onTube, "")
                        .by("on a 4:3 tube · (16/9) / (4/3)", "definition: anamorphic 16:9")
                        .gives(wide, ""));
        return wide;
    }

    /** The aspect that a 4:3 tube gives a dot. */
    public static Rational onTube(Mode mode, PixelAspectConvention convention, Steps steps) {
        if (mode.lineStandard() == LineStandard.OTHER || isSquarePixelRaster(mode)) {
            steps.tell(
                    "pixelAspectRatio",
                    step -> step.in("lineStandard", mode.lineStandard().name())
                            .by("1", "VESA DMT; CTA-861-I table 2, VIC 1")
                            .gives(Rational.ONE, ""));
            return Rational.ONE;
        }
        Rational linesFactor =
                mode.isInterlaced() ? Rational.ONE : mode.isHalfHeightProgressive() ? Rational.HALF : Rational.of(2);
        Frequency squareRate = squareRate(mode, convention);
        Rational aspect = squareRate.ratioTo(mode.dotClock()).times(linesFactor);
        steps.tell(
                "pixelAspectRatio",
                step -> step.in("square-pixel rate", squareRate.hz(), "Hz")
                        .in("dot clock", mode.dotClock().hz(), "Hz")
                        .in("lines factor", linesFactor, "")
                        .by(
                                "square-pixel rate / dot clock · lines factor (1 interlaced, 1/2 half-height progressive, 2"
                                        + " full-height progressive)",
                                convention == PixelAspectConvention.BROADCAST
                                        ? "common practice: 780 and 944 square samples per standard line"
                                        : "CTA-861-I table 2: 8:9 and 16:15 at 13.5 MHz")
                        .gives(aspect, ""));
        return aspect;
    }

    private static Frequency squareRate(Mode mode, PixelAspectConvention convention) {
        boolean is525 = mode.lineStandard() == LineStandard.L525_60;
        if (convention == PixelAspectConvention.BROADCAST) {
            return is525 ? Broadcast.SQUARE_PIXEL_525 : Broadcast.SQUARE_PIXEL_625;
        }
        return Broadcast.LUMA_SAMPLING.times(is525 ? CTA_525 : CTA_625);
    }

    /** VIC 1 and its DMT twin run the 525-line count with 800 square pixels a line. */
    private static boolean isSquarePixelRaster(Mode mode) {
        return !mode.isInterlaced()
                && mode.dotsPerLine().equals(Rational.of(800))
                && mode.linesPerField().equals(Rational.of(525))
                && mode.active().dots() == 640;
    }
}
