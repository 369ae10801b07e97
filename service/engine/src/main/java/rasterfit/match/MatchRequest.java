package rasterfit.match;

import java.util.List;
import java.util.Map;
import java.util.Set;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Link;
import rasterfit.gear.Variant;
import rasterfit.rule.Finding;

/**
 * What is asked: one console variant on one display, with some equipment in between.
 *
 * @param weights replace those of the intent, criterion by criterion; not normalised
 * @param limits in addition to those of the intent
 * @param top how many setups to return
 * @param settingsPerRoute how many setups of each route to rank
 * @param owned what of all this belongs to whoever asks
 */
public record MatchRequest(
        String sourceName,
        Variant source,
        Display display,
        Equipment equipment,
        Intent intent,
        Map<Criterion, Double> weights,
        List<Limit> limits,
        PixelAspectConvention pixelAspect,
        Explanation explain,
        int top,
        int settingsPerRoute,
        Owned owned) {

    /** @param converters and links beside those of the catalogue */
    public record Equipment(boolean fromCatalogue, List<Converter> converters, List<Link> links) {
        public Equipment {
            converters = List.copyOf(converters);
            links = List.copyOf(links);
        }
    }

    /**
     * What belongs to whoever asks.
     *
     * @param parts ids of converters and links of {@link Equipment} that are owned: each is one piece, which costs nothing
     *     and is in one place of a chain
     * @param findings what is to be said of the collection with every setup
     */
    public record Owned(boolean source, boolean display, Set<String> parts, List<Finding> findings) {
        public static final Owned NOTHING = new Owned(false, false, Set.of(), List.of());

        public Owned {
            parts = Set.copyOf(parts);
            findings = List.copyOf(findings);
        }
    }

    /** Whether every computed step is told. */
    public enum Explanation {
        SUMMARY,
        FULL
    }

    public MatchRequest {
        weights = Map.copyOf(weights);
        limits = List.copyOf(limits);
        if (top < 1 || settingsPerRoute < 1) {
            throw new IllegalArgumentException("top and settings per route are at least 1");
        }
    }

    /** Of somebody who owns nothing of it. */
    public MatchRequest(
            String sourceName,
            Variant source,
            Display display,
            Equipment equipment,
            Intent intent,
            Map<Criterion, Double> weights,
            List<Limit> limits,
            PixelAspectConvention pixelAspect,
            Explanation explain,
            int top,
            int settingsPerRoute) {
        this(
                sourceName,
                source,
                display,
                equipment,
                intent,
                weights,
                limits,
                pixelAspect,
                explain,
                top,
                settingsPerRoute,
                Owned.NOTHING);
    }

    /** The same, asked of another variant of the console. */
    public MatchRequest withSource(Variant other) {
        return copy(other, display, equipment, intent, weights, limits, explain, top, settingsPerRoute);
    }

    /** The same, asked of another display, or of other inputs of it. */
    public MatchRequest withDisplay(Display other) {
        return copy(source, other, equipment, intent, weights, limits, explain, top, settingsPerRoute);
    }

    /** The same with other equipment. */
    public MatchRequest withEquipment(Equipment other) {
        return copy(source, display, other, intent, weights, limits, explain, top, settingsPerRoute);
    }

    /** The same, judged otherwise. */
    public MatchRequest withJudgement(Intent other, Map<Criterion, Double> otherWeights, List<Limit> otherLimits) {
        return copy(source, display, equipment, other, otherWeights, otherLimits, explain, top, settingsPerRoute);
    }

    /** The same, answered with the best setup of every route and no steps. */
    public MatchRequest ofEveryRoute() {
        return copy(source, display, equipment, intent, weights, limits, Explanation.SUMMARY, Integer.MAX_VALUE, 1);
    }

    /** The weights of the intent, each replaced where the request gives one. */
    public Map<Criterion, Double> allWeights() {
        Map<Criterion, Double> all = intent.weights();
        all.putAll(weights);
        return all;
    }

    private MatchRequest copy(
            Variant newSource,
            Display newDisplay,
            Equipment newEquipment,
            Intent newIntent,
            Map<Criterion, Double> newWeights,
            List<Limit> newLimits,
            Explanation newExplain,
            int newTop,
            int newSettingsPerRoute) {
        return new MatchRequest(
                sourceName,
                newSource,
                newDisplay,
                newEquipment,
                newIntent,
                newWeights,
                newLimits,
                pixelAspect,
                newExplain,
                newTop,
                newSettingsPerRoute,
                owned);
    }
}
