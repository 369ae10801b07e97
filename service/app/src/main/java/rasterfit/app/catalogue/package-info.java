/** The catalogue that matches choose equipment from. {@link rasterfit.app.catalogue.Catalogues} is the entry point. */
@NullMarked
package rasterfit.app.catalogue;

import org.jspecify.annotations.NullMarked;
