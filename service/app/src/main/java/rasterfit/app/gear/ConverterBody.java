package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Format;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Level;
import rasterfit.gear.LinkKind;
import rasterfit.gear.SyncKind;
import rasterfit.timing.Scan;

/**
 * A converter as it is written.
 *
 * @param id a slug; given by position where inline gear has none
 * @param availability {@code NEW}, {@code USED_ONLY} and the like; kept, not yet used
 * @param price unknown if absent
 * @param resyncMs time without picture after the source has changed its raster; 500 [50–2000] assumed if absent
 * @param settingsToTune how many settings a person has to find by hand; 4 [1–12] assumed if absent
 * @param supply kept, not yet used
 * @param sound kept, not yet used
 * @param provenance the basis of each number; the longest path wins
 */
public record ConverterBody(
        @Nullable String id,
        String name,
        @Nullable String hardwareRevision,
        @Nullable String firmware,
        @Nullable String availability,
        @Nullable PriceBody price,
        List<ConverterInputBody> inputs,
        List<ProcessingBody> processing,
        List<ConverterOutputBody> outputs,
        @Nullable NumberFact resyncMs,
        @Nullable NumberFact settingsToTune,
        @Nullable SupplyBody supply,
        @Nullable String sound,
        @Nullable List<ProvenanceBody> provenance) {

    /**
     * One input of a converter.
     *
     * @param level video level into 75 ohm if absent
     * @param lineRateHz any line rate if absent
     * @param fieldRateHz any field rate if absent
     * @param scans both if absent
     * @param halfHeightProgressive shown as it is if absent (assumption)
     * @param halfHeightAddedFields fields of delay where a half-height raster is taken as interlaced; 1 if absent
     * @param tolerates irregularities of the source; kept, not yet used
     * @param lineRateResolutionPpm line rates nearer than this look the same to it; 2000 if absent (assumption)
     * @param digitiser absent on digital inputs; an analog input needs it
     * @param sound kept, not yet used
     */
    public record ConverterInputBody(
            @Nullable String id,
            String connector,
            @Nullable String wiring,
            @Nullable Level level,
            List<CarriedBody> accepts,
            @Nullable RangeBody lineRateHz,
            @Nullable RangeBody fieldRateHz,
            @Nullable Set<Scan> scans,
            @Nullable HalfHeight halfHeightProgressive,
            @Nullable NumberFact halfHeightAddedFields,
            @Nullable List<String> tolerates,
            @Nullable BigDecimal lineRateResolutionPpm,
            @Nullable DigitiserBody digitiser,
            @Nullable String sound) {}

    /**
     * What turns analog lines into samples.
     *
     * @param phaseSteps steps over one sample; absent where the phase cannot be set or is not stated
     * @param lowPassHz cut-offs that can be chosen
     * @param clockJitterNs peak to peak; 2 [1–5] assumed if absent
     */
    public record DigitiserBody(
            String maxSampleRateHz,
            SampleCounts samplesPerLine,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal phaseSteps,

            @Nullable List<String> lowPassHz,
            @Nullable NumberFact clockJitterNs) {}

    /**
     * One output of a converter: digital if it has a {@code link}, analog if it has a {@code format}.
     *
     * @param maxTmdsClockHz of a digital output; 165 MHz if absent (HDMI 1.3a §8.3)
     * @param repetition whether a digital output can repeat pixels to reach the least rate of the link; no if absent
     * @param colours of a digital output; kept, not yet used
     * @param deepColour of a digital output; kept, not yet used
     * @param sync of an analog output
     * @param level of an analog output; video level into 75 ohm if absent
     * @param maxPixelClockHz of an analog output; unbounded if absent
     * @param sound kept, not yet used
     */
    public record ConverterOutputBody(
            @Nullable String id,
            String connector,
            @Nullable String wiring,
            @Nullable LinkKind link,
            @Nullable String maxTmdsClockHz,
            @Nullable Boolean repetition,
            @Nullable List<ColourBody> colours,
            @Nullable Boolean deepColour,
            @Nullable Format format,
            @Nullable SyncKind sync,
            @Nullable Level level,
            @Nullable String maxPixelClockHz,
            @Nullable String sound) {}

    /** A colour format of a digital output with its quantisation ranges. */
    public record ColourBody(String format, @Nullable Set<QuantisationRange> ranges) {}

    /** Black and white at the ends of the code range, or inside of it (CTA-861-I §5). */
    public enum QuantisationRange {
        FULL,
        LIMITED
    }
}
