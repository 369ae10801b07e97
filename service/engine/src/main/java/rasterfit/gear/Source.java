package rasterfit.gear;

import java.util.List;

/** A console with its hardware variants. */
public record Source(String id, String name, List<Variant> variants) {
    public Source {
        variants = List.copyOf(variants);
        if (variants.isEmpty()) {
            throw new IllegalArgumentException("a console needs at least one variant");
        }
    }
}
