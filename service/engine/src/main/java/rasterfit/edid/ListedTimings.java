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

    /** In the order detailed, VIC, HDMI VIC, standard, established; each label once. */
    static List<AcceptedTiming> of(BaseBlock base, List<CtaExtension> extensions, @Nullable HdmiBlock hdmi) {
        List<AcceptedTiming> timings = new ArrayList<>(detailed(base, extensions));
        timings.addAll(vics(extensions));
        if (hdmi != null) {
            hdmi.hdmiVics().stream().distinct().map(AcceptedTiming::ofHdmiVic).forEach(timings::add);
        }
        timings.addAll(base.standard());
        timings.addAll(base.established());
        return timings;
    }

    private static List<AcceptedTiming> detailed(BaseBlock base, List<CtaExtension> extensions) {
        Descriptors descriptors = base.descriptors();
        List<DetailedTiming> detailed = new ArrayList<>(descriptors.detailed());
        extensions.forEach(extension -> detailed.addAll(extension.detailed()));
        int nativeCount =
                extensions.stream().mapToInt(CtaExtension::nativeDetailed).max().orElse(0);
        List<AcceptedTiming> timings = new ArrayList<>();
        for (int i = 0; i < detailed.size(); i++) {
            // E-EDID table 5.1: the preferred timing, then the base block's, then those of the extensions.
            boolean isPreferred = i == 0;
            boolean isNative = i < nativeCount || (isPreferred && base.firstIsNative());
            timings.add(AcceptedTiming.ofDetailed(i + 1, detailed.get(i).timing(), isPreferred, isNative));
        }
        return timings;
    }

    /** By first appearance; native if any appearance says so. */
    private static List<AcceptedTiming> vics(List<CtaExtension> extensions) {
        Map<Integer, Boolean> nativeByVic = new LinkedHashMap<>();
        for (CtaExtension extension : extensions) {
            for (ShortVideo video : extension.dataBlocks().videos()) {
                nativeByVic.merge(video.vic(), video.isNative(), Boolean::logicalOr);
            }
        }
        List<AcceptedTiming> timings = new ArrayList<>();
        nativeByVic.forEach((vic, isNative) -> timings.add(AcceptedTiming.ofVic(vic, isNative, Chroma420.NOT_LISTED)));
        return timings;
    }
}
