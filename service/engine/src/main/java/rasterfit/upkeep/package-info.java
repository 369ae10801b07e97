/** What owners find out about their own gear: lag measured with a camera ({@link rasterfit.upkeep.LagMeasurement}). */
@NullMarked
package rasterfit.upkeep;

import org.jspecify.annotations.NullMarked;
