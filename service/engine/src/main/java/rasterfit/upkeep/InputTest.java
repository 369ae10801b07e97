package rasterfit.upkeep;

import org.jspecify.annotations.Nullable;
import rasterfit.gear.DisplayTest;

/**
 * A raster tried at one input of an owner's own display.
 *
 * @param input id of the input ({@code digital-1})
 * @param state menu state in which it was tried; absent: it holds in every state of the input
 */
public record InputTest(String input, @Nullable String state, DisplayTest test) {}
