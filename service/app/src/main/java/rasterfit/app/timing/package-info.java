/** Published timings, and those that formulas give, over HTTP: {@link rasterfit.app.timing.TimingController}. */
@NullMarked
package rasterfit.app.timing;

import org.jspecify.annotations.NullMarked;
