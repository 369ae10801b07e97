package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Format;
import rasterfit.gear.Link;
import rasterfit.gear.SyncKind;

/**
 * A cable, an adapter or a switch, as it is written. Only cables are used so far; the others are kept.
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

    /** What an adapter makes of a signal. */
    public record ConversionBody(SignalBody from, SignalBody to) {}

    public record SignalBody(Format format, @Nullable SyncKind sync) {}

    /** @param wiring how the pins are used, where the connector alone does not say */
    public record PlugBody(String connector, @Nullable String wiring) {}
}
