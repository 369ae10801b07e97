package rasterfit.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** One hardware variant of a console: what it can send and how it can be plugged. */
public record Variant(
        String id,
        @Nullable String region,
        @Nullable String hardwareRevision,
        @Nullable PriceRange price,
        List<SourceOutput> outputs,
        List<Mode> modes) {

    public Variant {
        outputs = List.copyOf(outputs);
        modes = List.copyOf(modes);
        if (outputs.isEmpty()) {
            throw new IllegalArgumentException("a console needs at least one output");
        }
        if (modes.isEmpty()) {
            throw new IllegalArgumentException("a console needs at least one mode");
        }
    }

    /** The same with other outputs. */
    public Variant withOutputs(List<SourceOutput> others) {
        return new Variant(id, region, hardwareRevision, price, others, modes);
    }
}
