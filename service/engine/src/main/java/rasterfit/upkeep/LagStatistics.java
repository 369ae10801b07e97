package rasterfit.upkeep;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;
import rasterfit.gear.Fact;
import rasterfit.gear.LagReading;
import rasterfit.quantity.Rational;

/**
 * What the repetitions of a camera reading say together, in ms. Mean and bounds of quantisation are exact; what takes a
 * root or a quantile is rounded to a nanosecond, so that it is the same on every machine.
 *
 * <p>Mean, sample standard deviation and the interval mean ± t(0.975; n − 1) · s/√n are those of NIST/SEMATECH e-Handbook
 * of Statistical Methods, 1.3.5.1, 1.3.5.2 and 1.3.5.6. Whatever the repetitions, a count of whole frames leaves one
 * frame open on either side: cause and picture each fall somewhere inside of a frame. Repetitions tell nothing of that, so
 * it is added to the interval and not averaged away.
 *
 * @param measurement what was counted
 * @param frameMs one frame of the camera
 * @param deviationMs sample standard deviation; absent for a single count
 * @param confidenceMs where the mean lies by 95 %, without quantisation; absent for a single count. It may begin below 0
 * @param quantisationMs one frame on either side of the mean; it may begin below 0
 * @param togetherMs {@code confidenceMs} widened by one frame on either side; for a single count {@code quantisationMs}
 */
public record LagStatistics(
        LagMeasurement measurement,
        Rational frameMs,
        Rational meanMs,
        @Nullable Rational deviationMs,
        @Nullable Interval confidenceMs,
        Interval quantisationMs,
        Interval togetherMs) {

    /** Of a two-sided interval: half of what is left out lies on either side. */
    private static final double UPPER_QUANTILE = 0.975;

    private static final int NANOSECONDS = 6;

    /** From least to greatest, in ms. */
    public record Interval(Rational least, Rational greatest) {
        static Interval around(Rational middle, Rational half) {
            return new Interval(middle.minus(half), middle.plus(half));
        }

        Interval widened(Rational by) {
            return new Interval(least.minus(by), greatest.plus(by));
        }
    }

    public static LagStatistics of(LagMeasurement measurement) {
        int n = measurement.framesCounted().size();
        BigInteger sum = BigInteger.ZERO;
        BigInteger squares = BigInteger.ZERO;
        for (int count : measurement.framesCounted()) {
            BigInteger exact = BigInteger.valueOf(count);
            sum = sum.add(exact);
            squares = squares.add(exact.multiply(exact));
        }
        Rational frame = Rational.of(1000).dividedBy(measurement.cameraFramesPerSecond());
        Rational mean = frame.times(Rational.of(new BigDecimal(sum))).dividedBy(n);
        Interval quantisation = Interval.around(mean, frame);
        if (n == 1) {
            return new LagStatistics(measurement, frame, mean, null, null, quantisation, quantisation);
        }
        BigDecimal frameMs = decimal(frame);
        // n·Σc² − (Σc)² = n·(n − 1)·s², exact in frames.
        BigDecimal spread =
                new BigDecimal(squares.multiply(BigInteger.valueOf(n)).subtract(sum.multiply(sum)));
        BigDecimal deviation = root(spread.divide(BigDecimal.valueOf((long) n * (n - 1)), MathContext.DECIMAL128))
                .multiply(frameMs);
        BigDecimal error = root(spread.divide(
                        BigDecimal.valueOf((long) n * (n - 1)).multiply(BigDecimal.valueOf(n)), MathContext.DECIMAL128))
                .multiply(frameMs);
        Interval confidence = Interval.around(mean, rounded(error.multiply(quantile(n - 1))));
        return new LagStatistics(
                measurement, frame, mean, rounded(deviation), confidence, quantisation, confidence.widened(frame));
    }

    /** t(0.975; degrees of freedom). */
    private static BigDecimal quantile(int degreesOfFreedom) {
        return new BigDecimal(TDistribution.of(degreesOfFreedom).inverseCumulativeProbability(UPPER_QUANTILE));
    }

    private static BigDecimal root(BigDecimal square) {
        return square.sqrt(MathContext.DECIMAL64);
    }

    private static BigDecimal decimal(Rational value) {
        return new BigDecimal(value.numerator()).divide(new BigDecimal(value.denominator()), MathContext.DECIMAL128);
    }

    private static Rational rounded(BigDecimal ms) {
        return Rational.of(ms.setScale(NANOSECONDS, RoundingMode.HALF_EVEN));
    }

    /** The reading as a display's delay: the mean, with the whole uncertainty around it. No delay is below 0. */
    public LagReading reading() {
        Fact.Within ms = new Fact.Within(togetherMs.least().max(Rational.ZERO), meanMs, togetherMs.greatest());
        return new LagReading(
                measurement.timing(), ms, measurement.method(), measurement.referenceRow(), Basis.MEASURED);
    }
}
