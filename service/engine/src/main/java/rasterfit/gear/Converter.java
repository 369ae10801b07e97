package rasterfit.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A device between console and display, described by facts; no code knows a model. */
public record Converter(
        String id,
        String name,
        @Nullable PriceRange price,
        List<ConverterInput> inputs,
        List<Processing> processing,
        List<ConverterOutput> outputs,
        Fact resyncMs,
        Fact settingsToTune) {

    public Converter {
        inputs = List.copyOf(inputs);
        processing = List.copyOf(processing);
        outputs = List.copyOf(outputs);
        if (inputs.isEmpty() || processing.isEmpty() || outputs.isEmpty()) {
            throw new IllegalArgumentException("a converter needs an input, a way of processing and an output");
        }
    }
}
