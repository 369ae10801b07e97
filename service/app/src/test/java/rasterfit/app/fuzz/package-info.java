/** What the fuzz tests share: {@link rasterfit.app.fuzz.EdidSeeds}, {@link rasterfit.app.fuzz.RequestSeeds}. */
@NullMarked
package rasterfit.app.fuzz;

import org.jspecify.annotations.NullMarked;
