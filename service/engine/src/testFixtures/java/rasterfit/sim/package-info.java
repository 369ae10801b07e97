/**
 * The judge of the engine: simulations that step through lines, rows, samples and dots one by one and share no code
 * and no closed formula with the engine. Entry points: {@link rasterfit.sim.LineBufferSim} (locked output),
 * {@link rasterfit.sim.FreeRunSim} (output with a clock of its own), {@link rasterfit.sim.LineRepeatSim} (each line
 * sent several times) and {@link rasterfit.sim.ResampleSim} (where every dot lands on the panel).
 */
@NullMarked
package rasterfit.sim;

import org.jspecify.annotations.NullMarked;
