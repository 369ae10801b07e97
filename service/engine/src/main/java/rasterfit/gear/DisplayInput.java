package rasterfit.gear;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/**
 * One input of a display in one menu state, with everything that the state changes already resolved.
 *
 * @param state absent where the input has no menu states
 * @param plug absent where only an EDID is known: it then takes any connector of its kind of signal
 * @param lineRate of an analog input; absent where not stated
 * @param fieldRate of an analog input; absent where not stated
 * @param sink what a digital input (or an analog one with an EDID) lists; absent where nothing is known
 * @param lowDelay whether the state's picture preset is made for low delay; absent where not stated
 */
public record DisplayInput(
        String id,
        @Nullable String state,
        @Nullable Plug plug,
        Level level,
        List<Carried> accepts,
        @Nullable FrequencyRange lineRate,
        @Nullable FrequencyRange fieldRate,
        Set<Scan> scans,
        HalfHeight halfHeight,
        Rational lineRateResolutionPpm,
        @Nullable SinkLimits sink,
        List<AspectControl> aspectControls,
        Fact overscanPercent,
        Fact resyncMs,
        List<LagReading> lag,
        @Nullable Boolean lowDelay) {

    public DisplayInput {
        accepts = List.copyOf(accepts);
        scans = Set.copyOf(scans);
        aspectControls = List.copyOf(aspectControls);
        lag = List.copyOf(lag);
        if (aspectControls.isEmpty()) {
            throw new IllegalArgumentException("a display input needs at least one aspect control");
        }
    }

    /** {@code digital-1} or {@code digital-1/low-lag}. */
    public String path() {
        return state == null ? id : id + "/" + state;
    }
}
