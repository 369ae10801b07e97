package rasterfit.match.rank;

import java.util.List;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.tune.TunedRoute;
import rasterfit.rule.Finding;

/** Ranks tuned routes and works out what is returned. */
public final class Answer {
    private Answer() {}

    /** @param everywhere findings that belong to every setup */
    public static List<RankedSetup> of(MatchRequest request, List<TunedRoute> routes, List<Finding> everywhere) {
        Ranker.Ranking ranking = Ranker.rank(routes, request.settingsPerRoute(), request.top());
        return new Materialiser(request, everywhere).materialise(ranking);
    }
}
