/**
 * Whole answers worked by hand: one console, one converter, one display for each way of processing, every figure of the
 * answer derived in comments from the rates up, then asked of the engine. Entry point: {@link
 * rasterfit.match.worked.Gear}, what the examples share; {@link rasterfit.match.worked.Answers} asks.
 */
@NullMarked
package rasterfit.match.worked;

import org.jspecify.annotations.NullMarked;
