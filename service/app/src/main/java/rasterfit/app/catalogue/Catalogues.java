package rasterfit.app.catalogue;

import rasterfit.gear.Catalogue;

/** Where the current catalogue comes from. */
@FunctionalInterface
public interface Catalogues {
    /** An immutable snapshot; a match computes with one from beginning to end. */
    default Catalogue current() {
        return atLeast(0);
    }

    /**
     * A snapshot that holds a change, for a client that has just made it on this instance or another one.
     *
     * @param revision the number of the change
     * @throws rasterfit.app.problem.ProblemException 422 if there is no such change yet
     */
    Catalogue atLeast(long revision);
}
