package rasterfit.gear;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.AcceptedTiming;
import rasterfit.edid.AnalogInput;
import rasterfit.edid.AnalogSync;
import rasterfit.edid.Chroma420;
import rasterfit.edid.EdidReading;
import rasterfit.edid.RangeLimits;
import rasterfit.edid.VideoInput;
import rasterfit.edid.VideoLink;
import rasterfit.gear.SinkLimits.ListedRaster;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.VideoTiming;

/** What an EDID says about a display input, in the form in which it is computed with. */
public final class SinkLimitsReader {
    /** Range limits are whole hertz and kilohertz (E-EDID table 3.26): half a unit may be lost (assumption). */
    private static final Frequency FIELD_RATE_ROUNDING = Frequency.ofHz(1, 2);

    private static final Frequency LINE_RATE_ROUNDING = Frequency.ofHz(500);

    private SinkLimitsReader() {}

    /**
     * The limits as declared. A VIC lists all line counts of the 240- and 288-line timings, since a sink has to accept
     * them all (CTA-861-I §4); that n·6 Hz and n·6/1.001 Hz go together is left to acceptance. A timing that is taken in
     * YCbCr 4:2:0 alone is left out: no output here sends that.
     */
    public static SinkLimits read(EdidReading edid) {
        List<ListedRaster> listed = new ArrayList<>();
        for (AcceptedTiming timing : edid.timings()) {
            if (timing.chroma420() == Chroma420.ONLY) {
                continue;
            }
            Rational aspect = timing.pictureAspect().orElse(null);
            List<RasterTiming> own = timing.timing() == null ? List.of() : List.of(timing.timing());
            List<RasterTiming> rasters =
                    timing.published().map(VideoTiming::variants).orElse(own);
            listed.addAll(listed(timing.label(), rasters, aspect));
        }
        RangeLimits limits = edid.rangeLimits();
        VideoInput input = edid.input();
        return new SinkLimits(
                listed,
                limits == null ? null : new FrequencyRange(limits.minFieldRate(), limits.maxFieldRate()),
                limits == null ? null : new FrequencyRange(limits.minLineRate(), limits.maxLineRate()),
                limits == null ? null : limits.maxPixelClock(),
                edid.continuousFrequency(),
                input == null ? null : input.maxTmdsClock(),
                input == null ? null : linkKind(input.link()));
    }

    /** The rasters that a published timing stands for, under its label. */
    public static List<ListedRaster> listed(String label, VideoTiming timing) {
        return listed(label, timing.variants(), timing.pictureAspect());
    }

    /** The scan range of an analog input, widened by what the rounding of the descriptor may hide. */
    public static @Nullable FrequencyRange analogLineRate(EdidReading edid) {
        RangeLimits limits = edid.rangeLimits();
        return limits == null ? null : widened(limits.minLineRate(), limits.maxLineRate(), LINE_RATE_ROUNDING);
    }

    /** As {@link #analogLineRate}, for the field rate. */
    public static @Nullable FrequencyRange analogFieldRate(EdidReading edid) {
        RangeLimits limits = edid.rangeLimits();
        return limits == null ? null : widened(limits.minFieldRate(), limits.maxFieldRate(), FIELD_RATE_ROUNDING);
    }

    /** TMDS for a digital input, RGB with the syncs of the base block (E-EDID table 3.11) for an analog one. */
    public static List<Carried> accepts(EdidReading edid) {
        VideoInput input = edid.input();
        AnalogInput analog = input == null ? null : input.analog();
        if (input == null || input.link() != VideoLink.ANALOG || analog == null) {
            return List.of(new Carried(Format.TMDS, Set.of()));
        }
        Set<SyncKind> syncs = EnumSet.noneOf(SyncKind.class);
        analog.syncs().forEach(sync -> syncs.add(syncKind(sync)));
        return List.of(new Carried(Format.RGB, syncs));
    }

    /** The rasters that go by one label. */
    public static List<ListedRaster> listed(
            String label, List<RasterTiming> rasters, @Nullable Rational pictureAspect) {
        return rasters.stream()
                .map(timing -> new ListedRaster(label, timing.raster(), pictureAspect))
                .toList();
    }

    private static FrequencyRange widened(Frequency min, Frequency max, Frequency by) {
        return new FrequencyRange(
                new Frequency(min.hz().minus(by.hz()).max(Rational.ZERO)),
                new Frequency(max.hz().plus(by.hz())));
    }

    private static @Nullable LinkKind linkKind(VideoLink link) {
        return switch (link) {
            case ANALOG -> null;
            case DVI -> LinkKind.DVI;
            case HDMI -> LinkKind.HDMI;
        };
    }

    private static SyncKind syncKind(AnalogSync sync) {
        return switch (sync) {
            case SEPARATE_SYNC -> SyncKind.SEPARATE_SYNC;
            case COMPOSITE_SYNC -> SyncKind.COMPOSITE_SYNC;
            case SYNC_ON_GREEN -> SyncKind.SYNC_ON_GREEN;
        };
    }
}
