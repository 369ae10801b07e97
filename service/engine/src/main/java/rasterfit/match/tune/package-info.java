/**
 * From a route to measures: one small pure class per measure, each of which also tells its steps. {@link
 * rasterfit.match.tune.Tuner} lays out the settings of a route as blocks of tables; {@link
 * rasterfit.match.tune.Combiner} walks through them.
 */
@NullMarked
package rasterfit.match.tune;

import org.jspecify.annotations.NullMarked;
