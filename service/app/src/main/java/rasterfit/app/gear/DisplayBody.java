package rasterfit.app.gear;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import io.swagger.v3.oas.annotations.media.DiscriminatorMapping;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.Level;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Panel;
import rasterfit.timing.Scan;

/**
 * A display as it is written.
 *
 * @param id a slug; optional inline
 * @param name optional inline
 * @param displayClass written {@code class}; decides defaults. If absent: a tube for a tube panel; a television where an
 *     EDID lists video timings of CTA-861 and the diagonal is 80 cm or more, or where nothing has an EDID; else a
 *     monitor. What was taken is told with every answer.
 * @param panel if absent, the preferred timing of an input's EDID stands in
 * @param provenance the basis of each number; the longest path wins
 */
public record DisplayBody(
        @Nullable String id,
        @Nullable String name,
        @JsonProperty("class") @Nullable DisplayClass displayClass,
        @Nullable PanelBody panel,
        List<DisplayInputBody> inputs,
        @Nullable PriceBody price,
        @Nullable SupplyBody supply,
        @Nullable List<ProvenanceBody> provenance) {

    /**
     * One input. It is digital if it has an EDID of a digital input, a {@code link}, {@code timings} or accepts TMDS.
     *
     * @param connector if absent, any that carries its kind of signal
     * @param level video level into 75 ohm if absent
     * @param accepts what it takes; TMDS for a digital input, and RGB with the syncs of its EDID for an analog one, if
     *     absent
     * @param edidBase64 the whole EDID
     * @param lineRateHz limits of the line rate; any if absent
     * @param fieldRateHz limits of the field rate; any if absent
     * @param scans both if absent
     * @param halfHeightProgressive shown as it is if absent (assumption)
     * @param tolerates irregularities of the source; kept, not yet used
     * @param lineRateResolutionPpm line rates nearer than this look the same to it; 2000 if absent (assumption)
     * @param timings of a digital input without an EDID: the timings it lists, {@code vic:16} or {@code dmt:0x52}
     * @param maxPixelClockHz of a digital input without an EDID
     * @param maxTmdsClockHz of a digital input without an EDID; 165 MHz if absent (HDMI 1.3a §8.3)
     * @param link of a digital input without an EDID; HDMI on an HDMI connector, else DVI, if absent
     * @param continuous of a digital input without an EDID: whether any timing within the limits is promised; no if
     *     absent
     * @param aspectControls all three on a grid and FILL on a tube if absent
     * @param rgbRange kept, not yet used
     * @param overscanPercent per edge; the default of the class if absent
     * @param resyncMs time without picture after a change of timing; the default of the class if absent
     * @param preset which picture preset it is in; not stated if absent
     * @param sound kept, not yet used
     * @param states menu states, each inheriting the members of the input and changing some
     */
    public record DisplayInputBody(
            @Nullable String id,
            @Nullable String connector,
            @Nullable String wiring,
            @Nullable Level level,
            @Nullable List<CarriedBody> accepts,
            @Nullable String edidBase64,
            @Nullable RangeBody lineRateHz,
            @Nullable RangeBody fieldRateHz,
            @Nullable Set<Scan> scans,
            @Nullable HalfHeight halfHeightProgressive,
            @Nullable List<String> tolerates,
            @Nullable BigDecimal lineRateResolutionPpm,
            @Nullable List<String> timings,
            @Nullable String maxPixelClockHz,
            @Nullable String maxTmdsClockHz,
            @Nullable LinkKind link,
            @Nullable Boolean continuous,
            @Nullable List<AspectControl> aspectControls,
            @Nullable RgbRange rgbRange,
            @Nullable NumberFact overscanPercent,
            @Nullable NumberFact resyncMs,
            @Nullable List<LagBody> lag,
            @Nullable Preset preset,
            @Nullable String sound,
            @Nullable List<StateBody> states) {}

    /** One menu state of an input: the members it changes, as on the input. */
    public record StateBody(
            @Nullable String id,
            @Nullable List<CarriedBody> accepts,
            @Nullable String edidBase64,
            @Nullable RangeBody lineRateHz,
            @Nullable RangeBody fieldRateHz,
            @Nullable Set<Scan> scans,
            @Nullable HalfHeight halfHeightProgressive,
            @Nullable List<String> tolerates,
            @Nullable List<String> timings,
            @Nullable String maxPixelClockHz,
            @Nullable String maxTmdsClockHz,
            @Nullable LinkKind link,
            @Nullable Boolean continuous,
            @Nullable List<AspectControl> aspectControls,
            @Nullable RgbRange rgbRange,
            @Nullable NumberFact overscanPercent,
            @Nullable NumberFact resyncMs,
            @Nullable List<LagBody> lag,
            @Nullable Preset preset,
            @Nullable String sound) {}

    /** What finally shows the picture, told apart by {@code kind}. */
    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonSubTypes({
        @JsonSubTypes.Type(value = GridBody.class, name = "GRID"),
        @JsonSubTypes.Type(value = TubeBody.class, name = "TUBE")
    })
    @Schema(
            discriminatorProperty = "kind",
            discriminatorMapping = {
                @DiscriminatorMapping(value = "GRID", schema = GridBody.class),
                @DiscriminatorMapping(value = "TUBE", schema = TubeBody.class)
            },
            oneOf = {GridBody.class, TubeBody.class})
    public sealed interface PanelBody {}

    /**
     * A fixed grid of square pixels.
     *
     * @param filter how it resamples a raster of another size; interpolating if absent
     */
    public record GridBody(PixelsBody pixels, @Nullable SizeBody sizeMm, Panel.@Nullable Filter filter)
            implements PanelBody {}

    /** @param aspect {@code 4:3} (if absent) or {@code 16:9} */
    public record TubeBody(
            @Schema(allowableValues = {"4:3", "16:9"}) @Nullable
            String aspect,

            @Nullable SizeBody sizeMm) implements PanelBody {}

    public record PixelsBody(
            @Schema(implementation = BigInteger.class) BigDecimal columns,
            @Schema(implementation = BigInteger.class) BigDecimal rows) {}

    /** In millimetres. */
    public record SizeBody(BigDecimal width, BigDecimal height) {}

    /**
     * A reading of the display's own delay; its basis comes from the provenance, else it counts as declared.
     *
     * @param timing the timing at which it holds; any if absent
     * @param method not stated if absent
     * @param referenceRow panel row of the reading; the top row if absent
     */
    public record LagBody(
            @Nullable String timing,
            NumberFact ms,
            LagReading.@Nullable Method method,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal referenceRow) {}

    /** Whether a picture preset is made for low delay. */
    public enum Preset {
        LOW_DELAY,
        ORDINARY
    }

    /** Which quantisation range of RGB an input takes. */
    public enum RgbRange {
        FULL,
        LIMITED,
        SELECTABLE
    }
}
