package rasterfit.app.gear;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.LineStandard;
import rasterfit.gear.LinkKind;
import rasterfit.gear.PictureShape;
import rasterfit.gear.SyncKind;
import rasterfit.timing.Scan;

/**
 * A console with its hardware variants, as it is written.
 *
 * @param id a slug; optional inline
 */
public record SourceBody(@Nullable String id, String name, List<VariantBody> variants) {

    /**
     * One hardware variant.
     *
     * @param supply kept, not yet used
     */
    public record VariantBody(
            @Nullable String id,
            @Nullable String name,
            @Nullable String region,
            @Nullable String hardwareRevision,
            @Nullable PriceBody price,
            List<SourceOutputBody> outputs,
            List<ModeBody> modes,
            @Nullable SupplyBody supply,
            @Nullable List<ProvenanceBody> provenance) {}

    /**
     * One signal that a console gives.
     *
     * @param port the port it comes out of, where one port gives several signals; kept, not yet used
     * @param sync of an analog signal
     * @param encoding of a composite kind, by line count and subcarrier: {@code C625_443}
     * @param level of the sync; video level into 75 ohm if absent
     * @param bandwidthHz of the video amplifier; 1.5 times the dot clock [0.75–3] assumed if absent
     * @param seriesCapacitorsUf kept, not yet used
     * @param link of a digital signal; kept, not yet used
     */
    public record SourceOutputBody(
            @Nullable String id,
            @Nullable String port,
            String connector,
            @Nullable String wiring,
            Format format,
            @Nullable SyncKind sync,
            @Nullable String encoding,
            @Nullable Level level,
            @Nullable ExactFact bandwidthHz,
            @Nullable NumberFact seriesCapacitorsUf,
            @Nullable LinkKind link,
            @Nullable String sound) {}

    /**
     * One video mode; lines are those of a field.
     *
     * @param share weight of the mode in the owned library; 1 if absent
     * @param duringPlay whether it is entered in the middle of play; no if absent
     * @param used the area really drawn; the whole active area, marked as assumed, if absent
     * @param shape made for a 4:3 tube if absent
     */
    public record ModeBody(
            String name,
            LineStandard lineStandard,
            String dotClockHz,
            String dotsPerLine,
            String linesPerField,
            Scan scan,
            @Nullable BigDecimal share,
            @Nullable Boolean duringPlay,
            ActiveBody active,
            @Nullable UsedBody used,
            @Nullable PictureShape shape) {}

    /** 0-based, counted from the leading edges of sync. */
    public record ActiveBody(
            @Schema(implementation = BigInteger.class) BigDecimal dots,
            @Schema(implementation = BigInteger.class) BigDecimal lines,
            @Schema(implementation = BigInteger.class) BigDecimal firstDot,
            @Schema(implementation = BigInteger.class) BigDecimal firstLine) {}

    /** Sizes default to those of the active area; an absent position means centred in it, marked as assumed. */
    public record UsedBody(
            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal dots,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal lines,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal firstDot,

            @Schema(implementation = BigInteger.class) @Nullable
            BigDecimal firstLine) {}
}
