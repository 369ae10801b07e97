package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.ConverterBody;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.LinkBody;
import rasterfit.app.gear.PriceBody;
import rasterfit.app.gear.SourceBody;

/**
 * A thing that is owned: one of the catalogue, named by {@code kind} and {@code catalogueId}, or described in one of
 * {@code source}, {@code display}, {@code converter} and {@code link}.
 *
 * @param id that of the address, which may be repeated here
 * @param variantId of a console, which of its variants it is
 * @param firmware the present one; test results made with another one do not decide any more
 * @param missingFromCatalogue read only: true where the catalogue does not hold the thing, or this variant of it, any more
 */
record OwnItemBody(
        @Nullable String id,
        @Nullable ItemKind kind,
        @Nullable String catalogueId,
        @Nullable String variantId,
        @Nullable SourceBody source,
        @Nullable DisplayBody display,
        @Nullable ConverterBody converter,
        @Nullable LinkBody link,
        @Nullable String name,
        @Nullable String hardwareRevision,
        @Nullable String firmware,
        @Nullable String serialNumber,
        @Nullable LocalDate acquiredOn,
        @Nullable PriceBody paid,
        @Nullable String note,

        @Schema(accessMode = Schema.AccessMode.READ_ONLY) @Nullable
        Boolean missingFromCatalogue) {

    /** What kind of thing of the catalogue it is. */
    enum ItemKind {
        SOURCE,
        DISPLAY,
        CONVERTER,
        LINK
    }
}
