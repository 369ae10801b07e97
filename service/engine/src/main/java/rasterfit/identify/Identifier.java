package rasterfit.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;
import rasterfit.identify.Candidate.Bases;
import rasterfit.identify.Candidate.Deviation;
import rasterfit.identify.Candidate.Kind;
import rasterfit.quantity.Rational;

/**
 * Finds the timings that explain what was measured. Pure: the same values give the same answer.
 *
 * <p>Order: how many values are explained; whether the counted dots make a picture of usual width; {@link Kind}; line rate
 * and line count of a class before others; the sum of deviations; the order of the classes, and whole dots before halves.
 */
public final class Identifier {
    private static final Bases ASSUMED =
            new Bases(Basis.ASSUMED, Basis.ASSUMED, Basis.ASSUMED, Basis.ASSUMED, Basis.ASSUMED);

    private static final Comparator<Candidate> ORDER = Comparator.comparingInt(
                    (Candidate candidate) -> candidate.unexplained().size())
            .thenComparing(candidate -> Boolean.FALSE.equals(candidate.usualWidth()))
            .thenComparing(Candidate::kind)
            .thenComparing(candidate -> departures(candidate.timing()))
            .thenComparing(Identifier::deviation)
            .thenComparingInt(Identifier::position)
            .thenComparing(candidate -> candidate.timing().dotsPerLine().denominator())
            .thenComparing(candidate -> candidate.timing().dotClock())
            .thenComparing(candidate -> candidate.timing().linesPerField());

    private final MeasuredTiming measured;
    private final Derivation derivation;
    private final int given;

    private Identifier(MeasuredTiming measured) {
        this.measured = measured;
        this.derivation = Derivation.of(measured);
        this.given = measured.values().size()
                + (measured.scan() == null ? 0 : 1)
                + measured.picture().given();
    }

    public static Identification identify(MeasuredTiming measured) {
        List<Contradiction> contradictions = Contradictions.of(measured);
        Identifier identifier = new Identifier(measured);
        return contradictions.isEmpty()
                ? identifier.identify()
                : new Identification(contradictions, identifier.given, List.of(), 0, 0, List.of(), List.of());
    }

    private Identification identify() {
        List<Candidate> all = new ArrayList<>();
        Set<SourceTiming> known = new HashSet<>();
        for (BroadcastClass one : BroadcastClasses.all()) {
            known.add(one.timing());
            all.add(candidate(Kind.CLASS, one.timing(), one, one.clock()));
        }
        boolean classFits = all.stream().anyMatch(Candidate::explainsAll);
        for (Map.Entry<SourceTiming, DotClock> composed :
                new Composer(measured, derivation, !classFits).timings().entrySet()) {
            if (!known.contains(composed.getKey())) {
                all.add(candidate(Kind.COMPOSED, composed.getKey(), null, composed.getValue()));
            }
        }
        List<Candidate> fitting = all.stream().filter(Candidate::explainsAll).toList();
        List<Candidate> best = fitting.isEmpty() ? nearest(all) : fitting;
        Bases bases = bases(fitting);
        List<Candidate> ranked = best.stream()
                .sorted(ORDER)
                .map(candidate -> candidate.on(partsOf(candidate, bases, fitting)))
                .toList();
        return new Identification(
                List.of(), given, derivation.told(), all.size(), fitting.size(), ranked, Openness.of(fitting));
    }

    /** The values themselves if they make a timing, and what explains most of them. */
    private List<Candidate> nearest(List<Candidate> all) {
        List<Candidate> nearest = new ArrayList<>();
        SourceTiming itself = AsMeasured.timing(measured, derivation);
        if (itself != null) {
            nearest.add(candidate(Kind.AS_MEASURED, itself, null, null));
        }
        int fewest = all.stream()
                .mapToInt(candidate -> candidate.unexplained().size())
                .min()
                .orElseThrow();
        if (fewest < given) {
            all.stream()
                    .filter(candidate -> candidate.unexplained().size() == fewest)
                    .forEach(nearest::add);
        }
        return nearest;
    }

    private Candidate candidate(
            Kind kind, SourceTiming timing, @Nullable BroadcastClass known, @Nullable DotClock clock) {
        List<Deviation> deviations = new ArrayList<>();
        List<String> unexplained = new ArrayList<>();
        measured.values().forEach((measurand, bounds) -> {
            Deviation deviation = Deviation.of(measurand, bounds, timing);
            deviations.add(deviation);
            if (!deviation.within()) {
                unexplained.add(measurand.id());
            }
        });
        if (measured.scan() != null && measured.scan() != timing.scan()) {
            unexplained.add("scan");
        }
        measured.picture()
                .beyond(Optional.of(timing.dotsPerLine()), Optional.of(timing.linesPerField()))
                .forEach(excess -> unexplained.add(excess.member()));
        Boolean usualWidth = measured.picture().isOfUsualWidth(timing.dotsPerLine());
        return new Candidate(kind, timing, known, clock, deviations, unexplained, usualWidth, ASSUMED);
    }

    /** What the parts rest on where they were not measured: computed only if all that fits agrees. */
    private Bases bases(List<Candidate> fitting) {
        boolean lineRate = derivation.lineRate().isPresent();
        boolean lines = derivation.linesPerField().isPresent() || measured.has(Measurand.LINES_PER_FRAME);
        return new Bases(
                basis(lines || lineRate || measured.has(Measurand.FIELD_RATE), fitting, SourceTiming::lineStandard),
                basis(derivation.leadsTo(Measurand.DOT_CLOCK), fitting, SourceTiming::dotClock),
                basis(derivation.leadsTo(Measurand.DOTS_PER_LINE), fitting, SourceTiming::dotsPerLine),
                basis(lines, fitting, SourceTiming::linesPerField),
                basis(lines, fitting, SourceTiming::scan));
    }

    private static Basis basis(boolean follows, List<Candidate> fitting, Function<SourceTiming, Object> part) {
        long values =
                fitting.stream().map(Candidate::timing).map(part).distinct().count();
        return follows && values == 1 ? Basis.COMPUTED : Basis.ASSUMED;
    }

    /**
     * The same for one candidate, with what was measured: a value that fits, and is the only one that does. Values that are
     * taken as they are leave no choice.
     */
    private Bases partsOf(Candidate candidate, Bases otherwise, List<Candidate> fitting) {
        boolean itself = candidate.kind() == Kind.AS_MEASURED;
        return new Bases(
                otherwise.lineStandard(),
                part(candidate, Measurand.DOT_CLOCK, fitting, itself ? Basis.COMPUTED : otherwise.dotClock()),
                part(candidate, Measurand.DOTS_PER_LINE, fitting, itself ? Basis.COMPUTED : otherwise.dotsPerLine()),
                part(
                        candidate,
                        Measurand.LINES_PER_FIELD,
                        fitting,
                        itself ? Basis.COMPUTED : otherwise.linesPerField()),
                measured.scan() == candidate.timing().scan()
                        ? Basis.MEASURED
                        : itself ? Basis.COMPUTED : otherwise.scan());
    }

    private Basis part(Candidate candidate, Measurand measurand, List<Candidate> fitting, Basis otherwise) {
        Rational value = measurand.of(candidate.timing());
        boolean fits =
                measured.of(measurand).map(bounds -> bounds.contains(value)).orElse(false);
        boolean isOnly =
                fitting.stream().allMatch(other -> measurand.of(other.timing()).equals(value));
        return fits && isOnly ? Basis.MEASURED : otherwise;
    }

    private static int departures(SourceTiming timing) {
        return (BroadcastClasses.lineRates().contains(timing.lineRate()) ? 0 : 1)
                + (BroadcastClasses.lineCounts().contains(timing.linesPerField()) ? 0 : 1);
    }

    private static Rational deviation(Candidate candidate) {
        return candidate.deviations().stream()
                .map(deviation -> deviation.ppm().abs())
                .reduce(Rational.ZERO, Rational::plus);
    }

    private static int position(Candidate candidate) {
        return candidate.known() == null
                ? Integer.MAX_VALUE
                : BroadcastClasses.all().indexOf(candidate.known());
    }
}
