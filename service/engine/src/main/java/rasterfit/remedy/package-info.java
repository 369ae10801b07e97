/**
 * What single change would help: {@link rasterfit.remedy.Remedies#of} tries changes of a request by running the matcher on
 * each, and tells those that lead to a setup.
 */
@NullMarked
package rasterfit.remedy;

import org.jspecify.annotations.NullMarked;
