package rasterfit.match.property;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rasterfit.gear.Catalogue;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Matcher;
import rasterfit.match.Measures;
import rasterfit.match.Settings;
import rasterfit.match.WorkLimit;

/** An answer with its setups by what they are: their route and what is set on it. */
record Ranking(MatchResult result, Map<Identity, RankedSetup> setups) {
    /** Rounding of a sum of ten products between 0 and 1. */
    static final double ROUNDING = 1e-12;

    /** @param route names every part with its ports and states */
    record Identity(List<RouteStep> route, List<Settings> settings) {}

    static MatchResult match(MatchRequest request) {
        return new Matcher(WorkLimit.DEFAULT).match(request, Catalogue.EMPTY);
    }

    static Ranking of(MatchRequest request) {
        MatchResult result = match(request);
        Map<Identity, RankedSetup> setups = new LinkedHashMap<>();
        for (RankedSetup setup : result.ranked()) {
            // Equal settings on one route come about when a listed width is that of another window; the better counts.
            setups.putIfAbsent(identity(setup), setup);
        }
        return new Ranking(result, setups);
    }

    static Identity identity(RankedSetup setup) {
        return new Identity(
                setup.route(),
                setup.modeSettings().stream().map(ModeSetting::settings).toList());
    }

    /** Settings that nothing refuses. */
    long surviving() {
        return result.counts().settings() - result.counts().refusedSettings();
    }

    static boolean uses(RankedSetup setup, String part) {
        return setup.route().stream().anyMatch(step -> step.id().equals(part) || part.equals(step.port()));
    }

    static double utility(RankedSetup setup, Criterion criterion) {
        return setup.criteria().stream()
                .filter(value -> value.criterion() == criterion)
                .mapToDouble(CriterionValue::utility)
                .findFirst()
                .orElse(1);
    }

    /** Of every mode of every group. */
    static List<Measures> measures(RankedSetup setup) {
        List<Measures> all = new ArrayList<>();
        for (ModeSetting setting : setup.modeSettings()) {
            if (setting.measuresByMode().isEmpty()) {
                all.add(setting.measures());
            } else {
                all.addAll(setting.measuresByMode().values());
            }
        }
        return all;
    }
}
