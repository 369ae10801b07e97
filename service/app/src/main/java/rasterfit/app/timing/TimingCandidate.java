package rasterfit.app.timing;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.gear.Basis;
import rasterfit.identify.BroadcastClass;
import rasterfit.identify.Candidate;
import rasterfit.identify.DotClock;
import rasterfit.identify.Picture;

/**
 * A timing that explains what was measured.
 *
 * @param rank from 1
 * @param timingClass the id among {@code GET /v1/timings?standard=broadcast}; absent if the timing is in no class
 * @param clock the dot clock as a multiple of a broadcast clock; absent if it is none
 * @param bases what each part rests on: MEASURED, COMPUTED from measured values that leave no choice, or ASSUMED
 * @param given how many values were given
 * @param explained how many of them the timing explains
 * @param unexplained the others; a part of the counted picture as {@code active/dots}
 * @param usualWidth whether the counted dots make a picture about as wide as the standard's; absent if none were counted
 * @param sources where clock, line rate and line count are defined; only of a class
 * @param mode to be put among the modes of a source
 * @param toAdd what has still to be added to {@code mode} by hand, as paths
 */
record TimingCandidate(
        int rank,
        Candidate.Kind kind,
        @Nullable String timingClass,
        @Nullable ClockAnswer clock,
        SourceTimingAnswer timing,
        BasesAnswer bases,
        int given,
        int explained,
        List<String> unexplained,
        List<DeviationAnswer> deviations,
        @Nullable Boolean usualWidth,
        List<String> sources,
        ModeFragment mode,
        List<String> toAdd) {

    /** A multiple of a broadcast clock. */
    record ClockAnswer(DotClock.Reference of, String factor, String referenceHz) {
        static ClockAnswer of(DotClock clock) {
            return new ClockAnswer(
                    clock.reference(),
                    clock.factor().toString(),
                    Plain.exact(clock.reference().rate()));
        }

        static @Nullable ClockAnswer orAbsent(@Nullable DotClock clock) {
            return clock == null ? null : of(clock);
        }
    }

    record BasesAnswer(Basis lineStandard, Basis dotClockHz, Basis dotsPerLine, Basis linesPerField, Basis scan) {
        static BasesAnswer of(Candidate.Bases bases) {
            return new BasesAnswer(
                    bases.lineStandard(), bases.dotClock(), bases.dotsPerLine(), bases.linesPerField(), bases.scan());
        }
    }

    /**
     * How far a measured value lies from the timing's.
     *
     * @param exact the timing's value, in the unit that the member names
     * @param deviationPpm millionths of {@code exact}; positive if the measured value is greater
     */
    record DeviationAnswer(String member, String exact, BigDecimal deviationPpm, boolean withinTolerance) {
        static DeviationAnswer of(Candidate.Deviation deviation) {
            return new DeviationAnswer(
                    deviation.measurand().id(),
                    deviation.exact().toString(),
                    Plain.of(deviation.ppm()),
                    deviation.within());
        }
    }

    static TimingCandidate of(int rank, Candidate candidate, int given, Picture picture) {
        BroadcastClass known = candidate.known();
        ModeFragment mode = ModeFragment.of(candidate.timing(), picture);
        return new TimingCandidate(
                rank,
                candidate.kind(),
                known == null ? null : known.id(),
                ClockAnswer.orAbsent(candidate.clock()),
                SourceTimingAnswer.of(candidate.timing()),
                BasesAnswer.of(candidate.bases()),
                given,
                given - candidate.unexplained().size(),
                candidate.unexplained(),
                candidate.deviations().stream().map(DeviationAnswer::of).toList(),
                candidate.usualWidth(),
                known == null ? List.of() : known.sources(),
                mode,
                mode.toAdd());
    }
}
