package rasterfit.match;

import rasterfit.gear.Catalogue;

/** Finds, tunes and ranks every way to show a console on a display. */
public final class Matcher {
    private final WorkLimit workLimit;

    public Matcher(WorkLimit workLimit) {
        this.workLimit = workLimit;
    }

    /**
     * @param catalogue where the equipment comes from, if the request says so
     * @throws TooMuchWork if the request would enumerate more settings than allowed
     * @throws OutOfTime if the caller's clock runs out
     */
    public MatchResult match(MatchRequest request, Catalogue catalogue) {
        throw new UnsupportedOperationException("being built: " + workLimit + request + catalogue);
    }
}
