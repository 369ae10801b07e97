/**
 * The written form of gear: JSON bodies as records ({@link rasterfit.app.gear.ConverterBody}, {@link
 * rasterfit.app.gear.DisplayBody}, {@link rasterfit.app.gear.SourceBody}, {@link rasterfit.app.gear.LinkBody}, all four
 * together in {@link rasterfit.app.gear.CatalogueBody}) and their reading into the engine's types. {@link
 * rasterfit.app.gear.GearReader} is the entry point; every fault is noted at its JSON Pointer before any is reported.
 */
@NullMarked
package rasterfit.app.gear;

import org.jspecify.annotations.NullMarked;
