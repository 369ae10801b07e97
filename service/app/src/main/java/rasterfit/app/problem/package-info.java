/**
 * Every error of the service as {@code application/problem+json} (RFC 9457), the container's own errors included.
 * Services throw {@link rasterfit.app.problem.ProblemException}, most simply through
 * {@link rasterfit.app.problem.Problems}; filters hand one to {@link rasterfit.app.problem.ProblemWriter}; all else here
 * turns what the framework or the container reports into the same form and keeps the reading of requests strict.
 */
@NullMarked
package rasterfit.app.problem;

import org.jspecify.annotations.NullMarked;
