package rasterfit.match.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.tune.Candidate;
import rasterfit.match.tune.GroupOutcome;
import rasterfit.match.tune.TunedRoute;

/** Joins the groups of every route to setups, orders them, and finds those that no other dominates. */
public final class Ranker {
    private static final Comparator<Setup> ORDER = Comparator.comparingDouble(Setup::score)
            .reversed()
            .thenComparing(setup -> setup.tuned().route().key());

    private Ranker() {}

    /**
     * The best setups.
     *
     * @param all every setup that could be best or undominated, for the marking
     */
    record Ranking(List<Setup> best, List<Setup> all) {
        boolean isUndominated(Setup setup) {
            return all.stream().noneMatch(other -> other.dominates(setup));
        }

        /** The settings kept of one group on the same route: the best few of every grade and raster. */
        List<Candidate> candidates(Setup setup, int group) {
            return setup.tuned().groups().get(group).best();
        }
    }

    static Ranking rank(List<TunedRoute> routes, int settingsPerRoute, int top) {
        List<Setup> all = new ArrayList<>();
        List<Setup> best = new ArrayList<>();
        for (TunedRoute route : routes) {
            List<Setup> setups = setups(route, settingsPerRoute);
            all.addAll(setups);
            setups.stream().sorted(ORDER).limit(settingsPerRoute).forEach(best::add);
        }
        best.sort(ORDER);
        return new Ranking(List.copyOf(best.subList(0, Math.min(top, best.size()))), undominated(all));
    }

    /**
     * Every setup of a route that can be among its best or undominated; none where a group has no setting left, since every
     * mode must be shown. After each group only those partial setups are kept that can still become one: a setup's score
     * and axes grow with those of its parts, all else (grade, raster) being equal.
     */
    private static List<Setup> setups(TunedRoute route, int keep) {
        List<Setup> partial = List.of(Setup.start(route));
        for (GroupOutcome group : route.groups()) {
            List<Candidate> candidates = new ArrayList<>(group.best());
            group.front().stream()
                    .filter(candidate -> !candidates.contains(candidate))
                    .forEach(candidates::add);
            List<Setup> joined = new ArrayList<>();
            for (Setup setup : partial) {
                for (Candidate candidate : candidates) {
                    joined.add(setup.with(candidate));
                }
            }
            partial = reduced(joined, keep);
        }
        return partial.stream().map(Setup::finished).toList();
    }

    private record Kind(AcceptanceGrade grade, boolean sameRaster, String raster) {}

    private static List<Setup> reduced(List<Setup> setups, int keep) {
        Map<Kind, List<Setup>> kinds = new LinkedHashMap<>();
        for (Setup setup : setups) {
            String raster = setup.sameRaster() && setup.tuned().switchesDuringPlay()
                    ? setup.settings().get(0).rasterKey()
                    : "";
            kinds.computeIfAbsent(new Kind(setup.grade(), setup.sameRaster(), raster), kind -> new ArrayList<>())
                    .add(setup);
        }
        List<Setup> kept = new ArrayList<>();
        for (List<Setup> kind : kinds.values()) {
            kind.sort(Comparator.comparingDouble(Setup::partial).reversed());
            List<Setup> front = new ArrayList<>();
            for (int i = 0; i < kind.size(); i++) {
                Setup setup = kind.get(i);
                boolean dominated = front.stream()
                        .anyMatch(other -> other.picture() >= setup.picture() && other.latency() >= setup.latency());
                if (!dominated) {
                    front.add(setup);
                }
                if (i < keep || !dominated) {
                    kept.add(setup);
                }
            }
        }
        return kept;
    }

    private static List<Setup> undominated(List<Setup> all) {
        List<Setup> front = new ArrayList<>();
        for (Setup setup : all) {
            if (front.stream().noneMatch(other -> other.dominates(setup))) {
                front.removeIf(setup::dominates);
                front.add(setup);
            }
        }
        return List.copyOf(front);
    }
}
