package rasterfit.app.answer;

import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * A raster timing in full. Active and total lines are those of a frame; porches and sync are those of one field, the
 * first where the two fields of an interlaced frame differ by half a line, as CTA-861-I table 1 prints them.
 */
public record TimingAnswer(
        String pixelClockHz,
        int horizontalActive,
        int horizontalFrontPorch,
        int horizontalSync,
        int horizontalBackPorch,
        int horizontalTotal,
        int verticalActive,
        int verticalFrontPorch,
        int verticalSync,
        int verticalBackPorch,
        int verticalTotal,
        Scan scan,
        Polarity horizontalPolarity,
        Polarity verticalPolarity,
        String lineRateHz,
        String fieldRateHz) {

    public static TimingAnswer of(RasterTiming timing) {
        return new TimingAnswer(
                Plain.exact(timing.pixelClock()),
                timing.horizontalActive(),
                timing.horizontalFrontPorch(),
                timing.horizontalSync(),
                timing.horizontalBackPorch(),
                timing.horizontalTotal(),
                timing.verticalActive(),
                timing.verticalFrontPorch(),
                timing.verticalSync(),
                timing.verticalBackPorch(),
                timing.verticalTotal(),
                timing.scan(),
                timing.horizontalPolarity(),
                timing.verticalPolarity(),
                Plain.exact(timing.lineRate()),
                Plain.exact(timing.fieldRate()));
    }
}
