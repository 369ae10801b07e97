/**
 * What a computation needs to know of a collection: {@link rasterfit.app.belongings.Belongings#find}. Whoever keeps
 * collections implements it; whoever computes with them asks for it, and neither knows the other.
 */
@NullMarked
package rasterfit.app.belongings;

import org.jspecify.annotations.NullMarked;
