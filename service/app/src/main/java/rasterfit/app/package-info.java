/** The engine behind HTTP, one package per capability; {@link rasterfit.app.RasterfitApplication} starts it. */
@NullMarked
package rasterfit.app;

import org.jspecify.annotations.NullMarked;
