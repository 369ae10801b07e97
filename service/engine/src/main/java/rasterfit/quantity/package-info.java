/**
 * Exact numbers with their unit in the type. {@link rasterfit.quantity.Rational} is the entry point; {@link
 * rasterfit.quantity.Frequency}, {@link rasterfit.quantity.TimeSpan} and {@link rasterfit.quantity.Money} wrap it.
 */
@NullMarked
package rasterfit.quantity;

import org.jspecify.annotations.NullMarked;
