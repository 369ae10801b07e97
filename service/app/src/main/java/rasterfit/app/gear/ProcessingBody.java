package rasterfit.app.gear;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import io.swagger.v3.oas.annotations.media.DiscriminatorMapping;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Processing;
import rasterfit.gear.ScaleAxis;

/** One way in which a converter makes its output from its input, told apart by {@code kind}. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(value = ProcessingBody.FormatOnlyBody.class, name = "FORMAT_ONLY"),
    @JsonSubTypes.Type(value = ProcessingBody.LineRepeatBody.class, name = "LINE_REPEAT"),
    @JsonSubTypes.Type(value = ProcessingBody.RasterScaleBody.class, name = "RASTER_SCALE")
})
@Schema(
        discriminatorProperty = "kind",
        discriminatorMapping = {
            @DiscriminatorMapping(value = "FORMAT_ONLY", schema = ProcessingBody.FormatOnlyBody.class),
            @DiscriminatorMapping(value = "LINE_REPEAT", schema = ProcessingBody.LineRepeatBody.class),
            @DiscriminatorMapping(value = "RASTER_SCALE", schema = ProcessingBody.RasterScaleBody.class)
        },
        oneOf = {
            ProcessingBody.FormatOnlyBody.class,
            ProcessingBody.LineRepeatBody.class,
            ProcessingBody.RasterScaleBody.class
        })
public sealed interface ProcessingBody {
    @Nullable
    String id();

    /** Fixed delay of the electronics; unknown if absent. */
    @Nullable
    NumberFact pipelineUs();

    /** The raster stays; only format or link changes. */
    record FormatOnlyBody(@Nullable String id, @Nullable NumberFact pipelineUs) implements ProcessingBody {}

    /**
     * Every line is sent several times.
     *
     * @param samplesPerLine counts that this processing can carry; those of the digitiser if absent
     * @param latestStartLines lines after which the first copy begins at the latest; unknown if absent
     * @param bufferLines lines of memory; unknown if absent
     * @param interlaced what becomes of the two fields of an interlaced source; refused if absent (assumption)
     */
    record LineRepeatBody(
            @Nullable String id,
            List<LineCountsBody> lines,
            @Nullable CountRange samplesPerLine,
            @Nullable NumberFact latestStartLines,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal bufferLines,

            Processing.@Nullable InterlacedFields interlaced,
            @Nullable NumberFact pipelineUs)
            implements ProcessingBody {}

    /**
     * The picture is written into memory and read out into another raster.
     *
     * @param timings references such as {@code vic:16} of CTA-861 or {@code dmt:0x52} of VESA DMT
     * @param deinterlacers how interlaced sources are shown; none if absent
     */
    record RasterScaleBody(
            @Nullable String id,
            List<String> timings,
            ScaleAxisBody vertical,
            ScaleAxisBody horizontal,
            @Nullable List<DeinterlacerBody> deinterlacers,
            List<RateLockBody> rateLocks,
            @Nullable NumberFact pipelineUs)
            implements ProcessingBody {}

    /**
     * Line counts per field that line repetition can make of one class of input.
     *
     * @param from lines of a field as it comes in
     * @param to lines as they go out, whole multiples of {@code from}
     */
    record LineCountsBody(
            LineStandard lineStandard,
            @Schema(implementation = BigInteger.class) BigDecimal from,
            List<BigDecimal> to) {}

    /**
     * Scaling in one direction.
     *
     * @param taps of the filter, 1 or even
     * @param maxCropLines vertical only; 0 if absent
     * @param maxCropDots horizontal only; 0 if absent
     */
    record ScaleAxisBody(
            ScaleAxis.Factors factors,
            @Schema(implementation = BigInteger.class) BigDecimal taps,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal maxCropLines,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal maxCropDots) {}

    /**
     * @param addedFields source fields of delay; where absent 0 for a bob or a weave, and 1 [0–2] assumed for motion
     *     adaptation
     * @param wholeFrame whether frames are shown instead of fields; no if absent
     */
    record DeinterlacerBody(
            Deinterlacer.Kind kind,
            @Nullable NumberFact addedFields,
            @Nullable Boolean wholeFrame) {}

    /** How the output's field rate relates to the source's, told apart by {@code kind}. */
    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonSubTypes({
        @JsonSubTypes.Type(value = SourceLockedBody.class, name = "SOURCE_LOCKED"),
        @JsonSubTypes.Type(value = FreeRunningBody.class, name = "FREE_RUNNING"),
        @JsonSubTypes.Type(value = VariableRefreshBody.class, name = "VARIABLE_REFRESH")
    })
    @Schema(
            discriminatorProperty = "kind",
            discriminatorMapping = {
                @DiscriminatorMapping(value = "SOURCE_LOCKED", schema = SourceLockedBody.class),
                @DiscriminatorMapping(value = "FREE_RUNNING", schema = FreeRunningBody.class),
                @DiscriminatorMapping(value = "VARIABLE_REFRESH", schema = VariableRefreshBody.class)
            },
            oneOf = {SourceLockedBody.class, FreeRunningBody.class, VariableRefreshBody.class})
    sealed interface RateLockBody {}

    /**
     * The output follows the source.
     *
     * @param pullPpm how far from the nominal rate it can be pulled, either way
     * @param nominalHz the nominal rate; the field rate of the output timing if absent
     * @param bufferLines lines of memory; unknown if absent
     */
    record SourceLockedBody(
            BigDecimal pullPpm,
            @Nullable String nominalHz,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal bufferLines)
            implements RateLockBody {}

    /**
     * The output runs at its own rate.
     *
     * @param ratesHz the field rates it can run at; that of the output timing if absent
     * @param fieldStores whole fields of memory; 2 if absent (assumption)
     */
    record FreeRunningBody(
            @Nullable List<String> ratesHz,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal fieldStores) implements RateLockBody {}

    /** The output follows the source and signals its varying rate. */
    record VariableRefreshBody(
            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal bufferLines) implements RateLockBody {}
}
