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
 * @param own what the owner of this very display found out
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
        @Nullable Boolean lowDelay,
        OwnEvidence own) {

    public DisplayInput {
        accepts = List.copyOf(accepts);
        scans = Set.copyOf(scans);
        aspectControls = List.copyOf(aspectControls);
        lag = List.copyOf(lag);
        if (aspectControls.isEmpty()) {
            throw new IllegalArgumentException("a display input needs at least one aspect control");
        }
    }

    /** As it is catalogued or described, without anything that an owner found out. */
    public DisplayInput(
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
        this(
                id,
                state,
                plug,
                level,
                accepts,
                lineRate,
                fieldRate,
                scans,
                halfHeight,
                lineRateResolutionPpm,
                sink,
                aspectControls,
                overscanPercent,
                resyncMs,
                lag,
                lowDelay,
                OwnEvidence.NONE);
    }

    /** The same input with other evidence of its owner. */
    public DisplayInput with(OwnEvidence evidence) {
        return copy(overscanPercent, resyncMs, lag, evidence);
    }

    /** The same with another overscan. */
    public DisplayInput withOverscanPercent(Fact other) {
        return copy(other, resyncMs, lag, own);
    }

    /** The same with another time to show a new raster. */
    public DisplayInput withResyncMs(Fact other) {
        return copy(overscanPercent, other, lag, own);
    }

    /** The same with other readings of its delay. */
    public DisplayInput withLag(List<LagReading> others) {
        return copy(overscanPercent, resyncMs, others, own);
    }

    private DisplayInput copy(Fact newOverscan, Fact newResync, List<LagReading> newLag, OwnEvidence newOwn) {
        return new DisplayInput(
                id,
                state,
                plug,
                level,
                accepts,
                lineRate,
                fieldRate,
                scans,
                halfHeight,
                lineRateResolutionPpm,
                sink,
                aspectControls,
                newOverscan,
                newResync,
                newLag,
                lowDelay,
                newOwn);
    }

    /** {@code digital-1} or {@code digital-1/low-lag}. */
    public String path() {
        return state == null ? id : id + "/" + state;
    }
}
