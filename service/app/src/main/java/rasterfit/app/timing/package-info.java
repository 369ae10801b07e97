/** Published timings, those that formulas give, and those that measured values lead to, over HTTP: {@link rasterfit.app.timing.TimingController}. */
@NullMarked
package rasterfit.app.timing;

import org.jspecify.annotations.NullMarked;
