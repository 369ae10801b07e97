/**
 * What all stored resources have in common over HTTP: entity tags and preconditions ({@link
 * rasterfit.app.resource.Precondition}), parts of lists ({@link rasterfit.app.resource.PageRequest}) and merge patches.
 */
@NullMarked
package rasterfit.app.resource;

import org.jspecify.annotations.NullMarked;
