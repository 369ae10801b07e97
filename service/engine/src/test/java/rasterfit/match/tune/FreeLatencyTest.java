package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.fraction;
import static rasterfit.Fractions.printed;

import java.util.Random;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.quantity.TimeSpan;
import rasterfit.sim.FreeRunSim;
import rasterfit.sim.Scan;

/** Free-running outputs against a worked example (independent arithmetic) and the frame-by-frame simulation. */
class FreeLatencyTest {
    private static final Frequency FIELD_RATE =
            Frequency.parseHz("59062500/11").dividedBy(Rational.of(341)).dividedBy(Rational.of(262));

    private static FreeLatency of(
            TimeSpan period,
            Rational sourceLines,
            int lines,
            TimeSpan outputPeriod,
            int outputLines,
            int rows,
            int stores) {
        return new FreeLatency(
                period.dividedBy(sourceLines),
                period,
                lines,
                false,
                outputPeriod.dividedBy(Rational.of(outputLines)),
                outputPeriod,
                rows,
                stores);
    }

    @Test
    void theTopLineOfTheWorkedCaseTakes1524To3188Ms() {
        // 262 lines at 60.098478 Hz into 1125 lines at 60/1.001 Hz.
        FreeLatency in = of(
                FIELD_RATE.period(),
                Rational.of(262),
                240,
                Frequency.ofHz(60_000, 1001).period(),
                1125,
                1080,
                2);
        TimeSpan top = in.measure().top();
        TimeSpan halfAge = in.greatestAge().times(Rational.HALF);
        assertThat(printed(top.minus(halfAge).millis(), 2)).isEqualTo("15.24");
        assertThat(printed(top.plus(halfAge).millis(), 2)).isEqualTo("31.88");
    }

    @Test
    void theTopLineFrom50To60HzTakesAtMost3203Ms() {
        // n = 240 of 312.5 lines at 50 Hz: 240 · 64 µs = 15.36 ms, and one frame of 16.67 ms.
        FreeLatency in = of(
                Frequency.ofHz(50).period(),
                Rational.of(625, 2),
                240,
                Frequency.ofHz(60).period(),
                1125,
                1080,
                2);
        TimeSpan halfAge = in.greatestAge().times(Rational.HALF);
        assertThat(printed(in.measure().top().plus(halfAge).millis(), 2)).isEqualTo("32.03");
    }

    @Test
    void oneFieldIsDroppedEvery6312Seconds() {
        RateBeat beat = RateBeat.free(FIELD_RATE, Frequency.ofHz(60_000, 1001), 2, false, Steps.SILENT);
        Rational every = beat.everySeconds();
        assertThat(every).isNotNull();
        assertThat(printed(every, 3)).isEqualTo("6.312");
        assertThat(beat.tears()).isFalse();
    }

    @Test
    void aSingleStoreShowsEveryLineAfterOneLineToOneLineAndAFrame() {
        FreeLatency in = of(
                Frequency.ofHz(50).period(),
                Rational.of(312),
                240,
                Frequency.ofHz(60).period(),
                1125,
                1080,
                1);
        FreeLatency.Result result = in.measure();
        // T/L = 20/312 ms = 0.0641 ms; min(T, To) = 16.667 ms.
        assertThat(printed(result.least().millis(), 4)).isEqualTo("0.0641");
        assertThat(printed(result.greatest().millis(), 4)).isEqualTo("16.7308");
        assertThat(printed(result.middle().millis(), 4)).isEqualTo("8.3974");
    }

    @Test
    void storedFieldsStayWithinTheBoundsOfTheSimulationAndReachThem() {
        Random random = new Random(59);
        for (int i = 0; i < 40; i++) {
            int sourceLines = 60 + random.nextInt(60);
            int lines = 20 + random.nextInt(sourceLines - 25);
            int outputLines = 80 + random.nextInt(120);
            int rows = 30 + random.nextInt(outputLines - 40);
            BigFraction period = BigFraction.of(1000 + random.nextInt(300), 60_000);
            BigFraction outputPeriod = BigFraction.of(1000 + random.nextInt(300), 60_000);
            FreeRunSim.StoredOutcome simulated = FreeRunSim.wholeFields(new FreeRunSim.Setup(
                    period,
                    BigFraction.of(sourceLines),
                    2,
                    lines,
                    Scan.PROGRESSIVE,
                    outputPeriod,
                    outputLines,
                    3,
                    rows,
                    3,
                    BigFraction.of(random.nextInt(1000), 60_000),
                    1500));
            FreeLatency.Result result = of(
                            span(period), Rational.of(sourceLines), lines, span(outputPeriod), outputLines, rows, 2)
                    .measure();
            BigFraction least = fraction(result.least().seconds());
            // The simulation also records frames that show a field again. Those do not count as delay of new lines;
            // where
            // the output is the faster they are older than a frame, by up to the difference of the periods.
            BigFraction again = period.subtract(outputPeriod);
            BigFraction greatest = fraction(result.greatest().seconds())
                    .add(again.compareTo(BigFraction.ZERO) > 0 ? again : BigFraction.ZERO);
            assertThat(simulated.spread().least()).isGreaterThanOrEqualTo(least);
            assertThat(simulated.spread().greatest()).isLessThanOrEqualTo(greatest);
            // The phases of a long run lie close: both bounds are met to within a fiftieth of a frame, unless the two
            // periods are so nearly commensurable that few phases occur at all.
            if (!isNearlyCommensurable(period, outputPeriod)) {
                double margin = outputPeriod.doubleValue() / 50;
                assertThat(simulated.spread().least().doubleValue()).isLessThan(least.doubleValue() + margin);
                assertThat(simulated.spread().greatest().doubleValue()).isGreaterThan(greatest.doubleValue() - margin);
            }
        }
    }

    private static boolean isNearlyCommensurable(BigFraction a, BigFraction b) {
        return a.divide(b).getDenominator().abs().intValueExact() < 100;
    }

    private static TimeSpan span(BigFraction seconds) {
        return new TimeSpan(Rational.of(
                seconds.getNumerator().longValueExact(),
                seconds.getDenominator().longValueExact()));
    }
}
