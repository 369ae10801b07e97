package rasterfit.app.catalogue;

/** An item that can be written: its document is valid and what the engine needs is built of it. */
public final class CheckedItem {
    private final ItemKey key;
    private final GearDocuments.Document document;

    CheckedItem(ItemKey key, GearDocuments.Document document) {
        this.key = key;
        this.document = document;
    }

    public ItemKey key() {
        return key;
    }

    GearDocuments.Document document() {
        return document;
    }
}
