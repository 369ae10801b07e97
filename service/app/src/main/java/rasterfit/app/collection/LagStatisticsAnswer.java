package rasterfit.app.collection;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.upkeep.LagStatistics;

/**
 * What the repetitions say together, in ms.
 *
 * @param deviationMs sample standard deviation; absent for a single count
 * @param confidenceMs 95 % interval of the mean by Student's t; absent for a single count
 * @param quantisationMs the mean and one frame of the camera on either side
 * @param togetherMs the confidence interval widened by one frame on either side; what matches take
 */
record LagStatisticsAnswer(
        BigDecimal frameMs,
        BigDecimal meanMs,
        @Nullable BigDecimal deviationMs,
        @Nullable IntervalAnswer confidenceMs,
        IntervalAnswer quantisationMs,
        IntervalAnswer togetherMs) {

    /** From least to greatest, in ms. */
    record IntervalAnswer(BigDecimal least, BigDecimal greatest) {
        static IntervalAnswer of(LagStatistics.Interval interval) {
            return new IntervalAnswer(Plain.of(interval.least()), Plain.of(interval.greatest()));
        }
    }

    static LagStatisticsAnswer of(LagStatistics statistics) {
        LagStatistics.Interval confidence = statistics.confidenceMs();
        return new LagStatisticsAnswer(
                Plain.of(statistics.frameMs()),
                Plain.of(statistics.meanMs()),
                Plain.orAbsent(statistics.deviationMs()),
                confidence == null ? null : IntervalAnswer.of(confidence),
                IntervalAnswer.of(statistics.quantisationMs()),
                IntervalAnswer.of(statistics.togetherMs()));
    }
}
