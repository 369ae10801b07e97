package rasterfit.app.collection;

import org.jspecify.annotations.Nullable;

/** @param id that of the address, which may be repeated here */
record CollectionBody(
        @Nullable String id, String name, @Nullable String note) {}
