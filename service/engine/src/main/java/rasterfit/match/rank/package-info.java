/**
 * From tuned routes to the answer. {@link rasterfit.match.rank.Ranker#rank} joins the groups of each route, orders all
 * setups and marks those that no other dominates; {@link rasterfit.match.rank.Materialiser} works out what is returned.
 */
@NullMarked
package rasterfit.match.rank;

import org.jspecify.annotations.NullMarked;
