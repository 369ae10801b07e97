package rasterfit.timing;

import java.util.List;
import java.util.Optional;

/**
 * The four HDMI VICs (HDMI 1.4, from the project's reference table). Their rasters are those of CTA-861 timings that got
 * numbers of their own later; a sink that lists the HDMI VIC has not thereby listed the CTA-861 one.
 */
public final class HdmiVideo {
    /** VIC with the same raster, for HDMI VIC 1 to 4. */
    private static final List<Integer> SAME_RASTER = List.of(95, 94, 93, 98);

    private HdmiVideo() {}

    /** The timing of an HDMI VIC under its CTA-861 number; empty for a reserved number. */
    public static Optional<VideoTiming> find(int hdmiVic) {
        return hdmiVic >= 1 && hdmiVic <= SAME_RASTER.size()
                ? Cta861.find(SAME_RASTER.get(hdmiVic - 1))
                : Optional.empty();
    }
}
