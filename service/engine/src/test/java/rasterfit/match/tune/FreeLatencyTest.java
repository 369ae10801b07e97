package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.printed;

import org.junit.jupiter.api.Test;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.quantity.TimeSpan;
import rasterfit.timing.Broadcast;

/** Outputs with a clock of their own, against a worked example: independent arithmetic, as far as digits are printed. */
class FreeLatencyTest {
    private static final Frequency FIELD_RATE =
            Frequency.parseHz("59062500/11").dividedBy(Rational.of(341)).dividedBy(Rational.of(262));
    private static final Frequency LINE_RATE = FIELD_RATE.times(262);

    private static FreeLatency into1125Lines(Frequency output, int fieldStores) {
        return new FreeLatency(
                LINE_RATE.period(),
                FIELD_RATE.period(),
                240,
                false,
                output.times(1125).period(),
                output.period(),
                1080,
                fieldStores);
    }

    private static String ms(TimeSpan span) {
        return printed(span.millis(), 2);
    }

    @Test
    void theTopLineOfTheWorkedCaseTakesFrom15To32Milliseconds() {
        FreeLatency in = into1125Lines(Broadcast.FIELD_RATE_525, 2);
        TimeSpan half = in.greatestAge().times(Rational.HALF);
        TimeSpan top = in.measure().top();

        assertThat(ms(top.minus(half))).isEqualTo("15.24");
        assertThat(ms(top.plus(half))).isEqualTo("31.88");
    }

    @Test
    void theAgeIsBoundedByTheShorterOfBothPeriods() {
        // 60.098 Hz into 59.940 Hz: the source's period is the shorter; 50 Hz into 60 Hz: the output's.
        assertThat(into1125Lines(Broadcast.FIELD_RATE_525, 2).greatestAge()).isEqualTo(FIELD_RATE.period());
        assertThat(fiftyIntoSixty().greatestAge()).isEqualTo(Frequency.ofHz(60).period());
    }

    private static FreeLatency fiftyIntoSixty() {
        return new FreeLatency(
                Broadcast.LINE_RATE_625.period(),
                Broadcast.FIELD_RATE_625.period(),
                240,
                false,
                Frequency.ofHz(60 * 1125).period(),
                Frequency.ofHz(60).period(),
                1080,
                2);
    }

    @Test
    void fiftyHertzIntoSixtyTakeAtMost32MillisecondsForTheTopLine() {
        // 240 · 64 µs + 1/60 s.
        FreeLatency in = fiftyIntoSixty();
        TimeSpan greatest = in.measure().top().plus(in.greatestAge().times(Rational.HALF));

        assertThat(ms(greatest)).isEqualTo("32.03");
        assertThat(greatest.seconds()).isEqualTo(Rational.parse("0.01536").plus(Rational.of(1, 60)));
    }

    @Test
    void aSingleStoreTakesOneLineAndUpToOneFieldMore() {
        // 341 dots of 11/59062500 s, and T = 1/60.098478 s for the greatest age.
        FreeLatency.Result result = into1125Lines(Broadcast.FIELD_RATE_525, 1).measure();

        assertThat(result.least().seconds()).isEqualTo(Rational.of(341 * 11, 59_062_500));
        assertThat(result.greatest().minus(result.least())).isEqualTo(FIELD_RATE.period());
        assertThat(result.middle().minus(result.least()))
                .isEqualTo(FIELD_RATE.period().times(Rational.HALF));
    }

    @Test
    void aFieldIsDroppedEverySixSeconds() {
        RateBeat beat = RateBeat.free(FIELD_RATE, Broadcast.FIELD_RATE_525, 2, false, Steps.SILENT);

        assertThat(printed(beat.everySeconds(), 3)).isEqualTo("6.312");
        assertThat(beat.tears()).isFalse();
    }

    @Test
    void aSingleStoreTearsAtTheDifferenceOfTheRates() {
        RateBeat beat = RateBeat.free(FIELD_RATE, Broadcast.FIELD_RATE_525, 1, false, Steps.SILENT);

        assertThat(beat.tears()).isTrue();
        assertThat(beat.beatHz()).isEqualTo(FIELD_RATE.hz().minus(Broadcast.FIELD_RATE_525.hz()));
    }

    @Test
    void equalRatesNeitherDropNorTear() {
        RateBeat beat = RateBeat.free(FIELD_RATE, FIELD_RATE, 1, false, Steps.SILENT);

        assertThat(beat.everySeconds()).isNull();
        assertThat(beat.tears()).isFalse();
    }
}
