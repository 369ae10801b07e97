package rasterfit.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/**
 * What turns analog lines into samples.
 *
 * @param phaseSteps steps over one sample, absent where the phase cannot be set or is not stated
 * @param lowPass cut-offs that can be chosen, empty where not stated
 * @param clockJitterNs peak to peak
 */
public record Digitiser(
        Frequency maxSampleRate,
        SamplesPerLine samplesPerLine,
        @Nullable Integer phaseSteps,
        List<Frequency> lowPass,
        Fact clockJitterNs) {

    public Digitiser {
        lowPass = List.copyOf(lowPass);
    }

    /** The same with another jitter. */
    public Digitiser withClockJitterNs(Fact other) {
        return new Digitiser(maxSampleRate, samplesPerLine, phaseSteps, lowPass, other);
    }
}
