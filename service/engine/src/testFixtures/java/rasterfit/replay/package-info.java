/**
 * Replays the claims of a whole answer with the simulations of {@code rasterfit.sim}. It knows the public records of gear,
 * timings and answers, and the specification; it knows nothing of how the engine came to its numbers. Entry point:
 * {@link rasterfit.replay.Replay}.
 */
@NullMarked
package rasterfit.replay;

import org.jspecify.annotations.NullMarked;
