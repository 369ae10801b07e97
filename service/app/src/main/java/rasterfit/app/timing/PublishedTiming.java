package rasterfit.app.timing;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.app.answer.TimingAnswer;
import rasterfit.quantity.Rational;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.VideoTiming;

/**
 * A numbered timing of CTA-861-I.
 *
 * @param id how gear and answers name it: {@code vic:16}
 * @param timing the raster that table 1 prints first
 * @param variants the other line counts that a sink has to accept with it; only 240- and 288-line timings have some
 * @param otherPixelClockHz the clock of the same raster at the other rate of an n·6 Hz and n·6/1.001 Hz pair
 * @param pictureAspect width to height of the picture
 * @param pixelAspectRatios width to height of a pixel as table 2 prints it, one for each of {@code pixelRepetitions}
 * @param pixelRepetitions how often each pixel is sent; the timing counts what is sent
 */
record PublishedTiming(
        String id,
        int vic,
        TimingAnswer timing,
        List<TimingAnswer> variants,
        @Nullable String otherPixelClockHz,
        String pictureAspect,
        List<String> pixelAspectRatios,
        List<Integer> pixelRepetitions) {

    static PublishedTiming of(VideoTiming timing) {
        List<RasterTiming> variants = timing.variants();
        return new PublishedTiming(
                "vic:" + timing.vic(),
                timing.vic(),
                TimingAnswer.of(timing.timing()),
                variants.subList(1, variants.size()).stream()
                        .map(TimingAnswer::of)
                        .toList(),
                Plain.exactOrAbsent(timing.otherPixelClock()),
                timing.pictureAspect().toString(),
                timing.pixelAspects().stream().map(Rational::toString).toList(),
                timing.pixelRepetitions());
    }
}
