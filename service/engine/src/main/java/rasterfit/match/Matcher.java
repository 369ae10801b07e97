package rasterfit.match;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Link;
import rasterfit.match.MatchResult.Counts;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.rank.Answer;
import rasterfit.match.route.Route;
import rasterfit.match.route.RouteFinder;
import rasterfit.match.route.RoutePrice;
import rasterfit.match.tune.RefusalTally;
import rasterfit.match.tune.TunedRoute;
import rasterfit.match.tune.Tuner;
import rasterfit.rule.Finding;
import rasterfit.rule.FindingRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.SignalRules;

/** Finds, tunes and ranks every way to show a console on a display. */
public final class Matcher {
    private final WorkLimit workLimit;

    public Matcher(WorkLimit workLimit) {
        this.workLimit = workLimit;
    }

    /**
     * Request → routes → tuned → ranked → result. Limits of the intent that leave nothing are told as findings instead.
     *
     * @param catalogue where the equipment comes from, if the request says so
     * @throws TooMuchWork if the request would enumerate more settings than allowed
     * @throws OutOfTime if the caller's clock runs out
     */
    public MatchResult match(MatchRequest request, Catalogue catalogue) {
        List<Route> routes = RouteFinder.find(request, converters(request, catalogue), links(request, catalogue));
        List<Limit> all = new ArrayList<>(request.limits());
        all.addAll(request.intent().limits());
        MatchResult result =
                answer(request, catalogue, routes, all, request.owned().findings());
        if (result.ranked().isEmpty() && !request.intent().limits().isEmpty()) {
            List<Finding> notKept = new ArrayList<>(request.owned().findings());
            notKept.add(new Finding(
                    FindingRules.INTENT_LIMIT,
                    "No setup keeps the limits of " + request.intent() + " ("
                            + request.intent().limits().stream()
                                    .map(Limit::told)
                                    .collect(Collectors.joining(", "))
                            + "); they were not applied."));
            return answer(request, catalogue, routes, request.limits(), notKept);
        }
        return result;
    }

    private MatchResult answer(
            MatchRequest request,
            Catalogue catalogue,
            List<Route> routes,
            List<Limit> limits,
            List<Finding> everywhere) {
        RefusalTally tally = new RefusalTally();
        LimitCheck limitCheck = new LimitCheck(limits);
        Tuner tuner = new Tuner(
                request.pixelAspect(), request.allWeights(), limitCheck, request.settingsPerRoute(), workLimit, tally);
        List<TunedRoute> tuned = new ArrayList<>();
        for (Route route : routes) {
            RoutePrice price = RoutePrice.of(route, request.owned().parts());
            Refusal refusal = route.refusal() != null ? route.refusal() : price.refusal(limitCheck);
            if (refusal != null) {
                tally.addRoute(route, refusal);
            } else {
                tuned.add(tuner.tune(route, request.source().modes(), price));
            }
        }
        if (routes.isEmpty()) {
            tally.addNothing(nothingMates(request));
        }
        List<RankedSetup> ranked = Answer.of(request, tuned, everywhere);
        Counts counts = new Counts(routes.size(), tally.refusedRoutes(), tuner.settings(), tally.refusedSettings());
        return new MatchResult(catalogue.revision(), counts, ranked, tally.groups());
    }

    private static Refusal nothingMates(MatchRequest request) {
        String outputs = request.source().outputs().stream()
                .map(output -> output.format() + " on " + output.plug().connector())
                .distinct()
                .collect(Collectors.joining(", "));
        String inputs = request.display().inputs().stream()
                .map(input -> input.plug() == null
                        ? "an input of unknown connector for "
                                + input.accepts().get(0).format()
                        : input.plug().connector().toString())
                .distinct()
                .collect(Collectors.joining(", "));
        return SignalRules.nothingMates(outputs, inputs);
    }

    private static List<Converter> converters(MatchRequest request, Catalogue catalogue) {
        List<Converter> all = new ArrayList<>(request.equipment().converters());
        if (request.equipment().fromCatalogue()) {
            all.addAll(catalogue.converters().values());
        }
        return all;
    }

    private static List<Link> links(MatchRequest request, Catalogue catalogue) {
        List<Link> all = new ArrayList<>(request.equipment().links());
        if (request.equipment().fromCatalogue()) {
            all.addAll(catalogue.links().values());
        }
        return all;
    }

    /** The limits under which this matcher works. */
    public WorkLimit workLimit() {
        return workLimit;
    }
}
