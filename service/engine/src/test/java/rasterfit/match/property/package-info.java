/**
 * Properties that must hold for any gear: monotonicity, dominance, determinism, independence of order, heads of rankings.
 * {@link rasterfit.match.property.GearArbitraries} makes the gear.
 */
@NullMarked
package rasterfit.match.property;

import org.jspecify.annotations.NullMarked;
