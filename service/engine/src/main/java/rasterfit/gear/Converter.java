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

    /** The same with other inputs. */
    public Converter withInputs(List<ConverterInput> others) {
        return new Converter(id, name, price, others, processing, outputs, resyncMs, settingsToTune);
    }

    /** The same with other ways of processing. */
    public Converter withProcessing(List<Processing> others) {
        return new Converter(id, name, price, inputs, others, outputs, resyncMs, settingsToTune);
    }

    /** The same with another time to follow a new raster. */
    public Converter withResyncMs(Fact other) {
        return new Converter(id, name, price, inputs, processing, outputs, other, settingsToTune);
    }

    /** The same with more or less to set. */
    public Converter withSettingsToTune(Fact other) {
        return new Converter(id, name, price, inputs, processing, outputs, resyncMs, other);
    }
}
