/**
 * Numbered scenarios from simple to complex, written from the trade before the engine was asked. Each names equipment and
 * one expectation in the notation of {@link rasterfit.scenario.ScenarioReader}; the texts are test resources beside the
 * classes. Entry point: {@link rasterfit.scenario.ScenarioTest}.
 */
@NullMarked
package rasterfit.scenario;

import org.jspecify.annotations.NullMarked;
