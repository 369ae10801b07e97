package rasterfit.sensitivity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Catalogue;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Reruns;
import rasterfit.quantity.Rational;
import rasterfit.sensitivity.FactEffect.AtEnd;
import rasterfit.sensitivity.FactSite.End;

/** Runs a request with each uncertain fact at either end of its range. */
final class FactSearch {
    private final Shelf shelf;
    private final Reruns reruns;
    private final MatchResult result;
    private final List<RankedSetup> leading;

    /** @param leading the setups whose order counts */
    FactSearch(
            MatchRequest request, Catalogue catalogue, MatchResult result, List<RankedSetup> leading, Reruns reruns) {
        this.shelf = new Shelf(request, catalogue);
        this.reruns = reruns;
        this.result = result;
        this.leading = leading;
    }

    List<FactEffect> effects() {
        List<FactEffect> effects = new ArrayList<>();
        for (FactSite site : FactSites.of(shelf, leading)) {
            effects.add(effect(site));
        }
        return effects;
    }

    private FactEffect effect(FactSite site) {
        Optional<MatchResult> least = run(site, End.LEAST);
        Optional<MatchResult> greatest = run(site, End.GREATEST);
        return new FactEffect(
                site.path(),
                site.estimate(),
                least.map(this::atEnd).orElse(null),
                greatest.map(this::atEnd).orElse(null),
                swing(least, greatest),
                changesNear(site, least, greatest));
    }

    private Optional<MatchResult> run(FactSite site, End end) {
        Shelf changed = site.at().apply(shelf, end);
        return reruns.run(changed.request(), changed.catalogue());
    }

    private AtEnd atEnd(MatchResult changed) {
        List<List<RouteStep>> before = leading.stream().map(RankedSetup::route).toList();
        List<List<RouteStep>> after = changed.ranked().stream()
                .map(RankedSetup::route)
                .filter(before::contains)
                .toList();
        List<RouteStep> first =
                changed.ranked().isEmpty() ? List.of() : changed.ranked().get(0).route();
        boolean changesFirst = !first.equals(before.get(0));
        return new AtEnd(changesFirst, changesFirst || !after.equals(before), first);
    }

    private double swing(Optional<MatchResult> least, Optional<MatchResult> greatest) {
        double swing = 0;
        for (RankedSetup setup : leading) {
            double low = setup.score();
            double high = setup.score();
            for (Optional<MatchResult> end : List.of(least, greatest)) {
                Double score = end.map(changed -> score(changed, setup.route())).orElse(null);
                if (score != null) {
                    low = Math.min(low, score);
                    high = Math.max(high, score);
                }
            }
            swing = Math.max(swing, high - low);
        }
        return swing;
    }

    /** Absent if the route shows nothing any more. */
    private static @Nullable Double score(MatchResult changed, List<RouteStep> route) {
        return changed.ranked().stream()
                .filter(setup -> setup.route().equals(route))
                .map(RankedSetup::score)
                .findFirst()
                .orElse(null);
    }

    /** Where the lead of the first place reaches 0 on the line from typical to an end; the end at which it is lost. */
    private @Nullable Rational changesNear(FactSite site, Optional<MatchResult> least, Optional<MatchResult> greatest) {
        double now = lead(result);
        Rational typical = site.estimate().typical();
        for (End end : End.values()) {
            Optional<MatchResult> changed = end == End.LEAST ? least : greatest;
            double then = changed.map(this::lead).orElse(now);
            if (changed.isPresent() && then < 0) {
                Rational value = end == End.LEAST
                        ? site.estimate().least()
                        : site.estimate().greatest();
                Rational share = Rational.of(BigDecimal.valueOf(now / (now - then)));
                return typical.plus(value.minus(typical).times(share));
            }
        }
        return null;
    }

    /** Of the route that is first in the unchanged answer, before the best of all others. */
    private double lead(MatchResult changed) {
        List<RouteStep> first = leading.get(0).route();
        double own = 0;
        double other = 0;
        for (RankedSetup setup : changed.ranked()) {
            if (setup.route().equals(first)) {
                own = Math.max(own, setup.score());
            } else {
                other = Math.max(other, setup.score());
            }
        }
        return own - other;
    }
}
