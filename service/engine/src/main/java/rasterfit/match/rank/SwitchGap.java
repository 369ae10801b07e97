package rasterfit.match.rank;

import rasterfit.gear.Assumptions;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Estimate;
import rasterfit.gear.Panel;
import rasterfit.match.route.Route;
import rasterfit.quantity.Rational;

/** How long the picture is gone when the console changes its mode during play. */
final class SwitchGap {
    private SwitchGap() {}

    /** The converter always follows anew; the display only when its raster changes. */
    static double seconds(Setup setup) {
        Route route = setup.tuned().route();
        Rational ms = Rational.ZERO;
        if (route.leg() != null) {
            ms = route.leg()
                    .converter()
                    .resyncMs()
                    .orAssume(Assumptions.CONVERTER_RESYNC_MS)
                    .typical();
        }
        if (!setup.sameRaster()) {
            ms = ms.plus(display(route).typical());
        }
        return ms.dividedBy(1000).toDouble();
    }

    private static Estimate display(Route route) {
        DisplayInput input = route.displayInput();
        Estimate assumption = route.display().panel() instanceof Panel.Tube
                ? Assumptions.TUBE_RESYNC_MS
                : route.endsDigital() ? Assumptions.DIGITAL_DISPLAY_RESYNC_MS : Assumptions.ANALOG_DISPLAY_RESYNC_MS;
        return input.resyncMs().orAssume(assumption);
    }
}
