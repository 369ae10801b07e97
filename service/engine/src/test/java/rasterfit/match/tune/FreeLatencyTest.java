package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.printed;

import org.junit.jupiter.api.Test;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.quantity.TimeSpan;

/** Free-running outputs against a worked example (independent arithmetic). */
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
}
