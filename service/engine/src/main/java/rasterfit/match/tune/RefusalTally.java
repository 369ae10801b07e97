package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rasterfit.match.Chain;
import rasterfit.match.MatchResult.Nearest;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.match.route.Route;
import rasterfit.quantity.Rational;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;

/** Counts refused routes and settings by rule and keeps the one of each that misses its limit by the least. */
public final class RefusalTally {
    private final Map<Integer, Entry> routes = new TreeMap<>();
    private final Map<Integer, Entry> settings = new TreeMap<>();

    private static final class Entry {
        private final Refusal first;
        private long count;
        private double leastMiss = Double.POSITIVE_INFINITY;
        private @Nullable Refusal nearest;
        private @Nullable Route nearestRoute;
        private final List<Route> refused = new ArrayList<>();
        /** By identity: to compare routes part by part for every refusal would take long. */
        private final Set<Route> known = Collections.newSetFromMap(new IdentityHashMap<>());

        Entry(Refusal first) {
            this.first = first;
        }

        void add(Route route, Refusal refusal, long more) {
            count += more;
            if (known.add(route)) {
                refused.add(route);
            }
            if (refusal.value() != null && refusal.miss() < leastMiss) {
                leastMiss = refusal.miss();
                nearest = refusal;
                nearestRoute = route;
            }
        }

        RefusalGroup group(RefusalGroup.Of of) {
            Refusal told = nearest == null ? first : nearest;
            Rational value = told.value();
            Rational limit = told.limit();
            Nearest near = nearestRoute == null || value == null || limit == null
                    ? null
                    : new Nearest(nearestRoute.ids(), value, limit, told.unit());
            return new RefusalGroup(told.rule(), of, count, near, told.message(), chains());
        }

        private List<Chain> chains() {
            Set<Chain> chains = new LinkedHashSet<>();
            refused.forEach(route -> chains.add(Chain.of(route.steps())));
            return List.copyOf(chains);
        }
    }

    public void addRoute(Route route, Refusal refusal) {
        routes.computeIfAbsent(Rules.position(refusal.rule()), position -> new Entry(refusal))
                .add(route, refusal, 1);
    }

    /** A refusal of the request as a whole; it counts nothing. */
    public void addNothing(Refusal refusal) {
        routes.putIfAbsent(Rules.position(refusal.rule()), new Entry(refusal));
    }

    /** Settings of one route that share their nearest refusal by one rule. */
    public void addSettings(Route route, Refusal nearest, long count) {
        settings.computeIfAbsent(Rules.position(nearest.rule()), position -> new Entry(nearest))
                .add(route, nearest, count);
    }

    public int refusedRoutes() {
        return (int) total(routes);
    }

    public long refusedSettings() {
        return total(settings);
    }

    private static long total(Map<Integer, Entry> entries) {
        return entries.values().stream().mapToLong(entry -> entry.count).sum();
    }

    /** In the order of the rules, routes before settings. */
    public List<RefusalGroup> groups() {
        List<RefusalGroup> groups = new ArrayList<>();
        routes.values().forEach(entry -> groups.add(entry.group(RefusalGroup.Of.ROUTE)));
        settings.values().forEach(entry -> groups.add(entry.group(RefusalGroup.Of.SETTING)));
        groups.sort(Comparator.comparingInt((RefusalGroup group) -> Rules.position(group.rule()))
                .thenComparing(RefusalGroup::of));
        return groups;
    }
}
