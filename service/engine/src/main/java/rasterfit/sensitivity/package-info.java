/**
 * How far what was asked and what was assumed could move before another setup takes first place: {@link
 * rasterfit.sensitivity.Sensitivity#of} is the entry point.
 */
@NullMarked
package rasterfit.sensitivity;

import org.jspecify.annotations.NullMarked;
