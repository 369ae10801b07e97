package rasterfit.app.match;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.PriceBody;
import rasterfit.app.gear.ProvenanceBody;
import rasterfit.app.gear.SupplyBody;
import rasterfit.gear.DisplayClass;

/**
 * Which display is meant, in one of three ways: by {@code catalogueId}; by {@code edidBase64} alone; or described by
 * {@code inputs} and {@code panel}.
 *
 * @param input one input ({@code digital-1}) or one of its menu states ({@code digital-1/low-lag}); all if absent
 */
record DisplayChoice(
        @Nullable String catalogueId,
        @Nullable String input,
        @Nullable String edidBase64,
        @Nullable String id,
        @Nullable String name,
        @JsonProperty("class") @Nullable DisplayClass displayClass,
        DisplayBody.@Nullable PanelBody panel,
        @Nullable List<DisplayBody.DisplayInputBody> inputs,
        @Nullable PriceBody price,
        @Nullable SupplyBody supply,
        @Nullable List<ProvenanceBody> provenance) {

    /** Whether any member of a described display is there. */
    boolean isDescribed() {
        return id != null
                || displayClass != null
                || panel != null
                || inputs != null
                || price != null
                || supply != null
                || provenance != null;
    }
}
