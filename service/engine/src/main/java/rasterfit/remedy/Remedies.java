package rasterfit.remedy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Catalogue;
import rasterfit.match.Chain;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Matcher;
import rasterfit.match.Reruns;
import rasterfit.match.Settings;
import rasterfit.remedy.Change.Kind;

/**
 * The single changes that make a refused chain work, or lift a setup. Each is one part of the chain exchanged, added or
 * left out, or one limit moved, and each rests on a run of the matcher that ranks the setup which it leads to: the run of
 * the request itself where all parts are at hand, a run of the changed request otherwise.
 */
public final class Remedies {
    /** At most 40 runs, and no further one once they have enumerated half a million settings (assumption). */
    public static final Reruns.Bound BOUND = new Reruns.Bound(40, 500_000);

    /** So many are told of each refusal or setup, the best of those that were found. */
    static final int MOST = 5;

    /** Sums of the same products in another order differ by less. */
    private static final double ROUNDING = 1e-12;

    private static final Comparator<Remedy> ORDER = Comparator.comparingDouble(Remedy::resultingScore)
            .reversed()
            .thenComparing(Remedies::amount)
            .thenComparing(Remedies::key);

    private static final BigDecimal UNKNOWN = new BigDecimal("1e30");

    private final List<Outcome> outcomes = new ArrayList<>();
    private final Map<Chain, RankedSetup> present;

    private Remedies(Map<Chain, RankedSetup> present) {
        this.present = present;
    }

    /**
     * What is asked.
     *
     * @param refusals whether for every group of refusals
     * @param lift a ranked setup for which something better is looked for; absent for none
     */
    public record Asked(boolean refusals, @Nullable RankedSetup lift, Others others) {}

    /**
     * Remedies, best first.
     *
     * @param refused one list for each group of refusals of the result; empty lists where that was not asked
     * @param lift for the ranked setup; empty where that was not asked
     */
    public record Found(List<List<Remedy>> refused, List<Remedy> lift, Reruns.Spent spent) {}

    /** A setup to which a change leads; absent without a change. */
    private record Outcome(@Nullable Trial trial, Chain chain, RankedSetup setup) {
        Optional<Change> change(Chain from, RefusalGroup.@Nullable Of of) {
            if (trial != null) {
                return trial.leads(from, chain);
            }
            return from.equals(chain) ? Optional.of(same(of)) : Swap.between(from, chain, false);
        }

        private Change same(RefusalGroup.@Nullable Of of) {
            return of == RefusalGroup.Of.SETTING ? otherSettings(setup) : otherLinks(setup);
        }
    }

    /**
     * @param request as it was run, see {@link MatchRequest#ofEveryRoute}
     * @param catalogue what can be added, or what the request takes its equipment from
     * @param result of the request against the catalogue
     */
    public static Found of(
            Matcher matcher,
            Reruns.Bound bound,
            Asked asked,
            MatchRequest request,
            Catalogue catalogue,
            MatchResult result) {
        Reruns reruns = new Reruns(matcher, bound);
        Remedies remedies = new Remedies(bestOfEveryChain(result, null));
        remedies.present.forEach((chain, setup) -> remedies.outcomes.add(new Outcome(null, chain, setup)));
        if ((asked.refusals() && !result.refused().isEmpty()) || asked.lift() != null) {
            Set<MatchRequest> tried = new HashSet<>();
            for (Trial trial : Trials.of(request, asked.others(), catalogue, result, asked.lift() != null)) {
                Optional<MatchResult> changed = remedies.tried(trial, reruns, catalogue, tried);
                if (changed.isPresent() && trial instanceof Trial.RelaxedLimit dropped && dropped.to() == null) {
                    Trials.asNeeded(request, dropped, changed.get())
                            .ifPresent(needed -> remedies.tried(needed, reruns, catalogue, tried));
                }
            }
        }
        List<List<Remedy>> refused = new ArrayList<>();
        for (RefusalGroup group : result.refused()) {
            refused.add(asked.refusals() ? remedies.of(group) : List.of());
        }
        List<Remedy> lift = asked.lift() == null ? List.of() : remedies.lifting(asked.lift());
        return new Found(List.copyOf(refused), lift, reruns.spent());
    }

    /** Each request once: the nearest miss may be what is needed. */
    private Optional<MatchResult> tried(Trial trial, Reruns reruns, Catalogue catalogue, Set<MatchRequest> tried) {
        if (!tried.add(trial.request())) {
            return Optional.empty();
        }
        Optional<MatchResult> changed = reruns.run(trial.request(), catalogue);
        changed.ifPresent(result -> bestOfEveryChain(result, trial)
                .forEach((chain, setup) -> outcomes.add(new Outcome(trial, chain, setup))));
        return changed;
    }

    /** @param trial whose change they have to make use of; absent for all */
    private static Map<Chain, RankedSetup> bestOfEveryChain(MatchResult result, @Nullable Trial trial) {
        Map<Chain, RankedSetup> best = new LinkedHashMap<>();
        for (RankedSetup setup : result.ranked()) {
            if (trial == null || trial.isUsedBy(setup)) {
                best.putIfAbsent(Chain.of(setup.route()), setup);
            }
        }
        return best;
    }

    private List<Remedy> of(RefusalGroup group) {
        List<Remedy> found = new ArrayList<>();
        for (Outcome outcome : outcomes) {
            if (group.chains().isEmpty() && outcome.trial() != null) {
                found.add(new Remedy(outcome.trial().alone(), outcome.setup()));
            }
            for (Chain refused : group.chains()) {
                boolean isSame = outcome.trial() == null && refused.equals(outcome.chain());
                if (isSame || isBetterThan(present.get(refused), outcome.setup())) {
                    outcome.change(refused, group.of())
                            .ifPresent(change -> found.add(new Remedy(change, outcome.setup())));
                }
            }
        }
        return best(found);
    }

    private List<Remedy> lifting(RankedSetup lift) {
        List<Remedy> found = new ArrayList<>();
        for (Outcome outcome : outcomes) {
            if (isBetterThan(lift, outcome.setup())) {
                outcome.change(Chain.of(lift.route()), null)
                        .ifPresent(change -> found.add(new Remedy(change, outcome.setup())));
            }
        }
        return best(found);
    }

    private static boolean isBetterThan(@Nullable RankedSetup present, RankedSetup setup) {
        return present == null || setup.score() > present.score() + ROUNDING;
    }

    /** The first of those that are told alike; a limit is not dropped where moving it leads as far. */
    private static List<Remedy> best(List<Remedy> found) {
        Set<String> known = new HashSet<>();
        return found.stream()
                .sorted(ORDER)
                .filter(remedy -> known.add(key(remedy)))
                .filter(remedy -> remedy.change().kind() != Kind.RELAXED_LIMIT
                        || remedy.change().value() != null
                        || found.stream().noneMatch(other -> leadsAsFar(other, remedy)))
                .limit(MOST)
                .toList();
    }

    private static boolean leadsAsFar(Remedy moved, Remedy dropped) {
        return moved.change().kind() == Kind.RELAXED_LIMIT
                && moved.change().value() != null
                && Objects.equals(moved.change().id(), dropped.change().id())
                && Objects.equals(moved.change().instead(), dropped.change().instead())
                && moved.resultingScore() >= dropped.resultingScore() - ROUNDING;
    }

    private static BigDecimal amount(Remedy remedy) {
        BigDecimal amount = remedy.price().amount();
        return amount == null ? UNKNOWN : amount;
    }

    private static String key(Remedy remedy) {
        Change change = remedy.change();
        return change.kind().ordinal() + " " + change.id() + " " + change.value() + " "
                + (change.id() == null ? remedy.setup().route() : "");
    }

    private static Change otherLinks(RankedSetup setup) {
        List<RouteStep> links = setup.route().stream()
                .filter(step -> switch (step.stage()) {
                    case CABLE, ADAPTER, SWITCH -> true;
                    case SOURCE_OUTPUT, CONVERTER, DISPLAY_INPUT, SETUP -> false;
                })
                .toList();
        String names = links.stream().map(RouteStep::name).collect(Collectors.joining(", "));
        String told =
                links.isEmpty() ? "Join the same parts by a plain lead." : "Join the same parts by " + names + ".";
        String ids = links.stream().map(RouteStep::id).collect(Collectors.joining(" > "));
        return new Change(Kind.OTHER_LINKS, ids.isEmpty() ? null : ids, null, null, false, told);
    }

    private static Change otherSettings(RankedSetup setup) {
        List<String> told = setup.modeSettings().stream()
                .map(setting -> String.join(", ", setting.modes()) + ": " + written(setting.settings()))
                .toList();
        return new Change(Kind.OTHER_SETTINGS, null, null, null, false, where(setup) + String.join("; ", told) + ".");
    }

    private static String where(RankedSetup setup) {
        Chain chain = Chain.of(setup.route());
        String input = "the display's input " + chain.input().path();
        String converters = chain.converters().stream()
                .map(unit -> unit.name() + " (" + unit.ports() + ")")
                .collect(Collectors.joining(", "));
        return "Set on " + (converters.isEmpty() ? input : converters + " and " + input) + ": ";
    }

    private static String written(Settings settings) {
        List<String> told = new ArrayList<>();
        if (settings.samplesPerLine() != null) {
            told.add(settings.samplesPerLine() + " samples per line");
        }
        if (settings.outputTiming() != null) {
            told.add(settings.outputTiming());
        } else if (settings.outputActiveLines() != null) {
            told.add(settings.outputActiveLines() + " lines");
        }
        if (settings.rateLock() != null) {
            told.add(settings.rateLock());
        }
        if (settings.deinterlacer() != null) {
            told.add(settings.deinterlacer().name());
        }
        told.add("aspect " + settings.aspectControl());
        return String.join(", ", told);
    }
}
