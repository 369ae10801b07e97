/**
 * What owners find out about their own gear: lag measured with a camera ({@link rasterfit.upkeep.LagStatistics#of}), and
 * what their display did with a raster. {@link rasterfit.upkeep.DisplayEvidence#apply} puts both on the display.
 */
@NullMarked
package rasterfit.upkeep;

import org.jspecify.annotations.NullMarked;
