package rasterfit.app.access;

/** What a token allows; none of them includes another. */
public enum Scope {
    /** To compute, and to read the catalogue and what one owns. */
    READ,
    /** To change what one owns. */
    WRITE,
    /** To change the shared catalogue. */
    CATALOGUE,
    /** To give and take tokens of every owner. */
    ADMIN
}
