package rasterfit.app.match;

import rasterfit.gear.Variant;

/** The variant of a console that a request means, with the name of the console. */
record ChosenSource(String name, Variant variant, boolean owned) {}
