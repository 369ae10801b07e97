/**
 * The main call: {@link rasterfit.app.match.MatchController} reads a request, has {@link rasterfit.match.Matcher} compute
 * it and writes the answer. Requests are read by {@link rasterfit.app.match.RequestReader}, answers written by {@link
 * rasterfit.app.match.MatchAnswer} and the records beside it.
 */
@NullMarked
package rasterfit.app.match;

import org.jspecify.annotations.NullMarked;
