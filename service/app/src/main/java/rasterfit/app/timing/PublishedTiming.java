package rasterfit.app.timing;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.app.answer.TimingAnswer;
import rasterfit.quantity.Rational;
import rasterfit.timing.Dmt;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.VideoTiming;

/**
 * A numbered timing of CTA-861-I or of VESA DMT.
 *
 * @param id how it is named: {@code vic:16}, {@code dmt:0x52}
 * @param vic of CTA-861-I; absent for others
 * @param dmt the id of VESA DMT; absent for others
 * @param reducedBlanking of DMT; absent for others
 * @param border of DMT, where a timing has one; absent for others
 * @param standardCode of DMT: the two bytes of an EDID's standard timing that mean it, {@code 0x8180}; absent if it has
 *     none
 * @param cvtCode of DMT: the three bytes of an EDID's CVT code that mean it; absent if it has none
 * @param timing the raster that table 1 prints first
 * @param variants the other line counts that a sink has to accept with it; only 240- and 288-line timings have some
 * @param otherPixelClockHz the clock of the same raster at the other rate of an n·6 Hz and n·6/1.001 Hz pair
 * @param pictureAspect width to height of the picture
 * @param pixelAspectRatios width to height of a pixel as table 2 prints it, one for each of {@code pixelRepetitions}; DMT
 *     has square pixels
 * @param pixelRepetitions how often each pixel is sent; the timing counts what is sent
 */
record PublishedTiming(
        String id,
        @Nullable Integer vic,
        @Nullable Integer dmt,
        @Nullable Boolean reducedBlanking,
        @Nullable BorderAnswer border,
        @Nullable String standardCode,
        @Nullable String cvtCode,
        TimingAnswer timing,
        List<TimingAnswer> variants,
        @Nullable String otherPixelClockHz,
        String pictureAspect,
        List<String> pixelAspectRatios,
        List<Integer> pixelRepetitions)
        implements ListedTiming {

    static PublishedTiming of(VideoTiming timing) {
        List<RasterTiming> variants = timing.variants();
        return new PublishedTiming(
                "vic:" + timing.vic(),
                timing.vic(),
                null,
                null,
                null,
                null,
                null,
                TimingAnswer.of(timing.timing()),
                variants.subList(1, variants.size()).stream()
                        .map(TimingAnswer::of)
                        .toList(),
                Plain.exactOrAbsent(timing.otherPixelClock()),
                timing.pictureAspect().toString(),
                timing.pixelAspects().stream().map(Rational::toString).toList(),
                timing.pixelRepetitions());
    }

    static PublishedTiming of(Dmt.MonitorTiming timing) {
        return new PublishedTiming(
                String.format(Locale.ROOT, "dmt:0x%02x", timing.id()),
                null,
                timing.id(),
                timing.reducedBlanking(),
                BorderAnswer.orAbsent(timing.border()),
                code(timing.standardCode(), 4),
                code(timing.cvtCode(), 6),
                TimingAnswer.of(timing.timing()),
                List.of(),
                null,
                timing.pictureAspect().toString(),
                List.of("1"),
                List.of(1));
    }

    private static @Nullable String code(@Nullable Integer code, int digits) {
        return code == null ? null : String.format(Locale.ROOT, "0x%0" + digits + "x", code);
    }
}
