package rasterfit.sensitivity;

import java.util.function.BiFunction;
import rasterfit.gear.Estimate;

/**
 * A number of a device that is known only as a range, or not at all.
 *
 * @param estimate the range, or the assumption that stands in
 * @param at the same request and catalogue with the number at one end
 */
record FactSite(FactPath path, Estimate estimate, BiFunction<Shelf, End, Shelf> at) {
    /** Which end of its range. */
    enum End {
        LEAST,
        GREATEST
    }
}
