package rasterfit.app.collection;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import rasterfit.app.belongings.Belongings;
import rasterfit.app.belongings.Owned;
import rasterfit.app.belongings.Owned.OwnedDisplay;
import rasterfit.app.belongings.Owned.OwnedSource;
import rasterfit.app.collection.StoredCollection.CollectionKey;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.Place;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Link;
import rasterfit.upkeep.InputReading;
import rasterfit.upkeep.InputTest;

/** Collections as computations take them. */
@Component
class StoredBelongings implements Belongings {
    private static final Set<Section> READ = EnumSet.of(Section.ITEMS, Section.LAG_READINGS, Section.TEST_RESULTS);

    private final CollectionStore store;

    StoredBelongings(CollectionStore store) {
        this.store = store;
    }

    /** Revision and contents are of one moment. */
    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Optional<Owned> find(String owner, String collectionId, Catalogue catalogue) {
        CollectionKey key = new CollectionKey(owner, collectionId);
        return store.find(key)
                .map(stored -> owned(collectionId, stored.revision(), store.contents(key, READ, catalogue)));
    }

    private static Owned owned(String id, long revision, Contents contents) {
        Map<String, OwnedSource> sources = new LinkedHashMap<>();
        Map<String, OwnedDisplay> displays = new LinkedHashMap<>();
        Map<String, Converter> converters = new LinkedHashMap<>();
        Map<String, Link> links = new LinkedHashMap<>();
        List<String> missing = new ArrayList<>();
        for (OwnItem item : contents.items().values()) {
            if (item.source() != null) {
                sources.put(item.id(), new OwnedSource(item.source(), item.variantId()));
            } else if (item.display() != null) {
                displays.put(item.id(), display(item, item.display(), contents));
            } else if (item.converter() != null) {
                converters.put(item.id(), item.converter());
            } else if (item.link() != null) {
                links.put(item.id(), item.link());
            } else {
                missing.add(item.id());
            }
        }
        return new Owned(id, revision, sources, displays, converters, links, missing);
    }

    /** What was noted of inputs that the display does not have any more is told by whoever applies it. */
    private static OwnedDisplay display(OwnItem item, Display display, Contents contents) {
        List<InputReading> readings = new ArrayList<>();
        contents.readings().values().stream()
                .filter(body -> body.item().equals(item.id()))
                .forEach(body -> add(readings, FindingsReader.reading(Place.root(new Faults()), body)));
        List<InputTest> tests = new ArrayList<>();
        contents.tests().values().stream()
                .filter(body -> body.item().equals(item.id()))
                .forEach(body -> add(tests, FindingsReader.test(Place.root(new Faults()), body)));
        return new OwnedDisplay(item.catalogueId(), display, item.firmware(), readings, tests);
    }

    private static <T> void add(List<T> list, @Nullable T value) {
        if (value != null) {
            list.add(value);
        }
    }
}
