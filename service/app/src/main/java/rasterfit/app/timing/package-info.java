/** Published timings over HTTP. */
@NullMarked
package rasterfit.app.timing;

import org.jspecify.annotations.NullMarked;
