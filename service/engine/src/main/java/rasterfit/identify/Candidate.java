package rasterfit.identify;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;
import rasterfit.quantity.Rational;

/**
 * A timing that what was measured may come from.
 *
 * @param known the class it belongs to; absent if it belongs to none
 * @param clock the dot clock as a multiple of a broadcast clock; absent if it is none
 * @param deviations one for each measured value
 * @param unexplained the given values that do not fit, by the names of their members
 * @param usualWidth whether the counted dots make a picture about as wide as the standard's; absent if none were counted
 * @param bases what each part rests on
 */
public record Candidate(
        Kind kind,
        SourceTiming timing,
        @Nullable BroadcastClass known,
        @Nullable DotClock clock,
        List<Deviation> deviations,
        List<String> unexplained,
        @Nullable Boolean usualWidth,
        Bases bases) {

    /** Where the timing comes from, the likeliest first. */
    public enum Kind {
        /** One of {@link BroadcastClasses}. */
        CLASS,
        /** A dot clock and a line count of broadcast kinship, put together so that all values fit. */
        COMPOSED,
        /** The measured values themselves; no broadcast clock was found in them. */
        AS_MEASURED
    }

    /**
     * How far a measured value lies from the timing's.
     *
     * @param exact of the timing
     * @param ppm 10^6 · (measured / exact − 1)
     */
    public record Deviation(Measurand measurand, Bounds measured, Rational exact, Rational ppm, boolean within) {
        static Deviation of(Measurand measurand, Bounds measured, SourceTiming timing) {
            Rational exact = measurand.of(timing);
            return new Deviation(
                    measurand, measured, exact, Bounds.ppm(measured.typical(), exact), measured.contains(exact));
        }
    }

    /**
     * What the parts of a timing rest on: MEASURED, COMPUTED from measured values that leave no choice, or ASSUMED, that
     * is chosen among what would fit too.
     */
    public record Bases(Basis lineStandard, Basis dotClock, Basis dotsPerLine, Basis linesPerField, Basis scan) {}

    public Candidate {
        deviations = List.copyOf(deviations);
        unexplained = List.copyOf(unexplained);
    }

    public boolean explainsAll() {
        return unexplained.isEmpty();
    }

    Candidate on(Bases otherBases) {
        return new Candidate(kind, timing, known, clock, deviations, unexplained, usualWidth, otherBases);
    }
}
