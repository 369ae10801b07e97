package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Criterion;
import rasterfit.match.Limit;
import rasterfit.match.LimitCheck;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.match.Measures;
import rasterfit.match.property.LimitedValues;
import rasterfit.match.route.Route;
import rasterfit.match.route.RouteFinder;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.InputRules;
import rasterfit.rule.LinkClockRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;

/**
 * A request of even weights (or its own) answered by brute force: every setting of every group in every combination, each
 * with its own measures, no table, no pruning. The console's outputs are analog; limits on the price are left out.
 */
final class Exhaustive {
    private static final double EVEN = 1e-9;

    /** One setting that nothing refuses, with its measures by mode. */
    private record Open(Candidate candidate, Map<Mode, Measures> measures, AcceptanceGrade grade) {}

    private final MatchRequest request;
    private final List<Whole> all = new ArrayList<>();
    private final Map<String, List<Whole>> byRoute = new TreeMap<>();
    private final Map<String, Long> refused = new TreeMap<>();
    private long settings;

    private Exhaustive(MatchRequest request) {
        this.request = request;
    }

    static Exhaustive of(MatchRequest request) {
        Exhaustive exhaustive = new Exhaustive(request);
        List<Route> routes = RouteFinder.find(
                request, request.equipment().converters(), request.equipment().links());
        for (Route route : routes) {
            if (route.isOpen()) {
                List<Whole> setups = exhaustive.setups(route);
                exhaustive.all.addAll(setups);
                if (!setups.isEmpty()) {
                    exhaustive.byRoute.put(route.steps().toString(), setups);
                }
            }
        }
        return exhaustive;
    }

    /** Setups of all routes. */
    int setups() {
        return all.size();
    }

    Map<String, Long> refused() {
        return refused;
    }

    /**
     * Counts, refusals by rule, the best score of every route, the order of the routes, and the marks of dominance.
     *
     * @param result with one setup of each route
     */
    void compareWith(MatchResult result) {
        assertThat(result.counts().settings()).isEqualTo(settings);
        Map<String, Long> told = new TreeMap<>();
        result.refused().stream()
                .filter(group -> group.of() == RefusalGroup.Of.SETTING)
                .forEach(group -> told.merge(group.rule().id(), group.count(), Long::sum));
        assertThat(told).isEqualTo(refused);
        assertThat(result.ranked()).hasSize(byRoute.size());
        double last = 1;
        for (RankedSetup setup : result.ranked()) {
            List<Whole> own = byRoute.get(setup.route().toString());
            assertThat(own).as("setups of %s", setup.route()).isNotNull();
            double best = own.stream().mapToDouble(Whole::score).max().orElseThrow();
            assertThat(setup.score()).isCloseTo(best, within(EVEN));
            assertThat(setup.score()).isLessThanOrEqualTo(last + EVEN);
            last = setup.score();
            Whole answered = whole(setup);
            List<Boolean> marks = own.stream()
                    .filter(whole -> whole.score() > best - EVEN && whole.isLike(answered, EVEN))
                    .map(whole -> all.stream().noneMatch(other -> other.dominates(whole)))
                    .distinct()
                    .toList();
            assertThat(marks).as("setup %d", setup.rank()).containsExactly(setup.paretoOptimal());
        }
    }

    /** Which of several that are equally good was answered, by the utilities that came with it. */
    private Whole whole(RankedSetup setup) {
        Map<Criterion, Double> utilities = new EnumMap<>(Criterion.class);
        setup.criteria().forEach(value -> utilities.put(value.criterion(), value.utility()));
        return Whole.of(utilities, request.weights());
    }

    private List<Whole> setups(Route route) {
        Rational resolution = route.leg() == null
                ? route.displayInput().lineRateResolutionPpm()
                : route.leg().input().lineRateResolutionPpm();
        List<List<Open>> open = new ArrayList<>();
        for (List<Mode> group : ModeGroups.of(request.source().modes(), false, resolution)) {
            open.add(openSettings(route, Captured.of(group, request.pixelAspect())));
        }
        List<Whole> setups = new ArrayList<>();
        join(route, open, new ArrayList<>(), setups);
        return setups;
    }

    private void join(Route route, List<List<Open>> open, List<Open> chosen, List<Whole> setups) {
        if (chosen.size() == open.size()) {
            setups.add(whole(route, chosen));
            return;
        }
        for (Open setting : open.get(chosen.size())) {
            chosen.add(setting);
            join(route, open, chosen, setups);
            chosen.remove(chosen.size() - 1);
        }
    }

    private List<Open> openSettings(Route route, Captured captured) {
        List<Open> open = new ArrayList<>();
        Layouts layouts = Layouts.of(route, captured);
        for (Refusal impossible : layouts.impossible()) {
            settings++;
            List<@Nullable Refusal> reasons = inputRefusals(route, captured);
            reasons.add(impossible);
            isRefused(reasons);
        }
        for (Layout layout : layouts.possible()) {
            Tables tables = new Tables(layout, new LimitCheck(List.of()), new Tables.Known());
            for (int n = 0; n < layout.samples().length; n++) {
                for (int p = 0; p < layout.placements().size(); p++) {
                    for (int l = 0; l < layout.locks(); l++) {
                        for (int d = 0; d < layout.deinterlacers(); d++) {
                            for (int c = 0; c < layout.controls.size(); c++) {
                                look(layout, tables, n, p, l, d, c, open);
                            }
                        }
                    }
                }
            }
        }
        return open;
    }

    private static List<@Nullable Refusal> inputRefusals(Route route, Captured captured) {
        List<@Nullable Refusal> reasons = new ArrayList<>();
        if (route.leg() != null) {
            var input = route.leg().input();
            var abilities =
                    new InputRules.Abilities(input.lineRate(), input.fieldRate(), input.scans(), input.halfHeight());
            captured.modes()
                    .forEach(mode -> reasons.add(
                            InputRules.converterFollows(mode, abilities).orElse(null)));
        }
        return reasons;
    }

    /** Counts the reason that comes first. */
    private boolean isRefused(List<@Nullable Refusal> reasons) {
        Refusal first = null;
        for (Refusal reason : reasons) {
            if (reason != null && (first == null || Rules.position(reason.rule()) < Rules.position(first.rule()))) {
                first = reason;
            }
        }
        if (first != null) {
            refused.merge(first.rule().id(), 1L, Long::sum);
        }
        return first != null;
    }

    private void look(Layout layout, Tables tables, int n, int p, int l, int d, int c, List<Open> open) {
        settings++;
        Layout.Output output = layout.output(n, p, l, Steps.SILENT);
        List<@Nullable Refusal> reasons = inputRefusals(layout.route, layout.captured);
        reasons.add(layout.sampleRefusal(n));
        reasons.add(layout.placementRefusal(n, p));
        reasons.add(output.refusal());
        reasons.add(displayRefusal(layout, output));
        for (Mode mode : layout.captured.modes()) {
            reasons.add(layout.added(mode, n, p, l, d, Steps.SILENT).refusal());
        }
        if (isRefused(reasons)) {
            return;
        }
        Candidate candidate = new Candidate(tables, n, p, l, d, c, 0, 0, 0, AcceptanceGrade.LISTED, "");
        var measured = new Measurer(candidate, false).measure(null);
        Map<Mode, Measures> byMode = new LinkedHashMap<>();
        for (Mode mode : layout.captured.modes()) {
            byMode.put(mode, measured.measuresByMode().getOrDefault(mode.name(), measured.measures()));
        }
        // Limits of the request come last in the order of the rules, so only what nothing else refuses is measured.
        List<@Nullable Refusal> limits = new ArrayList<>();
        for (Limit limit : request.limits()) {
            for (Measures measures : byMode.values()) {
                Rational value = LimitedValues.of(measures, limit);
                limits.add(value == null || limit.isKeptBy(value) ? null : LimitCheck.refusal(limit, value));
            }
        }
        if (!isRefused(limits)) {
            open.add(
                    new Open(candidate, byMode, measured.measures().acceptance().grade()));
        }
    }

    private static @Nullable Refusal displayRefusal(Layout layout, Layout.Output output) {
        var input = layout.route.displayInput();
        if (!layout.route.endsDigital()) {
            return DisplayRange.refusal(input, output.raster(), layout.captured);
        }
        // HDMI 1.3a §8.3: 165 MHz where no more is declared.
        Frequency greatest = input.sink() == null || input.sink().maxTmdsClock() == null
                ? Frequency.ofHz(165_000_000)
                : input.sink().maxTmdsClock();
        return LinkClockRules.display(output.raster().pixelClock(), greatest).orElse(null);
    }

    private Whole whole(Route route, List<Open> chosen) {
        double library = request.source().modes().stream()
                .mapToDouble(mode -> mode.share().toDouble())
                .sum();
        Map<Criterion, Double> utilities = new EnumMap<>(Criterion.class);
        AcceptanceGrade grade = AcceptanceGrade.TESTED;
        for (Open open : chosen) {
            grade = grade.worse(open.grade());
            for (Map.Entry<Mode, Measures> entry : open.measures().entrySet()) {
                double share = entry.getKey().share().toDouble() / library;
                PublishedCurves.of(route, entry.getKey(), entry.getValue(), showsWholeFrames(open, entry.getKey()))
                        .forEach((criterion, utility) -> utilities.merge(criterion, share * utility, Double::sum));
            }
        }
        utilities.put(Criterion.ACCEPTANCE, grade.utility());
        if (chosen.size() > 1 && request.source().modes().stream().anyMatch(Mode::duringPlay)) {
            boolean same = chosen.stream()
                    .allMatch(open -> PublishedCurves.isSameRaster(
                            chosen.get(0).candidate().raster(), open.candidate().raster()));
            utilities.put(Criterion.MODE_SWITCH_GAP, PublishedCurves.gap(route, same));
        }
        utilities.put(Criterion.EFFORT, PublishedCurves.effort(route));
        Double cost = PublishedCurves.cost(route);
        if (cost != null) {
            utilities.put(Criterion.COST, cost);
        }
        return Whole.of(utilities, request.weights());
    }

    private static boolean showsWholeFrames(Open open, Mode mode) {
        return mode.isInterlaced()
                && open.candidate().tables().layout.processing() instanceof Processing.RasterScale scale
                && !scale.deinterlacers().isEmpty()
                && scale.deinterlacers().get(open.candidate().d()).wholeFrame();
    }
}
