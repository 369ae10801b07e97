package rasterfit.app.belongings;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Link;
import rasterfit.gear.Source;
import rasterfit.upkeep.InputReading;
import rasterfit.upkeep.InputTest;

/**
 * A collection as it is computed with. The keys of all maps are item ids, unique in the whole collection; the ids inside
 * of the gear do not matter. The order of the maps is kept.
 *
 * @param revision goes up with every change of the collection that a computation could notice
 * @param missing ids of items whose catalogued thing is gone
 */
public record Owned(
        String collectionId,
        long revision,
        Map<String, OwnedSource> sources,
        Map<String, OwnedDisplay> displays,
        Map<String, Converter> converters,
        Map<String, Link> links,
        List<String> missing) {

    /** @param variantId the variant that is owned; absent where it was not noted */
    public record OwnedSource(Source source, @Nullable String variantId) {}

    /**
     * A display as catalogued or described, and what its owner found out about it. Evidence is not yet applied.
     *
     * @param catalogueId the catalogued display that it is; absent where it was described
     * @param firmware its present one; absent where it was not noted
     */
    public record OwnedDisplay(
            @Nullable String catalogueId,
            Display display,
            @Nullable String firmware,
            List<InputReading> readings,
            List<InputTest> tests) {
        public OwnedDisplay {
            readings = List.copyOf(readings);
            tests = List.copyOf(tests);
        }
    }

    public Owned {
        missing = List.copyOf(missing);
    }
}
