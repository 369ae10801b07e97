/**
 * The catalogue in and out as one document or as tables. {@link rasterfit.app.transfer.TransferController} is the entry point.
 * An import goes from the text that was sent ({@link rasterfit.app.transfer.SentText}) through {@link
 * rasterfit.app.transfer.DocumentReader} to valid items, and from there in one transaction into the catalogue; {@link
 * rasterfit.app.transfer.ImportRunner} works on it, {@link rasterfit.app.transfer.ImportStatuses} keeps where every instance
 * can see how far it is.
 */
@NullMarked
package rasterfit.app.transfer;

import org.jspecify.annotations.NullMarked;
