package rasterfit.identify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import rasterfit.quantity.Rational;

/** A class that is measured with an error inside the tolerance is found again. */
class IdentifierPropertyTest {
    private static final Set<Measurand> COUNTS =
            Set.of(Measurand.LINES_PER_FIELD, Measurand.LINES_PER_FRAME, Measurand.DOTS_PER_LINE);

    @Property(seed = "4", tries = 300, edgeCases = EdgeCasesMode.NONE)
    void whateverPartIsMeasuredTheTimingIsAmongThoseThatFit(
            @ForAll("classes") BroadcastClass known,
            @ForAll("parts") Set<Measurand> parts,
            @ForAll @IntRange(min = 1, max = 500) int tolerancePpm,
            @ForAll @IntRange(min = -99, max = 99) int errorPercent) {
        SourceTiming timing = known.timing();
        Identification found =
                measured(timing, parts, tolerancePpm, errorPercent).identified();

        assertThat(found.contradictions()).isEmpty();
        assertThat(found.candidates())
                .anySatisfy(candidate -> assertThat(candidate.timing()).isEqualTo(timing));
        assertThat(found.candidates()).allMatch(Candidate::explainsAll);
        // Each timing once, the best first: none after a class that is none.
        assertThat(found.candidates()).extracting(Candidate::timing).doesNotHaveDuplicates();
        assertThat(found.candidates()).extracting(Candidate::kind).isSorted();
    }

    @Property(seed = "5", tries = 300, edgeCases = EdgeCasesMode.NONE)
    void clockDotsAndLinesLeaveNothingOpen(
            @ForAll("classes") BroadcastClass known, @ForAll @IntRange(min = -99, max = 99) int errorPercent) {
        Set<Measurand> parts = Set.of(Measurand.DOT_CLOCK, Measurand.DOTS_PER_LINE, Measurand.LINES_PER_FIELD);
        Identification found =
                measured(known.timing(), parts, 200, errorPercent).identified();
        assertThat(found.candidates()).extracting(Candidate::known).containsExactly(known);
        assertThat(found.open()).isEmpty();
    }

    @Property(seed = "6", tries = 200, edgeCases = EdgeCasesMode.NONE)
    void anErrorBeyondTheToleranceNeverFitsTheSameTiming(
            @ForAll("classes") BroadcastClass known, @ForAll @IntRange(min = 110, max = 1000) int errorPercent) {
        SourceTiming timing = known.timing();
        Identification found =
                measured(timing, Set.of(Measurand.LINE_RATE), 50, errorPercent).identified();
        assertThat(found.candidates().stream()
                        .filter(Candidate::explainsAll)
                        .map(Candidate::timing)
                        .toList())
                .doesNotContain(timing);
    }

    /** Rates that lie off by a part of the tolerance, all to the same side as one clock drifts; counts are right. */
    private static Measured measured(SourceTiming timing, Set<Measurand> parts, int tolerancePpm, int errorPercent) {
        Rational error = Rational.of((long) tolerancePpm * errorPercent, 100_000_000);
        Measured measured = Measured.nothing();
        for (Measurand part : parts) {
            Rational exact = part.of(timing);
            if (COUNTS.contains(part)) {
                measured.with(part, Bounds.exactly(exact));
            } else {
                // A period lies off to the other side.
                Rational drift = part == Measurand.LINE_PERIOD
                        ? Rational.ONE.plus(error).reciprocal()
                        : Rational.ONE.plus(error);
                measured.with(part, Bounds.within(exact.times(drift), Rational.of(tolerancePpm + 1L)));
            }
        }
        return measured;
    }

    @Provide
    Arbitrary<BroadcastClass> classes() {
        return Arbitraries.of(BroadcastClasses.all());
    }

    @Provide
    Arbitrary<Set<Measurand>> parts() {
        return Arbitraries.of(List.of(Measurand.values())).set().ofMinSize(1).ofMaxSize(7);
    }
}
