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
 * Which display is meant, in one of four ways: by {@code catalogueId}; by {@code itemId}; by {@code edidBase64} alone; or
 * described by {@code inputs} and {@code panel}. What its owner read and tried counts where it is named by its item, or by
 * the catalogue where the collection holds exactly one of it.
 *
 * @param itemId an item of the collection that the equipment names
 * @param input one input ({@code digital-1}) or one of its menu states ({@code digital-1/low-lag}); all if absent
 */
record DisplayChoice(
        @Nullable String catalogueId,
        @Nullable String itemId,
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
