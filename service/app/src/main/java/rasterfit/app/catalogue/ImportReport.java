package rasterfit.app.catalogue;

/**
 * What an import did, or would do.
 *
 * @param validated nothing was written, since only a check was asked for
 * @param revision of the catalogue after it
 * @param items how many the document holds
 * @param changed how many of them were not yet as the document has them
 */
public record ImportReport(boolean validated, long revision, int items, int changed) {}
