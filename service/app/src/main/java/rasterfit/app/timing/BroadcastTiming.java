package rasterfit.app.timing;

import java.util.List;
import rasterfit.app.timing.TimingCandidate.ClockAnswer;
import rasterfit.identify.BroadcastClass;
import rasterfit.identify.Picture;

/**
 * A class of broadcast-derived timing.
 *
 * @param id a slug of system, scan and lines per frame, clock, and dots per line
 * @param subcarrierCyclesPerLine of the subcarrier of the timing's own system
 * @param sources where clock, line rate and line count are defined
 * @param mode to be put among the modes of a source
 * @param toAdd what has still to be added to {@code mode} by hand, as paths
 */
record BroadcastTiming(
        String id,
        ClockAnswer clock,
        SourceTimingAnswer timing,
        String subcarrierCyclesPerLine,
        List<String> sources,
        ModeFragment mode,
        List<String> toAdd)
        implements ListedTiming {

    static BroadcastTiming of(BroadcastClass known) {
        ModeFragment mode = ModeFragment.of(known.timing(), Picture.UNKNOWN);
        return new BroadcastTiming(
                known.id(),
                ClockAnswer.of(known.clock()),
                SourceTimingAnswer.of(known.timing()),
                known.subcarrierCyclesPerLine().toString(),
                known.sources(),
                mode,
                mode.toAdd());
    }
}
