package rasterfit.app.belongings;

import java.util.Optional;
import rasterfit.gear.Catalogue;

/** Gives out what somebody owns, at one revision of the collection. */
public interface Belongings {
    /**
     * One collection.
     *
     * @param owner only this owner's collections are found
     * @param catalogue where items that name a catalogued thing take its facts; what it does not hold (any more) is left
     *     out of the gear and told in {@link Owned#missing}
     * @return empty if this owner has no such collection
     */
    Optional<Owned> find(String owner, String collectionId, Catalogue catalogue);
}
