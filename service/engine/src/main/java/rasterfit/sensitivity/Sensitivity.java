package rasterfit.sensitivity;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Catalogue;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Matcher;
import rasterfit.match.Reruns;

/**
 * How sure a first place is.
 *
 * @param weights how far each can move; empty without a first place
 * @param facts what each uncertain fact of the leading setups does, the one to be measured next first
 * @param measureNext the fact whose knowledge would settle most: one that can change the first place before one that
 *     cannot, then the one that moves scores most; absent where none moves any
 */
public record Sensitivity(
        List<WeightRoom> weights,
        List<FactEffect> facts,
        @Nullable FactEffect measureNext,
        Reruns.Spent spent) {
    /** At most 100 runs, and no further one once they have enumerated three million settings (assumption). */
    public static final Reruns.Bound BOUND = new Reruns.Bound(100, 3_000_000);

    /** The greatest weight that a request may give. */
    public static final double MOST_WEIGHT = 1_000_000;

    /** The facts of so many setups from the first on are looked at. */
    static final int LEADING = 3;

    /** Below it, scores are equal but for rounding. */
    private static final double ROUNDING = 1e-12;

    private static final Comparator<FactEffect> ORDER = Comparator.comparing(FactEffect::changesFirst)
            .thenComparing(FactEffect::scoreSwing)
            .reversed()
            .thenComparing(effect -> effect.fact().toString());

    /**
     * Works it out.
     *
     * @param request as it was run, see {@link MatchRequest#ofEveryRoute}
     * @param result of the request against the catalogue
     */
    public static Sensitivity of(
            Matcher matcher, Reruns.Bound bound, MatchRequest request, Catalogue catalogue, MatchResult result) {
        Reruns reruns = new Reruns(matcher, bound);
        if (result.ranked().isEmpty()) {
            return new Sensitivity(List.of(), List.of(), null, reruns.spent());
        }
        List<RankedSetup> leading = result.head(LEADING).ranked();
        List<FactEffect> facts = new FactSearch(request, catalogue, result, leading, reruns)
                .effects().stream().sorted(ORDER).toList();
        List<WeightRoom> weights = new WeightSearch(request, catalogue, result, reruns).rooms();
        FactEffect next = facts.stream()
                .filter(effect -> effect.changesFirst() || effect.scoreSwing() > ROUNDING)
                .findFirst()
                .orElse(null);
        return new Sensitivity(weights, facts, next, reruns.spent());
    }
}
