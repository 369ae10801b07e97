package rasterfit.app.catalogue;

import rasterfit.gear.Catalogue;

/** Where the current catalogue comes from. */
public interface Catalogues {
    /** An immutable snapshot; a match computes with one from beginning to end. */
    Catalogue current();
}
