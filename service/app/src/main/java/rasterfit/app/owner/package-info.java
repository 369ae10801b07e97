/**
 * What owners are told and given over HTTP: their tokens, who they are, everything that is kept for them, and its deletion.
 * {@link rasterfit.app.owner.Owners} is the entry point.
 */
@NullMarked
package rasterfit.app.owner;

import org.jspecify.annotations.NullMarked;
