/** Displays over HTTP: what their EDIDs say. */
@NullMarked
package rasterfit.app.display;

import org.jspecify.annotations.NullMarked;
