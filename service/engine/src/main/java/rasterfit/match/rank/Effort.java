package rasterfit.match.rank;

import rasterfit.gear.Assumptions;
import rasterfit.match.route.Route;

/** How much there is to set. */
final class Effort {
    private Effort() {}

    /** Settings to tune on the converter; none on a direct route. */
    static double changes(Route route) {
        return route.leg() == null
                ? 0
                : route.leg()
                        .converter()
                        .settingsToTune()
                        .orAssume(Assumptions.SETTINGS_TO_TUNE)
                        .typical()
                        .toDouble();
    }
}
