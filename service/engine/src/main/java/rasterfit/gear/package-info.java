/**
 * What can be owned or bought, in the form in which it is computed with: every value validated, menu states resolved,
 * unknown facts still marked as such. {@link rasterfit.gear.Catalogue} is the entry point; the written form (JSON) and
 * its binding live outside the engine.
 */
@NullMarked
package rasterfit.gear;

import org.jspecify.annotations.NullMarked;
