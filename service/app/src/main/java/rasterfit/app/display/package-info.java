/**
 * Displays over HTTP: what their EDIDs say, {@link rasterfit.app.display.DecodeController}, and the gear documents that these
 * make, {@link rasterfit.app.display.DisplayDraftController}.
 */
@NullMarked
package rasterfit.app.display;

import org.jspecify.annotations.NullMarked;
