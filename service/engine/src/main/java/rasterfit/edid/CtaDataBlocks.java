package rasterfit.edid;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What the data block collection of a CTA-861 extension says about timings and links (CTA-861-I §7.4, §7.5).
 *
 * @param videos every short video descriptor in its place, reserved ones too, since the capability map counts them
 * @param only420 the VICs that are taken in YCbCr 4:2:0 alone
 * @param also420 the places in {@code videos} that are taken in YCbCr 4:2:0 as well
 * @param allAlso420 a map without bits: every one of {@code videos}
 * @param displayIdTimings of the blocks that carry timings of DisplayID
 * @param extensionCount how many extension blocks the EDID has, if this is stated here
 */
record CtaDataBlocks(
        List<ShortVideo> videos,
        List<ShortVideo> only420,
        Set<Integer> also420,
        boolean allAlso420,
        @Nullable VideoCapability capability,
        @Nullable HdmiBlock hdmi,
        @Nullable HdmiForumBlock hdmiForum,
        List<DisplayIdTiming> displayIdTimings,
        @Nullable Integer extensionCount) {

    static final CtaDataBlocks NONE =
            new CtaDataBlocks(List.of(), List.of(), Set.of(), false, null, null, null, List.of(), null);

    /** One short video descriptor. */
    record ShortVideo(int vic, boolean isNative) {
        static final ShortVideo RESERVED = new ShortVideo(0, false);

        boolean isReserved() {
            return vic == 0;
        }
    }

    CtaDataBlocks {
        videos = List.copyOf(videos);
        only420 = List.copyOf(only420);
        also420 = Set.copyOf(also420);
        displayIdTimings = List.copyOf(displayIdTimings);
    }
}
