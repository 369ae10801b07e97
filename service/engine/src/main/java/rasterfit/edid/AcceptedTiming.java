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
 * @param number the VIC or HDMI VIC; else the place in its list, from 1: detailed timings and timings of DisplayID counted
 *     through all blocks, standard timings by slot (9 and later from descriptors), CVT codes by slot and rate, established
 *     timings by bit in the order of the bytes (18 and later from descriptors)
 * @param timing absent for a number without a published timing, and where a formula leaves no room for blanking
 * @param nominal what the EDID says where it gives only a size and a rate
 * @param basis where {@code timing} comes from
 * @param preferred a timing that a source should choose first: the first detailed one (E-EDID table 5.1), or as marked
 * @param nativeFormat the display declares the timing native
 * @param chroma420 whether the timing is taken in YCbCr 4:2:0
 * @param displayIdCode the VIC, HDMI VIC or DMT id that a block of DisplayID names; {@code basis} says which
 */
public record AcceptedTiming(
        TimingOrigin origin,
        int number,
        @Nullable RasterTiming timing,
        @Nullable NominalFormat nominal,
        TimingBasis basis,
        boolean preferred,
        boolean nativeFormat,
        Chroma420 chroma420,
        @Nullable Integer displayIdCode) {

    static AcceptedTiming ofVic(int vic, boolean nativeFormat, Chroma420 chroma420) {
        RasterTiming timing = Cta861.find(vic).map(VideoTiming::timing).orElse(null);
        return new AcceptedTiming(
                TimingOrigin.VIC,
                vic,
                timing,
                null,
                known(timing, TimingBasis.CTA_861),
                false,
                nativeFormat,
                chroma420,
                null);
    }

    static AcceptedTiming ofHdmiVic(int hdmiVic) {
        RasterTiming timing = HdmiVideo.find(hdmiVic).map(VideoTiming::timing).orElse(null);
        return listed(TimingOrigin.HDMI_VIC, hdmiVic, timing, null, known(timing, TimingBasis.HDMI));
    }

    static AcceptedTiming ofDetailed(int number, RasterTiming timing, boolean preferred, boolean nativeFormat) {
        return new AcceptedTiming(
                TimingOrigin.DETAILED,
                number,
                timing,
                null,
                TimingBasis.STATED,
                preferred,
                nativeFormat,
                Chroma420.NOT_LISTED,
                null);
    }

    /** One whose raster the EDID leaves to a table or a formula. */
    static AcceptedTiming ofNominal(
            TimingOrigin origin, int number, NominalFormat nominal, @Nullable RasterTiming timing, TimingBasis basis) {
        return listed(origin, number, timing, nominal, known(timing, basis));
    }

    static AcceptedTiming ofDisplayId(
            int number,
            @Nullable RasterTiming timing,
            TimingBasis basis,
            @Nullable Integer code,
            boolean preferred,
            Chroma420 chroma420) {
        return new AcceptedTiming(
                TimingOrigin.DISPLAYID, number, timing, null, known(timing, basis), preferred, false, chroma420, code);
    }

    private static AcceptedTiming listed(
            TimingOrigin origin,
            int number,
            @Nullable RasterTiming timing,
            @Nullable NominalFormat nominal,
            TimingBasis basis) {
        return new AcceptedTiming(origin, number, timing, nominal, basis, false, false, Chroma420.NOT_LISTED, null);
    }

    private static TimingBasis known(@Nullable RasterTiming timing, TimingBasis basis) {
        return timing == null ? TimingBasis.UNKNOWN : basis;
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

    private Optional<VideoTiming> namedByDisplayId() {
        if (displayIdCode == null) {
            return Optional.empty();
        }
        return switch (basis) {
            case CTA_861 -> Cta861.find(displayIdCode);
            case HDMI -> HdmiVideo.find(displayIdCode);
            case STATED, DMT, GTF, CVT, MAKERS_TABLE, UNKNOWN -> Optional.empty();
        };
    }

    /** The published timing behind a VIC or an HDMI VIC. For the latter its own {@code vic} is not listed here. */
    public Optional<VideoTiming> published() {
        return switch (origin) {
            case VIC -> Cta861.find(number);
            case HDMI_VIC -> HdmiVideo.find(number);
            case DISPLAYID -> namedByDisplayId();
            case DETAILED, STANDARD, CVT_CODE, ESTABLISHED -> Optional.empty();
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
