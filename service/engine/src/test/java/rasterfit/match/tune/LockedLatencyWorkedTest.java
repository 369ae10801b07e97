package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.fraction;
import static rasterfit.Fractions.printed;

import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * Locked outputs against a worked example: independent arithmetic, printed to four decimals of a millisecond, and by hand
 * as exact fractions where that is short. Source: 3/2 of the 525-line subcarrier (ITU-R BT.1700), 341 × 262.
 */
class LockedLatencyWorkedTest {
    private static final Frequency FIELD_RATE =
            Frequency.parseHz("59062500/11").dividedBy(Rational.of(341)).dividedBy(Rational.of(262));

    private static LockedLatency whole(int outputLines, int firstRow, int rows, int taps) {
        return new LockedLatency(524, 18, 240, false, outputLines, firstRow, rows, taps);
    }

    private static String ms(Rational periods) {
        return printed(periods.times(FIELD_RATE.period().millis()), 4);
    }

    @Test
    void theFieldPeriodIsThatOfTheWorkedExample() {
        assertThat(printed(FIELD_RATE.hz(), 6)).isEqualTo("60.098478");
    }

    @Test
    void oneTapInto1125Lines() {
        LockedLatency in = whole(1125, 41, 1080, 1);
        LockedLatency.Result result = in.measure();

        assertThat(ms(result.offset())).isEqualTo("0.6003");
        assertThat(ms(result.top())).isEqualTo("0.0635");
        assertThat(ms(result.middle())).isEqualTo("0.4293");
        assertThat(ms(result.bottom())).isEqualTo("0.7995");
        assertThat(ms(result.least())).isEqualTo("0.0635");
        assertThat(ms(in.mean(result))).isEqualTo("0.4572");
        assertThat(ms(result.greatest())).isEqualTo("0.8482");
        assertThat(result.capacity()).isEqualTo(14);
    }

    @Test
    void oneTapInto1125LinesByHand() {
        // 4.5 rows per line take 4.5/1125 = 1/250 of the period, a line 1/262: reading is the slower, so the first row
        // decides: D = (18 + 1)/262 − 41/1125, and the top line waits for its own arrival alone, 1/262.
        LockedLatency.Result result = whole(1125, 41, 1080, 1).measure();

        assertThat(fraction(result.offset())).isEqualTo(BigFraction.of(19, 262).subtract(BigFraction.of(41, 1125)));
        assertThat(fraction(result.top())).isEqualTo(BigFraction.of(1, 262));
        assertThat(fraction(result.least())).isEqualTo(BigFraction.of(1, 262));
        // Line 120 is first shown by row 540: 120 lines later in, 540 rows later out.
        assertThat(fraction(result.middle()))
                .isEqualTo(BigFraction.of(1, 262).add(BigFraction.of(540, 1125)).subtract(BigFraction.of(120, 262)));
        // Line 239 begins with row 1075.5, so with row 1076. Line 238, of five rows, ends with row 1075, later after
        // its
        // arrival than line 239 with row 1079: 1075/1125 − 238/262 > 1079/1125 − 239/262.
        assertThat(fraction(result.bottom()))
                .isEqualTo(BigFraction.of(1 - 239, 262).add(BigFraction.of(1076, 1125)));
        assertThat(fraction(result.greatest()))
                .isEqualTo(BigFraction.of(1 - 238, 262).add(BigFraction.of(1075, 1125)));
    }

    @Test
    void fourTapsInto1125Lines() {
        LockedLatency.Result result = whole(1125, 41, 1080, 4).measure();

        assertThat(ms(result.offset())).isEqualTo("0.6977");
        assertThat(ms(result.greatest())).isEqualTo("0.9456");
        // 16 lines and one behind.
        assertThat(result.capacity()).isEqualTo(17);
    }

    @Test
    void fourTapsInto1125LinesByHand() {
        // Row j is centred on (2j + 1)/9 − 1/2 lines and needs the second line below that: line 2 from row 2 on
        // (5/9 − 1/2 ≥ 0; row 1: 3/9 − 1/2 < 0). D = (18 + 3)/262 − (41 + 2)/1125: later lines find reading the slower.
        LockedLatency.Result result = whole(1125, 41, 1080, 4).measure();

        assertThat(fraction(result.offset())).isEqualTo(BigFraction.of(21, 262).subtract(BigFraction.of(43, 1125)));
    }

    @Test
    void oneTapInto750Lines() {
        assertThat(ms(whole(750, 25, 720, 1).measure().offset())).isEqualTo("0.6520");
    }

    @Test
    void aCropDelaysBecauseThePictureIsDrawnFaster() {
        LockedLatency.Result result = new LockedLatency(524, 30, 216, false, 1125, 41, 1080, 1).measure();

        assertThat(ms(result.offset())).isEqualTo("1.3624");
        assertThat(ms(result.greatest())).isEqualTo("2.3681");
        assertThat(result.capacity()).isEqualTo(38);
        // 5 rows per line take 1/225 of the period against 1/262: the first row decides, the last row waits longest.
        assertThat(fraction(result.offset())).isEqualTo(BigFraction.of(31, 262).subtract(BigFraction.of(41, 1125)));
        assertThat(fraction(result.greatest()))
                .isEqualTo(BigFraction.of(1 - 215, 262).add(BigFraction.of(1079, 1125)));
    }

    @Test
    void thePlaceOfAPictureMovesTheOffsetButNotTheLatency() {
        String[] offsets = {"1.6392", "0.7517", "-0.1357"};
        for (int place = 0; place < 3; place++) {
            LockedLatency in = whole(1125, 41 + 60 * place, 960, 1);
            LockedLatency.Result result = in.measure();

            assertThat(ms(result.offset())).as("place %d", place).isEqualTo(offsets[place]);
            assertThat(ms(result.least())).isEqualTo("0.0635");
            assertThat(ms(in.mean(result))).isEqualTo("0.6051");
            assertThat(ms(result.greatest())).isEqualTo("1.1468");
            assertThat(result.capacity()).isEqualTo(19);
        }
    }
}
