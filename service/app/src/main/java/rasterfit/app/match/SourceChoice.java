package rasterfit.app.match;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.PriceBody;
import rasterfit.app.gear.ProvenanceBody;
import rasterfit.app.gear.SourceBody;
import rasterfit.app.gear.SupplyBody;

/**
 * Which console is meant, in one of four ways: by {@code catalogueId}; by {@code itemId}; described as one variant by
 * {@code name}, {@code outputs} and {@code modes}; or described with several {@code variants}.
 *
 * @param itemId an item of the collection that the equipment names
 * @param variantId needed where there are several variants and the item does not say which it is
 */
record SourceChoice(
        @Nullable String catalogueId,
        @Nullable String itemId,
        @Nullable String variantId,
        @Nullable String id,
        @Nullable String name,
        @Nullable String region,
        @Nullable String hardwareRevision,
        @Nullable PriceBody price,
        @Nullable List<SourceBody.SourceOutputBody> outputs,
        @Nullable List<SourceBody.ModeBody> modes,
        @Nullable SupplyBody supply,
        @Nullable List<ProvenanceBody> provenance,
        @Nullable List<SourceBody.VariantBody> variants) {

    /** Whether any member of a single variant is there. */
    boolean isOneVariant() {
        return outputs != null
                || modes != null
                || region != null
                || hardwareRevision != null
                || price != null
                || supply != null
                || provenance != null;
    }
}
