/**
 * Rasters: counts, clocks and the published tables of them. {@link rasterfit.timing.Raster} is what travels over a link
 * and is compared; {@link rasterfit.timing.RasterTiming} adds porches, syncs and polarities; {@link
 * rasterfit.timing.Cta861} holds the numbered timings of CTA-861-I, {@link rasterfit.timing.HdmiVideo} the four of HDMI,
 * {@link rasterfit.timing.Dmt} those of VESA DMT; {@link rasterfit.timing.Cvt} and {@link rasterfit.timing.Gtf} compute
 * timings by formula; {@link rasterfit.timing.Broadcast} has the clocks that 525- and 625-line equipment derives from.
 */
@NullMarked
package rasterfit.timing;

import org.jspecify.annotations.NullMarked;
