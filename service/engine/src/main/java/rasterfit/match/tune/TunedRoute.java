package rasterfit.match.tune;

import java.util.List;
import rasterfit.match.route.Route;
import rasterfit.match.route.RoutePrice;

/**
 * A route whose settings have been walked through.
 *
 * @param groups one outcome for each group of look-alike modes; a route shows nothing useful when one is empty
 */
public record TunedRoute(Route route, RoutePrice price, Scoring scoring, List<GroupOutcome> groups) {

    /** Whether a change of mode during play makes anything lose its picture. */
    public boolean switchesDuringPlay() {
        return scoring.applies(rasterfit.match.Criterion.MODE_SWITCH_GAP);
    }
}
