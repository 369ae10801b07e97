package rasterfit.app.collection;

import java.util.Set;

/** A record that is about items. */
interface NamesItems {
    /** Their ids. */
    Set<String> namedItems();
}
