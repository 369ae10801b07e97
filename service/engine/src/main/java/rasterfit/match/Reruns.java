package rasterfit.match;

import java.util.Optional;
import rasterfit.gear.Catalogue;

/**
 * Runs of a matcher on changed requests, within a bound. The bound counts work, not time, so that the same request is
 * looked into equally far everywhere.
 */
public final class Reruns {
    private final Matcher matcher;
    private final Bound bound;
    private int runs;
    private int leftOut;
    private long settings;

    public Reruns(Matcher matcher, Bound bound) {
        this.matcher = matcher;
        this.bound = bound;
    }

    /**
     * When no further run is begun.
     *
     * @param runs at most so many
     * @param settings that all runs together may have enumerated before another begins
     */
    public record Bound(int runs, long settings) {}

    /** @param leftOut runs that were wanted and not made: beyond the bound, or each too much work by itself */
    public record Spent(int runs, int leftOut) {}

    /**
     * Empty if the bound was reached, or the request is too much work.
     *
     * @throws OutOfTime if the caller's clock runs out
     */
    public Optional<MatchResult> run(MatchRequest request, Catalogue catalogue) {
        if (runs >= bound.runs() || settings >= bound.settings()) {
            leftOut++;
            return Optional.empty();
        }
        runs++;
        try {
            MatchResult result = matcher.match(request, catalogue);
            settings += result.counts().settings();
            return Optional.of(result);
        } catch (TooMuchWork tooMuch) {
            settings += tooMuch.maximum();
            leftOut++;
            return Optional.empty();
        }
    }

    public Spent spent() {
        return new Spent(runs, leftOut);
    }
}
