package rasterfit.app.catalogue;

/** How an item came to be as it is. */
enum Change {
    CREATED,
    REPLACED,
    PATCHED,
    DELETED,
    RESTORED,
    IMPORTED
}
