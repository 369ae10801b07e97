/**
 * What {@code EdidReader} reads against what Debian's {@code edid-decode} prints, value by value. {@link
 * rasterfit.edid.oracle.OurFacts} and {@link rasterfit.edid.oracle.TheirFacts} name the same values alike, {@link
 * rasterfit.edid.oracle.Comparison} compares them and {@link rasterfit.edid.oracle.KnownDifference} lists where the tool is not
 * followed. {@link rasterfit.edid.oracle.RandomEdids} makes EDIDs of every kind with the project's own builders.
 */
@NullMarked
package rasterfit.edid.oracle;

import org.jspecify.annotations.NullMarked;
