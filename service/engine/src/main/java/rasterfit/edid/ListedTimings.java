package rasterfit.edid;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.CtaDataBlocks.ShortVideo;

/** Joins the timings of all blocks into one list. */
final class ListedTimings {
    private ListedTimings() {}

    /** In the order detailed, DisplayID, VIC, HDMI VIC, standard, CVT codes, established; each label once. */
    static List<AcceptedTiming> of(BaseBlock base, Extensions extensions, @Nullable HdmiBlock hdmi) {
        List<AcceptedTiming> timings = new ArrayList<>(detailed(base, extensions));
        for (int i = 0; i < extensions.displayIdTimings().size(); i++) {
            timings.add(extensions.displayIdTimings().get(i).accepted(i + 1));
        }
        timings.addAll(vics(extensions.dataBlocks()));
        if (hdmi != null) {
            hdmi.hdmiVics().stream().distinct().map(AcceptedTiming::ofHdmiVic).forEach(timings::add);
        }
        timings.addAll(base.standard());
        timings.addAll(extensions.standard());
        timings.addAll(base.descriptors().cvtCodes());
        timings.addAll(extensions.cvtCodes());
        timings.addAll(base.established());
        return timings;
    }

    private static List<AcceptedTiming> detailed(BaseBlock base, Extensions extensions) {
        List<DetailedTiming> detailed = new ArrayList<>(base.descriptors().detailed());
        detailed.addAll(extensions.detailed());
        int nativeCount = extensions.cta().stream()
                .mapToInt(CtaExtension::nativeDetailed)
                .max()
                .orElse(0);
        List<AcceptedTiming> timings = new ArrayList<>();
        for (int i = 0; i < detailed.size(); i++) {
            // E-EDID table 5.1: the preferred timing, then the base block's, then those of the extensions.
            boolean isPreferred = i == 0;
            boolean isNative = i < nativeCount || (isPreferred && base.firstIsNative());
            timings.add(AcceptedTiming.ofDetailed(i + 1, detailed.get(i).timing(), isPreferred, isNative));
        }
        return timings;
    }

    /**
     * By first appearance, those that are taken in 4:2:0 alone last; native if any appearance says so. A capability map
     * counts the short video descriptors of all video data blocks in their order (CTA-861-I §7.5.11).
     */
    private static List<AcceptedTiming> vics(List<CtaDataBlocks> blocks) {
        List<ShortVideo> videos =
                blocks.stream().flatMap(block -> block.videos().stream()).toList();
        Map<Integer, Listed> byVic = new LinkedHashMap<>();
        for (int i = 0; i < videos.size(); i++) {
            int place = i;
            boolean isAlso420 = blocks.stream()
                    .anyMatch(block -> block.allAlso420() || block.also420().contains(place));
            add(byVic, videos.get(i), isAlso420 ? Chroma420.ALSO : Chroma420.NOT_LISTED);
        }
        blocks.stream().flatMap(block -> block.only420().stream()).forEach(video -> add(byVic, video, Chroma420.ONLY));
        List<AcceptedTiming> timings = new ArrayList<>();
        byVic.forEach((vic, listed) -> timings.add(AcceptedTiming.ofVic(vic, listed.isNative(), listed.chroma420())));
        return timings;
    }

    private static void add(Map<Integer, Listed> byVic, ShortVideo video, Chroma420 chroma420) {
        if (!video.isReserved()) {
            byVic.merge(video.vic(), new Listed(video.isNative(), chroma420), Listed::with);
        }
    }

    private record Listed(boolean isNative, Chroma420 chroma420) {
        /** A VIC that one list has in every format and another in 4:2:0 alone is taken in both. */
        Listed with(Listed other) {
            boolean isSame = chroma420 == other.chroma420;
            return new Listed(isNative || other.isNative, isSame ? chroma420 : Chroma420.ALSO);
        }
    }
}
