package rasterfit.gear;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** An immutable snapshot of all catalogued gear. Order is that of the document. */
public record Catalogue(
        long revision,
        Map<String, Source> sources,
        Map<String, Display> displays,
        Map<String, Converter> converters,
        Map<String, Link> links) {

    public static final Catalogue EMPTY = of(0, List.of(), List.of(), List.of(), List.of());

    /**
     * Indexes the gear by id.
     *
     * @throws IllegalArgumentException if two items of one kind share an id
     */
    public static Catalogue of(
            long revision,
            Collection<Source> sources,
            Collection<Display> displays,
            Collection<Converter> converters,
            Collection<Link> links) {
        return new Catalogue(
                revision,
                byId(sources, Source::id),
                byId(displays, Display::id),
                byId(converters, Converter::id),
                byId(links, Link::id));
    }

    private static <T> Map<String, T> byId(Collection<T> items, Function<T, String> id) {
        Map<String, T> map = new LinkedHashMap<>();
        for (T item : items) {
            if (map.put(id.apply(item), item) != null) {
                throw new IllegalArgumentException("two items have the id " + id.apply(item));
            }
        }
        return Collections.unmodifiableMap(map);
    }
}
