/** What setups are refused for, told about and judged by, over HTTP. */
@NullMarked
package rasterfit.app.rule;

import org.jspecify.annotations.NullMarked;
