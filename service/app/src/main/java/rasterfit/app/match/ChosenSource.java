package rasterfit.app.match;

import java.util.List;
import rasterfit.gear.Variant;

/**
 * The variant of a console that a request means, with the name of the console.
 *
 * @param others variants that it could have meant as well
 */
record ChosenSource(String name, Variant variant, boolean owned, List<Variant> others) {
    ChosenSource {
        others = List.copyOf(others);
    }
}
