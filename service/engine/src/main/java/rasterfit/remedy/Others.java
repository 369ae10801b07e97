package rasterfit.remedy;

import java.util.List;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Variant;

/**
 * What a request could have named and did not.
 *
 * @param variants of the same console
 * @param inputs of the same display, with their menu states
 */
public record Others(List<Variant> variants, List<DisplayInput> inputs) {
    public static final Others NONE = new Others(List.of(), List.of());

    public Others {
        variants = List.copyOf(variants);
        inputs = List.copyOf(inputs);
    }
}
