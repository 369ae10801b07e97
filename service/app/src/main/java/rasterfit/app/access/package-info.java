/**
 * Who may call. Every operation names the scope that it needs with {@link rasterfit.app.access.Requires}; {@link
 * rasterfit.app.access.Callers} tells a service whose request it handles, and {@link rasterfit.app.access.Tokens} gives and
 * takes tokens. A capability that keeps something for an owner implements {@link rasterfit.app.access.OwnerData}.
 */
@NullMarked
package rasterfit.app.access;

import org.jspecify.annotations.NullMarked;
