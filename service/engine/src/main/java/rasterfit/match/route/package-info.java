/**
 * The physical chains from a console to a display. {@link rasterfit.match.route.RouteFinder#find} is the entry point.
 */
@NullMarked
package rasterfit.match.route;

import org.jspecify.annotations.NullMarked;
