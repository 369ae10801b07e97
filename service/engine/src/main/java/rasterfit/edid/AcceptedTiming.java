package rasterfit.edid;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.HdmiVideo;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.VideoTiming;

/**
 * A timing that a display lists.
 *
 * @param number the VIC or HDMI VIC; else the place in its list, from 1: detailed timings counted through all blocks,
 *     standard timings by slot (9 and later from descriptors), established timings by bit in the order of the bytes
 * @param timing absent for a number without a published timing, and for standard and established timings
 * @param nominal present for standard and established timings only
 * @param preferred the timing that a source should choose first: the first detailed one (E-EDID table 5.1)
 * @param nativeFormat the display declares the timing native
 */
public record AcceptedTiming(
        TimingOrigin origin,
        int number,
        @Nullable RasterTiming timing,
        @Nullable NominalFormat nominal,
        boolean preferred,
        boolean nativeFormat) {

    static AcceptedTiming ofVic(int vic, boolean nativeFormat) {
        RasterTiming timing = Cta861.find(vic).map(VideoTiming::timing).orElse(null);
        return new AcceptedTiming(TimingOrigin.VIC, vic, timing, null, false, nativeFormat);
    }

    static AcceptedTiming ofHdmiVic(int hdmiVic) {
        RasterTiming timing = HdmiVideo.find(hdmiVic).map(VideoTiming::timing).orElse(null);
        return new AcceptedTiming(TimingOrigin.HDMI_VIC, hdmiVic, timing, null, false, false);
    }

    static AcceptedTiming ofDetailed(int number, RasterTiming timing, boolean preferred, boolean nativeFormat) {
        return new AcceptedTiming(TimingOrigin.DETAILED, number, timing, null, preferred, nativeFormat);
    }

    static AcceptedTiming ofNominal(TimingOrigin origin, int number, NominalFormat nominal) {
        return new AcceptedTiming(origin, number, null, nominal, false, false);
    }

    /** The same in every reading of the same EDID: {@code vic:16}, {@code hdmi-vic:1}, {@code detailed:2}. */
    public String label() {
        return origin.label() + ":" + number;
    }

    public @Nullable Integer vic() {
        return origin == TimingOrigin.VIC ? number : null;
    }

    public @Nullable Integer hdmiVic() {
        return origin == TimingOrigin.HDMI_VIC ? number : null;
    }

    /** The published timing behind a VIC or an HDMI VIC. For the latter its own {@code vic} is not listed here. */
    public Optional<VideoTiming> published() {
        return switch (origin) {
            case VIC -> Cta861.find(number);
            case HDMI_VIC -> HdmiVideo.find(number);
            case DETAILED, STANDARD, ESTABLISHED -> Optional.empty();
        };
    }

    /** Width / height of the picture where the timing fixes it. */
    public Optional<Rational> pictureAspect() {
        return published().map(VideoTiming::pictureAspect);
    }

    /** Every raster that this entry stands for, {@link #timing} first; empty where no raster is known. */
    public List<RasterTiming> acceptedRasters() {
        return published()
                .map(VideoTiming::acceptedRasters)
                .orElseGet(() -> timing == null ? List.of() : List.of(timing));
    }
}
