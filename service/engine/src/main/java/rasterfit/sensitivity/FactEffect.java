package rasterfit.sensitivity;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Estimate;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.quantity.Rational;

/**
 * What it does to the order when a fact lies at either end of its range instead of at its typical value.
 *
 * @param estimate the range; marked where it is an assumption of ours and nobody stated it
 * @param atLeast absent if it was not run
 * @param atGreatest absent if it was not run
 * @param scoreSwing the most by which the score of any leading setup differs between least, typical and greatest
 * @param changesNear value at which the first place changes, by linear interpolation of its lead; absent if it does not
 */
public record FactEffect(
        FactPath fact,
        Estimate estimate,
        @Nullable AtEnd atLeast,
        @Nullable AtEnd atGreatest,
        double scoreSwing,
        @Nullable Rational changesNear) {

    /**
     * With the fact at one end.
     *
     * @param changesFirst whether another route is first
     * @param changesOrder whether the leading routes stand in another order
     * @param first the route that is first; empty if nothing is left
     */
    public record AtEnd(boolean changesFirst, boolean changesOrder, List<RouteStep> first) {}

    /** Whether either end has another route in first place. */
    public boolean changesFirst() {
        return (atLeast != null && atLeast.changesFirst()) || (atGreatest != null && atGreatest.changesFirst());
    }
}
