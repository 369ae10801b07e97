package rasterfit.app.timing;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import io.swagger.v3.oas.annotations.media.DiscriminatorMapping;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import org.jspecify.annotations.Nullable;

/** How much blanking CVT gives, told apart by {@code kind}. Interlaced and with margins only the first two. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(value = BlankingBody.OrdinaryBlankingBody.class, name = "ORDINARY"),
    @JsonSubTypes.Type(value = BlankingBody.ReducedV1BlankingBody.class, name = "REDUCED_V1"),
    @JsonSubTypes.Type(value = BlankingBody.ReducedV2BlankingBody.class, name = "REDUCED_V2"),
    @JsonSubTypes.Type(value = BlankingBody.ReducedV3BlankingBody.class, name = "REDUCED_V3")
})
@Schema(
        discriminatorProperty = "kind",
        discriminatorMapping = {
            @DiscriminatorMapping(value = "ORDINARY", schema = BlankingBody.OrdinaryBlankingBody.class),
            @DiscriminatorMapping(value = "REDUCED_V1", schema = BlankingBody.ReducedV1BlankingBody.class),
            @DiscriminatorMapping(value = "REDUCED_V2", schema = BlankingBody.ReducedV2BlankingBody.class),
            @DiscriminatorMapping(value = "REDUCED_V3", schema = BlankingBody.ReducedV3BlankingBody.class)
        },
        oneOf = {
            BlankingBody.OrdinaryBlankingBody.class,
            BlankingBody.ReducedV1BlankingBody.class,
            BlankingBody.ReducedV2BlankingBody.class,
            BlankingBody.ReducedV3BlankingBody.class
        })
sealed interface BlankingBody {
    /** Enough for a tube to fly back. */
    record OrdinaryBlankingBody() implements BlankingBody {}

    /** 160 pixels, at least 460 µs. */
    record ReducedV1BlankingBody() implements BlankingBody {}

    /**
     * 80 pixels, at least 460 µs.
     *
     * @param videoOptimised whether the clock is that of 1000/1001 of the rate; not if absent
     */
    record ReducedV2BlankingBody(@Nullable Boolean videoOptimised) implements BlankingBody {}

    /**
     * Of CVT 2.0, as DisplayID states it.
     *
     * @param horizontalPixels 80 to 200 in steps of 8; 80 if absent
     * @param leastVerticalUs 300 to 705; 460 if absent
     * @param earlySync whether vertical sync stands near the middle of the blanking; not if absent
     */
    record ReducedV3BlankingBody(
            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal horizontalPixels,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal leastVerticalUs,

            @Nullable Boolean earlySync)
            implements BlankingBody {}
}
