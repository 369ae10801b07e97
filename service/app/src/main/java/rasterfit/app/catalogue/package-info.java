/**
 * The shared catalogue of gear. {@link rasterfit.app.catalogue.CatalogueController} is the entry point for clients: requests
 * go through {@link rasterfit.app.catalogue.CatalogueService} to {@link rasterfit.app.catalogue.CatalogueStore}, one
 * transaction each. Many items at once go through {@link rasterfit.app.catalogue.BulkWrites}. Matches compute with {@link
 * rasterfit.app.catalogue.Catalogues#current}, a snapshot in memory.
 */
@NullMarked
package rasterfit.app.catalogue;

import org.jspecify.annotations.NullMarked;
