package rasterfit.replay;

import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import rasterfit.sim.ResampleSim.Seen;

/**
 * What is measured along one direction of the picture that reached the panel. Lengths are exact: they are taken between
 * the edges of dots (or frame lines), of which each is followed through all stages. Widths are counted pixel by pixel.
 *
 * @param isCounted whether the panel has pixels and the signal has dots that can be counted
 */
record Axis(Seen seen, boolean isCounted) {
    int count() {
        return seen.widths().size();
    }

    /** Panel cells per dot, rounding left out. */
    BigFraction scale() {
        BigFraction length = seen.edges().get(count()).subtract(seen.edges().get(0));
        return length.divide(count());
    }

    /** How much of some neighbouring dots can be seen, in dots; a broken number where the edge of the panel cuts one. */
    BigFraction shown(int from, int dots) {
        BigFraction left = later(seen.edges().get(from), seen.visibleFrom());
        BigFraction right = sooner(seen.edges().get(from + dots), seen.visibleTo());
        BigFraction length = right.subtract(left);
        return length.signum() <= 0 ? BigFraction.ZERO : length.divide(scale());
    }

    BigFraction hidden(int from, int dots) {
        return BigFraction.of(dots).subtract(shown(from, dots));
    }

    /** Panel cells that the visible picture covers. */
    BigFraction drawn() {
        return shown(0, count()).multiply(scale());
    }

    /** Of the dots that are wholly visible; 0 when there are none or one got no pixel. */
    @Nullable
    Integer least() {
        return isCounted ? Math.max(0, seen.leastWidth()) : null;
    }

    @Nullable
    Integer greatest() {
        return isCounted ? Math.max(0, seen.greatestWidth()) : null;
    }

    /** Panel cells that show a dot of the picture. */
    int lit() {
        return seen.widths().stream().mapToInt(Integer::intValue).sum();
    }

    private static BigFraction later(BigFraction a, BigFraction b) {
        return a.subtract(b).signum() >= 0 ? a : b;
    }

    private static BigFraction sooner(BigFraction a, BigFraction b) {
        return a.subtract(b).signum() <= 0 ? a : b;
    }
}
