/**
 * From a display and a console to ranked, explained setups. {@link rasterfit.match.Matcher#match} is the central
 * function: find routes, tune them, rank, materialise.
 */
@NullMarked
package rasterfit.match;

import org.jspecify.annotations.NullMarked;
