package rasterfit.app.match;

import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rasterfit.app.belongings.Owned;
import rasterfit.app.gear.Place;

/**
 * The items of the collection that a request names.
 *
 * @param owned absent if it names none, or one that is not there
 * @param isNamed whether it names one
 */
record NamedCollection(@Nullable Owned owned, boolean isNamed) {
    /** All of one kind; none without a collection. */
    <T> Map<String, T> all(Function<Owned, Map<String, T>> kind) {
        return owned == null ? Map.of() : kind.apply(owned);
    }

    /** @param what the kind in words */
    <T> @Nullable T find(Place at, String id, Function<Owned, Map<String, T>> kind, String what) {
        if (!isNamed) {
            at.invalid("An item belongs to a collection; name that by equipment.collectionId.");
            return null;
        }
        if (owned == null) {
            // Told at the collection already.
            return null;
        }
        T item = kind.apply(owned).get(id);
        if (item == null) {
            at.invalid(
                    owned.missing().contains(id)
                            ? "What this item was catalogued as is gone."
                            : "The collection has no " + what + " with this id.");
        }
        return item;
    }
}
