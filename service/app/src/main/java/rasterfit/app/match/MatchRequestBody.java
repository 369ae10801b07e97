package rasterfit.app.match;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.ConverterBody;
import rasterfit.app.gear.LinkBody;
import rasterfit.match.Intent;
import rasterfit.match.MatchRequest;
import rasterfit.match.PixelAspectConvention;

/**
 * What is asked: a console on a display, with some equipment in between.
 *
 * @param equipment what may stand in between, and what is owned; the whole catalogue if absent
 * @param intent which weights and limits to begin with; EVEN_WEIGHTS if absent
 * @param weights replace those of the intent, one by one, and are normalised to a sum of 1
 * @param limits in addition to those of the intent
 * @param pixelAspect which shape a dot of a broadcast-derived raster has; BROADCAST if absent
 * @param explain SUMMARY if absent; FULL tells every computed step
 * @param top how many setups to return; 5 if absent
 * @param settingsPerRoute how many settings of each route to rank; 1 if absent
 * @param remedies which single changes are looked for; those that help with refusals if absent
 * @param sensitivity whether to tell how far weights and uncertain facts can move before another setup is first; no if
 *     absent, since it takes as long as some dozens of matches
 */
record MatchRequestBody(
        DisplayChoice display,
        SourceChoice source,
        @Nullable EquipmentBody equipment,
        @Nullable Intent intent,
        @Nullable WeightsBody weights,
        @Nullable List<LimitBody> limits,
        @Nullable PixelAspectConvention pixelAspect,
        MatchRequest.@Nullable Explanation explain,

        @Schema(implementation = BigInteger.class, defaultValue = "5") @Nullable
        BigDecimal top,

        @Schema(implementation = BigInteger.class, defaultValue = "1") @Nullable
        BigDecimal settingsPerRoute,

        @Nullable RemediesBody remedies,
        @Nullable Boolean sensitivity) {

    /**
     * Which remedies are looked for.
     *
     * @param refusals wherever something is refused; yes if absent
     * @param forRank also what would lift the setup of this rank, which has to be at most {@code top}
     */
    record RemediesBody(
            @Nullable Boolean refusals,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal forRank) {}

    /**
     * Equipment.
     *
     * @param fromCatalogue whether everything in the catalogue may be used, to be bought; if absent, yes without a
     *     collection and no with one
     * @param converters in addition; one with the id of a catalogued one or of an item stands in its place
     * @param links in addition; one with the id of a catalogued one or of an item stands in its place
     * @param collectionId what the caller owns: its converters and links take part and cost nothing
     */
    record EquipmentBody(
            @Nullable Boolean fromCatalogue,
            @Nullable List<ConverterBody> converters,
            @Nullable List<LinkBody> links,
            @Schema(types = {"string", "null"}) @Nullable String collectionId) {}

    /** A weight for each criterion, by its id. */
    record WeightsBody(
            @Nullable BigDecimal dotUniformity,
            @Nullable BigDecimal aspect,
            @Nullable BigDecimal coverage,
            @Nullable BigDecimal motion,
            @Nullable BigDecimal latency,
            @Nullable BigDecimal acceptance,
            @Nullable BigDecimal linkDetail,
            @Nullable BigDecimal modeSwitchGap,
            @Nullable BigDecimal effort,
            @Nullable BigDecimal cost) {}

    /**
     * A bound that every mode has to keep; exactly one of {@code atMost} and {@code atLeast}.
     *
     * @param measure such as {@code addedLatencyMs}; a latency may name its figure: {@code addedLatencyMs.typical}
     * @param currency of a price only
     */
    record LimitBody(
            String measure,
            @Nullable LimitValue atMost,
            @Nullable LimitValue atLeast,
            @Nullable String currency) {}
}
