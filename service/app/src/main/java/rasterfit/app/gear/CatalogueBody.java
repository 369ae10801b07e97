package rasterfit.app.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A whole catalogue in one document.
 *
 * @param format {@code catalogue/1}
 */
public record CatalogueBody(
        String format,
        @Nullable List<ConverterBody> converters,
        @Nullable List<DisplayBody> displays,
        @Nullable List<SourceBody> sources,
        @Nullable List<LinkBody> links) {

    /** The only format so far. */
    public static final String FORMAT = "catalogue/1";
}
