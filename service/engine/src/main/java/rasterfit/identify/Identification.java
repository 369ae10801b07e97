package rasterfit.identify;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/**
 * What the measured values say.
 *
 * @param contradictions if there are any, nothing else is worked out
 * @param given how many values were given
 * @param derived what follows from the values alone
 * @param considered how many timings were compared with them
 * @param fitting how many explain every value
 * @param candidates best first: those that explain every value, or if none does, those that explain most of them
 * @param open what the fitting ones differ in, the most telling first
 */
public record Identification(
        List<Contradiction> contradictions,
        int given,
        List<Derived> derived,
        int considered,
        int fitting,
        List<Candidate> candidates,
        List<Open> open) {

    /**
     * A value that follows from others.
     *
     * @param from the members it follows from
     */
    public record Derived(Measurand measurand, Bounds value, List<String> from) {}

    /**
     * A part in which fitting timings differ.
     *
     * @param member its name
     * @param values all that fit, ascending
     * @param closestPpm how far the closest two lie apart, in millionths; absent for a scan
     * @param mostLeft how many timings would still fit, at worst, once this is known exactly
     */
    public record Open(
            String member, List<String> values, @Nullable Rational closestPpm, int mostLeft) {
        public Open {
            values = List.copyOf(values);
        }
    }

    public Identification {
        contradictions = List.copyOf(contradictions);
        derived = List.copyOf(derived);
        candidates = List.copyOf(candidates);
        open = List.copyOf(open);
    }
}
