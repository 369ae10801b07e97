package rasterfit.match.tune;

import java.util.EnumSet;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.HalfHeight;
import rasterfit.quantity.Rational;
import rasterfit.rule.InputRules;
import rasterfit.rule.Refusal;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/** Whether an analog input of a display follows a raster. */
final class DisplayRange {
    private static final Rational FULL_HEIGHT_LINES = Rational.of(400);

    private DisplayRange() {}

    static @Nullable Refusal refusal(DisplayInput input, Raster raster, Captured captured) {
        boolean halfHeight = captured.lead().isHalfHeightProgressive()
                && raster.scan() == Scan.PROGRESSIVE
                && raster.verticalTotal().isLessThan(FULL_HEIGHT_LINES);
        return InputRules.displayFollows(
                        raster.lineRate(),
                        raster.fieldRate(),
                        raster.scan(),
                        halfHeight,
                        new InputRules.Abilities(
                                input.lineRate(), input.fieldRate(), input.scans(), input.halfHeight()))
                .orElse(null);
    }

    /** The rates alone, of a raster that was seen on the display. */
    static @Nullable Refusal rateRefusal(DisplayInput input, Raster raster) {
        InputRules.Abilities rates = new InputRules.Abilities(
                input.lineRate(), input.fieldRate(), EnumSet.allOf(Scan.class), HalfHeight.SHOWN);
        return InputRules.displayFollows(raster.lineRate(), raster.fieldRate(), raster.scan(), false, rates)
                .orElse(null);
    }
}
