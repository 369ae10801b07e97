package rasterfit.app.timing;

import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.app.answer.TimingAnswer;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Border;
import rasterfit.timing.RasterTiming;

/**
 * A timing that a formula made.
 *
 * @param formula by which standard
 * @param askedFieldRateHz what was asked for; the timing's own rate may differ
 * @param timing margins are counted to the porches
 * @param margins what was added on each side; absent if nothing was asked for
 */
record GeneratedTiming(
        String engineVersion,
        String formula,
        String askedFieldRateHz,
        TimingAnswer timing,
        @Nullable BorderAnswer margins) {

    static GeneratedTiming of(
            String engineVersion, String formula, Frequency asked, RasterTiming timing, @Nullable Border margins) {
        return new GeneratedTiming(
                engineVersion,
                formula,
                Plain.exact(asked),
                TimingAnswer.of(timing),
                margins == null ? null : BorderAnswer.of(margins));
    }
}
