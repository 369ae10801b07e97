package rasterfit.app.timing;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import io.swagger.v3.oas.annotations.media.DiscriminatorMapping;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.Scan;

/** What a timing is wanted for, and by which standard's formula, told apart by {@code formula}. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "formula")
@JsonSubTypes({
    @JsonSubTypes.Type(value = FormulaBody.CvtBody.class, name = FormulaBody.CVT),
    @JsonSubTypes.Type(value = FormulaBody.GtfBody.class, name = FormulaBody.GTF)
})
@Schema(
        discriminatorProperty = "formula",
        discriminatorMapping = {
            @DiscriminatorMapping(value = FormulaBody.CVT, schema = FormulaBody.CvtBody.class),
            @DiscriminatorMapping(value = FormulaBody.GTF, schema = FormulaBody.GtfBody.class)
        },
        oneOf = {FormulaBody.CvtBody.class, FormulaBody.GtfBody.class})
sealed interface FormulaBody {
    String CVT = "CVT";
    String GTF = "GTF";

    /** Pixels per line, 8 to 65,536. */
    BigDecimal horizontalActive();

    /** Lines per frame, up to 65,536. */
    BigDecimal verticalActive();

    /** Fields per second that are asked for, 1 to 1024 Hz. */
    String fieldRateHz();

    /** PROGRESSIVE if absent. */
    @Nullable
    Scan scan();

    /** Whether a border of 1.8 % is added on every side; not if absent. */
    @Nullable
    Boolean margins();

    /**
     * By VESA CVT. The clock is rounded, so the timing's own rate may differ.
     *
     * @param blanking ORDINARY if absent
     */
    record CvtBody(
            @Schema(implementation = BigInteger.class) BigDecimal horizontalActive,
            @Schema(implementation = BigInteger.class) BigDecimal verticalActive,
            String fieldRateHz,
            @Nullable Scan scan,
            @Nullable Boolean margins,
            @Nullable BlankingBody blanking)
            implements FormulaBody {}

    /**
     * By VESA GTF. The rate is kept exactly.
     *
     * @param secondaryCurve of a display that states one; the default curve if absent
     */
    record GtfBody(
            @Schema(implementation = BigInteger.class) BigDecimal horizontalActive,
            @Schema(implementation = BigInteger.class) BigDecimal verticalActive,
            String fieldRateHz,
            @Nullable Scan scan,
            @Nullable Boolean margins,
            @Nullable CurveBody secondaryCurve)
            implements FormulaBody {}

    /** A blanking curve as an EDID states it (E-EDID A2 table 3.27): C and J up to 127.5, M up to 65,535, K up to 255. */
    record CurveBody(BigDecimal cPercent, BigDecimal mPercentPerKhz, BigDecimal k, BigDecimal jPercent) {}
}
