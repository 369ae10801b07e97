package rasterfit.app.timing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.gear.Basis;
import rasterfit.identify.Bounds;
import rasterfit.identify.Identification;
import rasterfit.identify.Measurand;
import rasterfit.identify.MeasuredTiming;

/**
 * The timings that explain what was measured.
 *
 * @param measured how certain each value was taken to be
 * @param derived what follows from them alone
 * @param considered how many timings were compared with them
 * @param fitting how many explain every value; if none does, the candidates are what comes nearest
 * @param message the same in words
 * @param candidates best first, at most as many as were asked for
 * @param open what the fitting ones still differ in, the most telling first
 */
record IdentifiedTiming(
        String engineVersion,
        List<MeasuredValue> measured,
        List<DerivedValue> derived,
        int considered,
        int fitting,
        String message,
        List<TimingCandidate> candidates,
        List<OpenPart> open) {

    /**
     * How certain a measured value was taken to be.
     *
     * @param tolerancePpm to either side, in millionths; 0 of a count
     * @param basis whether that was given or assumed
     */
    record MeasuredValue(String member, BigDecimal tolerancePpm, Basis basis) {}

    /** A value that follows from those of the members in {@code from}. */
    record DerivedValue(String member, BigDecimal value, BigDecimal least, BigDecimal greatest, List<String> from) {}

    /**
     * A part that is not settled.
     *
     * @param count how many values fit
     * @param values all of them ascending, exact; the first 20 if there are more
     * @param closestPpm how far the closest two lie apart, in millionths; absent for a scan
     * @param mostLeft how many timings would still fit, at worst, once this is known
     */
    record OpenPart(
            String member,
            int count,
            List<String> values,
            @Nullable BigDecimal closestPpm,
            int mostLeft,
            String message) {
        private static final int MOST_VALUES = 20;

        static OpenPart of(Identification.Open open) {
            int count = open.values().size();
            String left = open.mostLeft() == 1 ? "one timing" : "at most " + open.mostLeft() + " timings";
            return new OpenPart(
                    open.member(),
                    count,
                    open.values().subList(0, Math.min(count, MOST_VALUES)),
                    Plain.orAbsent(open.closestPpm()),
                    open.mostLeft(),
                    count + " values of " + open.member() + " fit what was measured; knowing which leaves " + left
                            + ".");
        }
    }

    static IdentifiedTiming of(
            String engineVersion,
            MeasuredTiming measured,
            Set<Measurand> assumedTolerances,
            Identification found,
            int top) {
        List<MeasuredValue> values = new ArrayList<>();
        for (Map.Entry<Measurand, Bounds> value : measured.values().entrySet()) {
            Basis basis = assumedTolerances.contains(value.getKey()) ? Basis.ASSUMED : Basis.MEASURED;
            values.add(new MeasuredValue(
                    value.getKey().id(), Plain.of(value.getValue().tolerancePpm()), basis));
        }
        List<TimingCandidate> candidates = new ArrayList<>();
        found.candidates().stream()
                .limit(top)
                .forEach(candidate -> candidates.add(
                        TimingCandidate.of(candidates.size() + 1, candidate, found.given(), measured.picture())));
        return new IdentifiedTiming(
                engineVersion,
                values,
                found.derived().stream().map(IdentifiedTiming::derived).toList(),
                found.considered(),
                found.fitting(),
                message(found),
                candidates,
                found.open().stream().map(OpenPart::of).toList());
    }

    private static String message(Identification found) {
        if (found.fitting() > 0) {
            return found.fitting() == 1
                    ? "One timing of broadcast kinship explains every value."
                    : found.fitting() + " timings of broadcast kinship explain every value.";
        }
        return found.candidates().isEmpty()
                ? "No timing of broadcast kinship explains any of the values. The dot clock, the dots of a line and the"
                        + " lines of a field, measured together, describe a mode by themselves."
                : "No timing of broadcast kinship explains every value. What comes nearest is told with what it leaves"
                        + " unexplained.";
    }

    private static DerivedValue derived(Identification.Derived derived) {
        Bounds bounds = derived.value();
        return new DerivedValue(
                derived.measurand().id(),
                Plain.of(bounds.typical()),
                Plain.of(bounds.least()),
                Plain.of(bounds.greatest()),
                derived.from());
    }
}
