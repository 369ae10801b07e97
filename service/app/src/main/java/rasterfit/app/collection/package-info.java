/**
 * What owners have and find out about it, private to each. {@link rasterfit.app.collection.CollectionController} and {@link
 * rasterfit.app.collection.RecordController} are the entry points for clients; {@link
 * rasterfit.app.collection.StoredBelongings} gives a collection to those who compute with it.
 */
@NullMarked
package rasterfit.app.collection;

import org.jspecify.annotations.NullMarked;
