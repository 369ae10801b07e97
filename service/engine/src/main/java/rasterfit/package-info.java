/**
 * The root of the rules engine; each package below it documents its own entry point. Data flows in the order
 * {@code quantity}, {@code timing}, {@code edid}, {@code gear}, {@code rule}, {@code match}, and no package knows a
 * later one.
 */
@NullMarked
package rasterfit;

import org.jspecify.annotations.NullMarked;
