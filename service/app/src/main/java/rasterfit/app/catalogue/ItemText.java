package rasterfit.app.catalogue;

/** An item and its document as it is written, without the rest. */
public record ItemText(Kind kind, String id, String document) {
    ItemKey key() {
        return new ItemKey(kind, id);
    }
}
