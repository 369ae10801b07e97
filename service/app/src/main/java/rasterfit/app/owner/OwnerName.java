package rasterfit.app.owner;

import java.util.Set;
import rasterfit.app.access.OwnerData;
import rasterfit.app.gear.Place;

/** What an owner can be called. */
final class OwnerName {
    /** Names that stand in the catalogue's history for what no owner did. */
    private static final Set<String> RESERVED = Set.of("demo", OwnerData.DELETED_OWNER);

    private OwnerName() {}

    /** Notes at the place what is wrong with the name. */
    static String read(Place at, String written) {
        if (RESERVED.contains(written)) {
            at.invalid("No owner can be called " + written + ".");
            return written;
        }
        return at.slug(written);
    }
}
