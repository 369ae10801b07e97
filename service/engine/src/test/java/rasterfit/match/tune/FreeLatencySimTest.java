package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.fraction;
import static rasterfit.Fractions.rational;

import java.util.Random;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.quantity.Rational;
import rasterfit.quantity.TimeSpan;
import rasterfit.sim.FreeRunSim;
import rasterfit.sim.FreeRunSim.Setup;
import rasterfit.sim.FreeRunSim.Spread;
import rasterfit.sim.Scan;

/**
 * Bounds of outputs with a clock of their own against a run of output frames ({@link FreeRunSim}), rows repeated from an
 * older field left out. The source period is 1 s and the output's p/q s, so over q frames the ages of the fields fall q
 * to the second: every bound must hold, and be approached within 1/q s.
 */
class FreeLatencySimTest {
    private static final TimeSpan SECOND = new TimeSpan(Rational.ONE);

    /** A random pair of rasters; q is prime, so that no age is left out. */
    private record Case(
            int halfLines, int firstLine, int lines, boolean interlaced, int p, int q, int outputLines, int rows) {
        static Case random(Random random, boolean interlaced) {
            int halfLines = 12 + random.nextInt(60);
            int room = (halfLines - (interlaced ? 1 : 0)) / 2;
            int lines = 1 + random.nextInt(room);
            int q = new int[] {23, 31, 41, 53}[random.nextInt(4)];
            int p = q / 2 + random.nextInt(q * 3 / 2);
            int outputLines = 8 + random.nextInt(60);
            return new Case(
                    halfLines,
                    random.nextInt(room - lines + 1),
                    lines,
                    interlaced,
                    p == q ? q + 1 : p, // equal rates would keep one age
                    q,
                    outputLines,
                    1 + random.nextInt(outputLines));
        }

        Setup setup(Random random) {
            int firstRow = random.nextInt(outputLines - rows + 1);
            return new Setup(
                    BigFraction.ONE,
                    BigFraction.of(halfLines, 2),
                    firstLine,
                    lines,
                    interlaced ? Scan.BOB_TOP_EDGE : Scan.PROGRESSIVE,
                    BigFraction.of(p, q),
                    outputLines,
                    firstRow,
                    rows,
                    firstRow,
                    BigFraction.of(random.nextInt(97), 97),
                    4 * q);
        }

        FreeLatency engine(int fieldStores) {
            TimeSpan line = SECOND.dividedBy(Rational.of(halfLines, 2));
            TimeSpan period = SECOND.times(Rational.of(p, q));
            return new FreeLatency(
                    line,
                    SECOND,
                    lines,
                    interlaced,
                    period.dividedBy(Rational.of(outputLines)),
                    period,
                    rows,
                    fieldStores);
        }

        /** Between two ages; fields of one kind come only every other second. */
        BigFraction step() {
            return BigFraction.of(interlaced ? 2 : 1, q);
        }
    }

    private static BigFraction s(TimeSpan span) {
        return fraction(span.seconds());
    }

    private static void assertBoundsHoldAndAreApproached(
            Case in, FreeLatency.Result bounds, Spread seen, BigFraction uneven) {
        assertThat(seen.least())
                .as("least of %s", in)
                .isBetween(s(bounds.least()), s(bounds.least()).add(in.step()));
        assertThat(seen.greatest())
                .as("greatest of %s", in)
                .isLessThan(s(bounds.greatest()).add(uneven))
                .isGreaterThanOrEqualTo(s(bounds.greatest()).subtract(in.step()).subtract(uneven));
    }

    @Test
    void wholeFieldsOfProgressiveSourcesStayWithinTheBounds() {
        Random random = new Random(20_240_603);
        for (int i = 0; i < 400; i++) {
            Case in = Case.random(random, false);
            FreeLatency.Result bounds = in.engine(2).measure();
            Spread seen = FreeRunSim.wholeFields(in.setup(random)).fresh();

            assertBoundsHoldAndAreApproached(in, bounds, seen, BigFraction.ZERO);
        }
    }

    @Test
    void wholeFieldsOfInterlacedSourcesStayWithinTheBoundsButForHalfALine() {
        // Bottom fields end half a line later than top fields, so a top field can be older by that when it is replaced,
        // and a bottom field is younger by that.
        Random random = new Random(20_240_604);
        for (int i = 0; i < 400; i++) {
            Case in = Case.random(random, true);
            FreeLatency.Result bounds = in.engine(2).measure();
            Spread seen = FreeRunSim.wholeFields(in.setup(random)).fresh();

            assertBoundsHoldAndAreApproached(in, bounds, seen, BigFraction.of(1, in.halfLines()));
        }
    }

    @Test
    void everyRowStaysWithinItsOwnBoundsAroundTheMeanAge() {
        Random random = new Random(20_240_605);
        for (int i = 0; i < 200; i++) {
            Case in = Case.random(random, false);
            FreeLatency engine = in.engine(2);
            FreeLatency.Result bounds = engine.measure();
            Spread seen = FreeRunSim.wholeFields(in.setup(random)).fresh();

            assertRow(in, engine, bounds.top(), seen, 0);
            assertRow(in, engine, bounds.middle(), seen, in.lines() / 2);
            assertRow(in, engine, bounds.bottom(), seen, in.lines() - 1);
        }
    }

    /** The first row of the line, or the first below where none shows it, or the last. */
    private static void assertRow(Case in, FreeLatency engine, TimeSpan atMeanAge, Spread seen, int line) {
        int row = 0;
        while (row < in.rows() - 1 && row * in.lines() / in.rows() < line) {
            row++;
        }
        TimeSpan half = engine.greatestAge().times(Rational.HALF);
        BigFraction least = s(atMeanAge.minus(half));
        BigFraction greatest = s(atMeanAge.plus(half));
        assertThat(seen.leastByRow().get(row)).as("row %d of %s", row, in).isBetween(least, least.add(in.step()));
        assertThat(seen.greatestByRow().get(row))
                .as("row %d of %s", row, in)
                .isLessThan(greatest)
                .isGreaterThanOrEqualTo(greatest.subtract(in.step()));
    }

    @Test
    void aSingleStoreStaysWithinTheBounds() {
        Random random = new Random(20_240_606);
        for (int i = 0; i < 400; i++) {
            Case in = Case.random(random, false);
            FreeLatency.Result bounds = in.engine(1).measure();
            Spread seen = FreeRunSim.singleStore(in.setup(random)).fresh();

            assertBoundsHoldAndAreApproached(in, bounds, seen, BigFraction.ZERO);
        }
    }

    @Test
    void fieldsAreDroppedOrRepeatedAtTheDifferenceOfTheRates() {
        Random random = new Random(20_240_607);
        for (int i = 0; i < 100; i++) {
            Case in = Case.random(random, false);
            Setup setup = in.setup(random);
            FreeRunSim.StoredOutcome seen = FreeRunSim.wholeFields(setup);
            Rational beat = RateBeat.free(
                            frequency(BigFraction.ONE), frequency(setup.framePeriod()), 2, false, Steps.SILENT)
                    .beatHz();

            // Over a run of finite length the count is whole, so it can be off by one.
            BigFraction seconds = setup.framePeriod().multiply(setup.frames() - 1);
            BigFraction counted = BigFraction.of(Math.max(seen.dropped(), seen.repeated()));
            assertThat(fraction(beat).multiply(seconds).subtract(counted).abs())
                    .as("%s", in)
                    .isLessThanOrEqualTo(BigFraction.of(2));
            assertThat(Math.min(seen.dropped(), seen.repeated())).as("%s", in).isZero();
        }
    }

    private static rasterfit.quantity.Frequency frequency(BigFraction period) {
        return new rasterfit.quantity.Frequency(rational(period).reciprocal());
    }
}
