package rasterfit.edid.oracle;

import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.AcceptedTiming;
import rasterfit.edid.Chroma420;
import rasterfit.edid.CtaFlags;
import rasterfit.edid.DefectCode;
import rasterfit.edid.EdidReading;
import rasterfit.edid.HdmiBlock;
import rasterfit.edid.HdmiBlock.Latency;
import rasterfit.edid.HdmiForumBlock;
import rasterfit.edid.ProductIdentity;
import rasterfit.edid.RangeLimits;
import rasterfit.edid.RangeLimits.CvtSupport;
import rasterfit.edid.TimingBasis;
import rasterfit.edid.TimingOrigin;
import rasterfit.edid.VideoInput;
import rasterfit.quantity.Frequency;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** What {@code EdidReader} reads, named as {@link TheirFacts} names it. */
final class OurFacts {
    private final Facts facts = new Facts();
    private final EdidReading reading;

    private OurFacts(EdidReading reading) {
        this.reading = reading;
    }

    /** @param blocks how many blocks the EDID has */
    static Facts of(EdidReading reading, int blocks) {
        OurFacts ours = new OurFacts(reading);
        ours.checksums(blocks);
        if (reading.product() != null && reading.input() != null) {
            ours.product(reading.product());
            ours.input(reading.input());
        }
        ours.facts.put("continuous frequency", reading.continuousFrequency());
        ours.facts.put("default GTF", reading.defaultGtf());
        ours.timings();
        if (reading.rangeLimits() != null) {
            ours.rangeLimits(reading.rangeLimits());
        }
        return ours.facts;
    }

    private void checksums(int blocks) {
        for (int block = 0; block < blocks; block++) {
            int index = block;
            facts.put(
                    "checksum of block " + block,
                    reading.defects().stream()
                            .noneMatch(defect ->
                                    defect.code() == DefectCode.CHECKSUM_WRONG && defect.blockIndex() == index));
        }
    }

    private void product(ProductIdentity product) {
        facts.put("version", product.version().toString());
        facts.put("manufacturer", product.manufacturer());
        facts.put("product code", product.productCode());
        facts.putIfPresent("week", product.week());
        facts.putIfPresent("year", product.year());
        facts.put("model year", product.isModelYear());
    }

    private void input(VideoInput input) {
        facts.put("analog", input.analog() != null);
        CtaFlags flags = input.ctaFlags();
        facts.put("underscan", flags != null && flags.underscansIt());
        facts.put("basic audio", flags != null && flags.basicAudio());
        facts.put("YCbCr 4:4:4", flags != null && flags.ycbcr444());
        facts.put("YCbCr 4:2:2", flags != null && flags.ycbcr422());
        if (input.hdmi() != null) {
            hdmi(input.hdmi());
        }
        if (input.hdmiForum() != null) {
            forum(input.hdmiForum());
        }
    }

    private void hdmi(HdmiBlock hdmi) {
        putHz("HDMI max TMDS clock", hdmi.declaredMaxTmdsClock());
        facts.put("HDMI deep colour", hdmi.deepColourBits());
        facts.put("HDMI deep colour 4:4:4", hdmi.deepColourYcbcr444());
        facts.put("HDMI dual link", hdmi.dualLinkDvi());
        latency("HDMI", hdmi.latency());
        latency("HDMI interlaced", hdmi.interlacedLatency());
    }

    private void latency(String name, @Nullable Latency latency) {
        if (latency != null) {
            facts.putIfPresent(name + " video latency", latency.videoMs());
            facts.putIfPresent(name + " audio latency", latency.audioMs());
        }
    }

    private void forum(HdmiForumBlock forum) {
        facts.put("HDMI Forum version", forum.version());
        putHz("HDMI Forum max TMDS rate", forum.declaredMaxTmdsCharacterRate());
    }

    private void timings() {
        facts.put(
                "impossible detailed timings",
                (int) reading.defects().stream()
                        .filter(defect -> defect.code() == DefectCode.DETAILED_TIMING_IMPOSSIBLE)
                        .count());
        facts.put(
                "preferred",
                of(TimingOrigin.DETAILED).stream()
                        .filter(AcceptedTiming::preferred)
                        .map(AcceptedTiming::label)
                        .toList());
        facts.put("native sizes", nativeSizes());
        facts.put("VICs", numbers(of(TimingOrigin.VIC)));
        facts.put("HDMI VICs", numbers(of(TimingOrigin.HDMI_VIC)));
        for (AcceptedTiming vic : of(TimingOrigin.VIC)) {
            facts.put(vic.label() + " native", vic.nativeFormat());
            facts.put(vic.label() + " in 4:2:0", vic.chroma420());
            putTiming(vic.label(), vic);
        }
        of(TimingOrigin.HDMI_VIC).forEach(vic -> putTiming(vic.label(), vic));
        inSequence("detailed", of(TimingOrigin.DETAILED));
        inSequence("standard", of(TimingOrigin.STANDARD));
        inSequence("established", of(TimingOrigin.ESTABLISHED));
        inSequence("CVT code", of(TimingOrigin.CVT_CODE));
        inSequence("DisplayID", of(TimingOrigin.DISPLAYID));
        int at = 0;
        for (AcceptedTiming timing : of(TimingOrigin.DISPLAYID)) {
            String name = "DisplayID " + ++at;
            facts.put(name + " preferred", timing.preferred());
            facts.put(name + " in 4:2:0", timing.chroma420() != Chroma420.NOT_LISTED);
        }
    }

    private void inSequence(String name, List<AcceptedTiming> timings) {
        facts.put(name + " timings", timings.size());
        for (int i = 0; i < timings.size(); i++) {
            putTiming(name + " " + (i + 1), timings.get(i));
        }
    }

    private void putTiming(String name, AcceptedTiming accepted) {
        RasterTiming timing = accepted.timing();
        if (timing != null) {
            facts.putOurs(name, timing, accepted.basis() == TimingBasis.GTF);
        }
    }

    private List<AcceptedTiming> of(TimingOrigin origin) {
        return reading.timings().stream()
                .filter(timing -> timing.origin() == origin)
                .toList();
    }

    private static List<Integer> numbers(Collection<AcceptedTiming> timings) {
        return timings.stream().map(AcceptedTiming::number).toList();
    }

    /** Each once, as "1920x1080i". */
    private TreeSet<String> nativeSizes() {
        TreeSet<String> sizes = new TreeSet<>();
        for (AcceptedTiming accepted : reading.timings()) {
            RasterTiming timing = accepted.timing();
            if (accepted.nativeFormat() && timing != null) {
                sizes.add(timing.horizontalActive() + "x" + timing.verticalActive()
                        + (timing.scan() == Scan.INTERLACED ? "i" : ""));
            }
        }
        return sizes;
    }

    private void rangeLimits(RangeLimits limits) {
        putHz("range least field rate", limits.minFieldRate());
        putHz("range greatest field rate", limits.maxFieldRate());
        putHz("range least line rate", limits.minLineRate());
        putHz("range greatest line rate", limits.maxLineRate());
        putHz("range greatest clock", limits.maxPixelClock());
        facts.put("range formula", limits.formula().name());
        CvtSupport cvt = limits.cvt();
        if (cvt != null) {
            facts.put("range CVT version", cvt.version() + "." + cvt.revision());
            facts.putIfPresent("range CVT most pixels", cvt.maxActivePixels());
            facts.put("range CVT standard blanking", cvt.standardBlanking());
            facts.put("range CVT reduced blanking", cvt.reducedBlanking());
            facts.putIfPresent("range CVT preferred rate", cvt.preferredFieldRateHz());
        }
    }

    private void putHz(String name, @Nullable Frequency frequency) {
        if (frequency != null) {
            facts.put(name, frequency.hz());
        }
    }
}
