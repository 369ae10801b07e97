package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.SyncKind;

/**
 * A cable, an adapter or a switch, as it is written.
 *
 * @param id a slug; given by position where inline gear has none
 * @param carries what passes unchanged; may be empty for an adapter that converts
 * @param bandwidthHz 100 MHz [50–300 MHz] assumed if absent
 * @param ports of a switch: how many sources it joins
 * @param converts of an adapter: from which format and sync to which
 * @param delayUs of an adapter or a switch
 */
public record LinkBody(
        @Nullable String id,
        Link.Kind kind,
        String name,
        @Nullable BigDecimal lengthMm,
        PlugBody from,
        PlugBody to,
        List<CarriedBody> carries,
        @Nullable ExactFact bandwidthHz,
        @Schema(implementation = BigInteger.class) @Nullable BigDecimal ports,
        @Nullable List<ConversionBody> converts,
        @Nullable NumberFact delayUs,
        @Nullable String sound,
        @Nullable PriceBody price,
        @Nullable SupplyBody supply,
        @Nullable List<ProvenanceBody> provenance) {

    /** What an adapter makes of a signal; on the way in an absent sync or level means any. */
    public record ConversionBody(SignalBody from, SignalBody to) {}

    /** @param level of the sync; video level where an adapter gives it and does not say */
    public record SignalBody(
            Format format,
            @Nullable SyncKind sync,
            @Nullable Level level) {}

    /** @param wiring how the pins are used, where the connector alone does not say */
    public record PlugBody(String connector, @Nullable String wiring) {}
}
