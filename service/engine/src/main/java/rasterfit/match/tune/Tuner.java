package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.match.Criterion;
import rasterfit.match.LimitCheck;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.WorkLimit;
import rasterfit.match.route.Route;
import rasterfit.match.route.RoutePrice;
import rasterfit.quantity.Rational;
import rasterfit.rule.InputRules;
import rasterfit.rule.Refusal;

/** Walks through every setting of a route, one group of look-alike modes after the other. */
public final class Tuner {
    private final PixelAspectConvention convention;
    private final Map<Criterion, Double> weights;
    private final LimitCheck limits;
    private final int settingsPerRoute;
    private final WorkLimit workLimit;
    private final RefusalTally tally;
    private final Tables.Known known = new Tables.Known();
    private long settings;

    /**
     * One tuner serves one match.
     *
     * @param weights as asked, not normalised
     */
    public Tuner(
            PixelAspectConvention convention,
            Map<Criterion, Double> weights,
            LimitCheck limits,
            int settingsPerRoute,
            WorkLimit workLimit,
            RefusalTally tally) {
        this.convention = convention;
        this.weights = Map.copyOf(weights);
        this.limits = limits;
        this.settingsPerRoute = settingsPerRoute;
        this.workLimit = workLimit;
        this.tally = tally;
    }

    /** Settings enumerated so far. */
    public long settings() {
        return settings;
    }

    public TunedRoute tune(Route route, List<Mode> modes, RoutePrice price) {
        boolean digitalInput = route.output().format().isDigital();
        List<List<Mode>> groups = ModeGroups.of(modes, digitalInput, resolution(route));
        boolean switches = groups.size() > 1 && modes.stream().anyMatch(Mode::duringPlay);
        Scoring scoring = Scoring.of(weights, applying(route, switches, price));
        double library =
                modes.stream().mapToDouble(mode -> mode.share().toDouble()).sum();
        List<GroupOutcome> outcomes = new ArrayList<>();
        for (List<Mode> group : groups) {
            GroupOutcome outcome = new GroupOutcome(group, settingsPerRoute, switches);
            double[] shares = group.stream()
                    .mapToDouble(mode -> mode.share().toDouble() / library)
                    .toArray();
            walk(route, Captured.of(group, conventionOf(route)), scoring, shares, outcome);
            outcomes.add(outcome);
        }
        return new TunedRoute(route, price, scoring, outcomes);
    }

    /** A digital link carries the pixel aspect of its CTA-861 timing, whatever the request says of tubes. */
    private PixelAspectConvention conventionOf(Route route) {
        return route.output().format().isDigital() ? PixelAspectConvention.CTA_861 : convention;
    }

    private static Rational resolution(Route route) {
        Route.Leg leg = route.leg();
        return leg == null
                ? route.displayInput().lineRateResolutionPpm()
                : leg.input().lineRateResolutionPpm();
    }

    private static Set<Criterion> applying(Route route, boolean switches, RoutePrice price) {
        Set<Criterion> applying = EnumSet.allOf(Criterion.class);
        if (!(route.display().panel() instanceof Panel.Grid)) {
            applying.remove(Criterion.DOT_UNIFORMITY);
        }
        if (route.output().format().isDigital()) {
            applying.remove(Criterion.LINK_DETAIL);
        }
        if (!switches) {
            applying.remove(Criterion.MODE_SWITCH_GAP);
        }
        if (price.amount() == null) {
            applying.remove(Criterion.COST);
        }
        return applying;
    }

    private void walk(Route route, Captured captured, Scoring scoring, double[] shares, GroupOutcome outcome) {
        Layouts layouts = Layouts.of(route, captured);
        Refusal input = inputRefusal(route, captured);
        for (Refusal impossible : layouts.impossible()) {
            count(1);
            Refusal first = LimitCheck.first(input, impossible);
            tally.addSettings(route, first == null ? impossible : first, 1);
        }
        for (Layout layout : layouts.possible()) {
            count(layout.size());
            Tables tables = new Tables(layout, limits, known);
            new Combiner(tables, input, scoring, limits, shares, tally, outcome).walk(workLimit);
        }
    }

    private void count(long more) {
        settings += more;
        workLimit.checkSettings(settings);
    }

    /**
     * Modes that share a setting share their fate: one that the input cannot follow stops the group. Its settings are
     * walked through all the same, since some belong to a rule that comes before.
     */
    private static @Nullable Refusal inputRefusal(Route route, Captured captured) {
        Route.Leg leg = route.leg();
        if (leg == null) {
            return null;
        }
        ConverterInput input = leg.input();
        InputRules.Abilities abilities =
                new InputRules.Abilities(input.lineRate(), input.fieldRate(), input.scans(), input.halfHeight());
        Refusal refusal = null;
        for (Mode mode : captured.modes()) {
            refusal = LimitCheck.first(
                    refusal, InputRules.converterFollows(mode, abilities).orElse(null));
        }
        return refusal;
    }
}
