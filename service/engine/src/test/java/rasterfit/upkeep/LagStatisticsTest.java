package rasterfit.upkeep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.Basis;
import rasterfit.gear.LagReading;
import rasterfit.gear.LagReading.Method;
import rasterfit.quantity.Rational;
import rasterfit.upkeep.LagStatistics.Interval;

/** Camera readings against published data and tables. */
class LagStatisticsTest {
    private static LagStatistics statistics(String framesPerSecond, Integer... counts) {
        return LagStatistics.of(new LagMeasurement(
                "vic:16", Method.SPLIT_SIGNAL, 540, Rational.parse(framesPerSecond), Arrays.asList(counts)));
    }

    private static Interval present(@Nullable Interval interval) {
        assertThat(interval).isNotNull();
        return interval;
    }

    private static Rational present(@Nullable Rational value) {
        assertThat(value).isNotNull();
        return value;
    }

    /** NIST StRD, univariate summary statistics, data set NumAcc1: certified mean 10000002, standard deviation 1, exact. */
    @Test
    void meanAndDeviationOfADataSetWithCertifiedValuesAreExact() {
        LagStatistics statistics = statistics("1000", 10_000_001, 10_000_003, 10_000_002);

        assertThat(statistics.meanMs()).isEqualTo(Rational.of(10_000_002));
        assertThat(statistics.deviationMs()).isEqualTo(Rational.ONE);
    }

    /**
     * Student's own example: hours of sleep gained, the second drug over the first (Student, "The probable error of a
     * mean", Biometrika 6, 1908, p. 20), here in tenths. The limits are those that R prints for its data set {@code
     * sleep}, 0.7001142 and 2.4598858 (from memory).
     */
    @Test
    void theIntervalIsThatOfStudentsOwnExample() {
        LagStatistics statistics = statistics("10000", 12, 24, 13, 13, 0, 10, 18, 8, 46, 14);

        assertThat(statistics.meanMs()).isEqualTo(Rational.parse("1.58"));
        assertThat(present(statistics.deviationMs()).toDouble()).isCloseTo(1.23, within(0.0001));
        Interval confidence = present(statistics.confidenceMs());
        assertThat(confidence.least().toDouble()).isCloseTo(0.7001142, within(1e-6));
        assertThat(confidence.greatest().toDouble()).isCloseTo(2.4598858, within(1e-6));
    }

    /** NIST/SEMATECH e-Handbook 1.3.6.7.2, critical values of Student's t, column 0.975 (from memory). */
    @ParameterizedTest
    @CsvSource({
        "1, 12.706",
        "2, 4.303",
        "3, 3.182",
        "4, 2.776",
        "5, 2.571",
        "6, 2.447",
        "7, 2.365",
        "8, 2.306",
        "9, 2.262",
        "10, 2.228",
        "20, 2.086",
        "30, 2.042",
        "60, 2.000",
        "100, 1.984"
    })
    void theIntervalIsAsWideAsTheTableOfStudentsTSays(int degreesOfFreedom, double critical) {
        int n = degreesOfFreedom + 1;
        List<Integer> counts = new ArrayList<>(Collections.nCopies(n, 1000));
        counts.set(0, 2000);
        LagStatistics statistics =
                LagStatistics.of(new LagMeasurement(null, Method.SPLIT_SIGNAL, null, Rational.of(1000), counts));

        // One of n counts 1000 frames of 1 ms longer: Σ(c − mean)² = 1000²·(1 − 1/n), so s/√n = 1000/n.
        Interval confidence = present(statistics.confidenceMs());
        double half = confidence.greatest().minus(confidence.least()).toDouble() / 2;
        assertThat(half / (1000.0 / n)).isCloseTo(critical, within(0.0005));
    }

    @Test
    void framesAreReckonedInMilliseconds() {
        // 240 frames a second: 25/6 ms each. Counts 3, 4, 5: mean 4 frames = 50/3 ms, deviation 1 frame.
        LagStatistics statistics = statistics("240", 3, 4, 5);

        assertThat(statistics.frameMs()).isEqualTo(Rational.parse("25/6"));
        assertThat(statistics.meanMs()).isEqualTo(Rational.parse("50/3"));
        assertThat(present(statistics.deviationMs()).toDouble()).isCloseTo(25.0 / 6, within(5e-7));
        assertThat(statistics.quantisationMs())
                .isEqualTo(new Interval(Rational.parse("25/2"), Rational.parse("125/6")));
    }

    @Test
    void oneFrameOpenOnEitherSideIsAddedToTheIntervalAndToldApart() {
        LagStatistics statistics = statistics("240", 3, 4, 5);
        Interval confidence = present(statistics.confidenceMs());

        // t(0.975; 2) = 4.303 (table above), s/√n = 1/√3 frames: ±2.484 frames, and ±3.484 with the open frame.
        assertThat(confidence.greatest().minus(statistics.meanMs()).toDouble())
                .isCloseTo(4.303 / Math.sqrt(3) * 25 / 6, within(0.01));
        assertThat(statistics.togetherMs().greatest().minus(confidence.greatest()))
                .isEqualTo(Rational.parse("25/6"));
        assertThat(confidence.least().minus(statistics.togetherMs().least())).isEqualTo(Rational.parse("25/6"));
    }

    @Test
    void aSingleCountHasNoDeviationAndOnlyTheOpenFrames() {
        LagStatistics statistics = statistics("1000", 20);

        assertThat(statistics.meanMs()).isEqualTo(Rational.of(20));
        assertThat(statistics.deviationMs()).isNull();
        assertThat(statistics.confidenceMs()).isNull();
        assertThat(statistics.togetherMs()).isEqualTo(new Interval(Rational.of(19), Rational.of(21)));
    }

    @Test
    void equalCountsDoNotDeviateButKeepTheOpenFrames() {
        LagStatistics statistics = statistics("1000", 20, 20, 20, 20);

        assertThat(statistics.deviationMs()).isEqualTo(Rational.ZERO);
        assertThat(statistics.confidenceMs()).isEqualTo(new Interval(Rational.of(20), Rational.of(20)));
        assertThat(statistics.togetherMs()).isEqualTo(new Interval(Rational.of(19), Rational.of(21)));
    }

    @Test
    void theReadingHoldsTheMeanWithTheWholeUncertaintyAndHowItWasRead() {
        LagReading reading = statistics("1000", 20, 20).reading();

        assertThat(reading.timing()).isEqualTo("vic:16");
        assertThat(reading.method()).isEqualTo(Method.SPLIT_SIGNAL);
        assertThat(reading.referenceRow()).isEqualTo(540);
        assertThat(reading.basis()).isEqualTo(Basis.MEASURED);
        assertThat(reading.ms().least()).isEqualTo(Rational.of(19));
        assertThat(reading.ms().typical()).isEqualTo(Rational.of(20));
        assertThat(reading.ms().greatest()).isEqualTo(Rational.of(21));
    }

    @Test
    void noDelayIsReadAsLessThanNone() {
        LagStatistics statistics = statistics("60", 0, 1);

        assertThat(statistics.togetherMs().least().signum()).isNegative();
        assertThat(statistics.reading().ms().least()).isEqualTo(Rational.ZERO);
    }

    @Test
    void theGreatestCountsAreReckonedWithoutOverflow() {
        LagStatistics statistics = statistics("1000", Integer.MAX_VALUE, Integer.MAX_VALUE, Integer.MAX_VALUE - 3);

        // Σ(c − mean)² = 1 + 1 + 4 = 6 over n − 1 = 2.
        assertThat(statistics.meanMs()).isEqualTo(Rational.of(Integer.MAX_VALUE - 1L));
        assertThat(present(statistics.deviationMs()).toDouble()).isCloseTo(Math.sqrt(3), within(1e-6));
    }

    @Property(tries = 200, seed = "41")
    void neitherOrderNorAConstantChangesHowFarTheCountsDeviate(
            @ForAll @Size(min = 2, max = 40) List<@IntRange(max = 5000) Integer> counts,
            @ForAll @IntRange(max = 5000) int more) {
        List<Integer> later =
                new ArrayList<>(counts.stream().map(count -> count + more).toList());
        Collections.reverse(later);
        LagStatistics one = LagStatistics.of(measured(counts));
        LagStatistics other = LagStatistics.of(measured(later));

        assertThat(other.deviationMs()).isEqualTo(one.deviationMs());
        assertThat(other.meanMs()).isEqualTo(one.meanMs().plus(one.frameMs().times(more)));
        Rational half = present(one.confidenceMs()).greatest().minus(one.meanMs());
        assertThat(present(other.confidenceMs()).greatest().minus(other.meanMs()))
                .isEqualTo(half);
    }

    @Property(tries = 200, seed = "42")
    void theDeviationIsThatOfTheTwoPassFormula(
            @ForAll @Size(min = 2, max = 40) List<@IntRange(max = 5000) Integer> counts) {
        double mean = counts.stream().mapToInt(Integer::intValue).average().orElseThrow();
        double squares = counts.stream()
                .mapToDouble(count -> (count - mean) * (count - mean))
                .sum();
        double expected = Math.sqrt(squares / (counts.size() - 1)) * 1000 / 240;

        assertThat(present(LagStatistics.of(measured(counts)).deviationMs()).toDouble())
                .isCloseTo(expected, within(1e-6));
    }

    private static LagMeasurement measured(List<Integer> counts) {
        return new LagMeasurement(null, Method.NOT_STATED, null, Rational.of(240), counts);
    }
}
