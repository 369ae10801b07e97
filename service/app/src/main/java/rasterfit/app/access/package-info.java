/**
 * Who may do what. Every operation says with {@link rasterfit.app.access.Requires} which scope it needs; what belongs to an
 * owner is found through {@link rasterfit.app.access.Callers#current}.
 */
@NullMarked
package rasterfit.app.access;

import org.jspecify.annotations.NullMarked;
