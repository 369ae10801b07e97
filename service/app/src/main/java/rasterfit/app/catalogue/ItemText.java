package rasterfit.app.catalogue;

/** An item and its document, without the rest. */
record ItemText(Kind kind, String id, String document) {
    ItemKey key() {
        return new ItemKey(kind, id);
    }
}
