/**
 * From what instruments show of a console to its exact timing. {@link rasterfit.identify.Identifier} is the entry: it
 * takes a {@link rasterfit.identify.MeasuredTiming} and gives an {@link rasterfit.identify.Identification}, the timings
 * that fit, best first, with how far each value lies off, what each part of the timing rests on, and what is still open.
 * {@link rasterfit.identify.BroadcastClasses} lists the timings that derive from broadcast clocks, for a mode that nobody
 * has measured.
 */
@NullMarked
package rasterfit.identify;

import org.jspecify.annotations.NullMarked;
