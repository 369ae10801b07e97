package rasterfit.match;

import java.util.List;
import java.util.Map;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Link;
import rasterfit.gear.Variant;

/**
 * What is asked: one console variant on one display, with some equipment in between.
 *
 * @param weights replace those of the intent, criterion by criterion; not normalised
 * @param limits in addition to those of the intent
 * @param top how many setups to return
 * @param settingsPerRoute how many setups of each route to rank
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
        int settingsPerRoute) {

    /** @param converters and links beside those of the catalogue */
    public record Equipment(boolean fromCatalogue, List<Converter> converters, List<Link> links) {
        public Equipment {
            converters = List.copyOf(converters);
            links = List.copyOf(links);
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
}
