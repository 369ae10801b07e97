package rasterfit.match;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.rule.Finding;
import rasterfit.rule.Rule;
import rasterfit.rule.Stage;
import rasterfit.timing.Raster;

/** The answer: ranked setups, and what was refused and why. */
public record MatchResult(long catalogueRevision, Counts counts, List<RankedSetup> ranked, List<RefusalGroup> refused) {
    /**
     * @param routes mating chains, refused ones included
     * @param settings over all routes and groups of modes
     */
    public record Counts(int routes, int refusedRoutes, long settings, long refusedSettings) {}

    /** The same with the first setups alone. */
    public MatchResult head(int top) {
        return new MatchResult(catalogueRevision, counts, ranked.subList(0, Math.min(top, ranked.size())), refused);
    }

    /** @param score between 0 and 1: the weighted mean of the utilities in {@code criteria} */
    public record RankedSetup(
            int rank,
            double score,
            boolean paretoOptimal,
            Price price,
            List<RouteStep> route,
            List<ModeSetting> modeSettings,
            List<CriterionValue> criteria,
            List<Finding> findings) {}

    /**
     * What is still to be bought.
     *
     * @param amount the middle of least and greatest; absent (as are those) if nothing is priced
     * @param unpriced ids of what has no price
     */
    public record Price(
            @Nullable BigDecimal amount,
            @Nullable BigDecimal least,
            @Nullable BigDecimal greatest,
            @Nullable String currency,
            List<String> unpriced) {}

    /**
     * @param state menu state of a display input
     * @param detail in which way the part is used: connector, format and sync
     * @param owned whether it belongs to whoever asks
     */
    public record RouteStep(
            Stage stage,
            String id,
            String name,
            @Nullable String port,
            @Nullable String state,
            @Nullable String detail,
            boolean owned) {}

    /**
     * One setting, shared by all modes that the equipment cannot tell apart.
     *
     * @param measures of the mode with the greatest share
     * @param measuresByMode of every mode, when they are several
     */
    public record ModeSetting(
            List<String> modes,
            Settings settings,
            Raster outputTiming,
            Measures measures,
            Map<String, Measures> measuresByMode,
            List<Step> steps) {}

    /**
     * @param weight after normalisation
     * @param value in the criterion's unit; absent where it has no single number
     */
    public record CriterionValue(
            Criterion criterion, @Nullable Rational value, double utility, double weight) {}

    /**
     * @param of whether whole routes or single settings were refused
     * @param nearest the one that misses the least; absent where the rule compares no numbers
     * @param chains on which it refused, each once, in the order of their routes; none for a request without any route
     */
    public record RefusalGroup(
            Rule rule, Of of, long count, @Nullable Nearest nearest, String message, List<Chain> chains) {
        public RefusalGroup {
            chains = List.copyOf(chains);
        }

        public enum Of {
            ROUTE,
            SETTING
        }
    }

    /** @param route ids along the chain */
    public record Nearest(
            List<String> route,
            Rational value,
            Rational limit,
            @Nullable String unit) {}
}
