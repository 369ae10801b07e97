package rasterfit.edid.oracle;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.AcceptedTiming;
import rasterfit.edid.Chroma420;
import rasterfit.edid.CtaFlags;
import rasterfit.edid.DefectCode;
import rasterfit.edid.EdidReader;
import rasterfit.edid.EdidReading;
import rasterfit.edid.HdmiBlock;
import rasterfit.edid.HdmiBlock.Latency;
import rasterfit.edid.HdmiForumBlock;
import rasterfit.edid.NominalFormat;
import rasterfit.edid.ProductIdentity;
import rasterfit.edid.RangeLimits;
import rasterfit.edid.RangeLimits.CvtSupport;
import rasterfit.edid.RangeLimits.SecondaryGtf;
import rasterfit.edid.TimingBasis;
import rasterfit.edid.TimingOrigin;
import rasterfit.edid.VideoCapability;
import rasterfit.edid.VideoInput;
import rasterfit.quantity.Frequency;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** What {@code EdidReader} reads, named as {@link TheirFacts} names it. */
final class OurFacts {
    /** Eight slots and four descriptors of six. */
    private static final int MOST_STANDARD_OF_BASE = 8 + 4 * 6;

    private final Facts facts = new Facts();
    private final byte[] edid;
    private final EdidReading reading;

    private OurFacts(byte[] edid) {
        this.edid = edid;
        this.reading = EdidReader.read(edid);
    }

    static Facts of(byte[] edid) {
        OurFacts ours = new OurFacts(edid);
        EdidReading reading = ours.reading;
        ours.checksums(edid.length / EdidReader.BLOCK_BYTES);
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
        if (input.capability() != null) {
            capability(input.capability());
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

    private void capability(VideoCapability capability) {
        facts.put("YCbCr range selectable", capability.yccRangeSelectable());
        facts.put("RGB range selectable", capability.rgbRangeSelectable());
        facts.put("scan of preferred timing", capability.preferredTiming());
        facts.put("scan of computer formats", capability.computerFormats());
        facts.put("scan of video formats", capability.videoFormats());
    }

    /** Where a detailed timing is left out as impossible. */
    private void impossible() {
        List<Integer> offsets = reading.defects().stream()
                .filter(defect -> defect.code() == DefectCode.DETAILED_TIMING_IMPOSSIBLE)
                .map(defect -> EdidReader.BLOCK_BYTES * defect.blockIndex() + defect.byteOffset())
                .toList();
        putCount(
                "impossible detailed timings",
                offsets.stream()
                        .filter(Predicate.not(this::isSlow))
                        .filter(offset -> (edid[offset] & edid[offset + 15]) != -1));
    }

    private void putCount(String name, Stream<?> listed) {
        int count = (int) listed.count();
        if (count > 0) {
            facts.put(name, count);
        }
    }

    /** First byte 01h. */
    private static boolean isNarrow(AcceptedTiming standard) {
        return standard.nominal() != null && standard.nominal().horizontalActive() == 256;
    }

    /** A clock below 10 MHz. */
    private boolean isSlow(int offset) {
        return ((edid[offset] & 0xFF) | (edid[offset + 1] & 0xFF) << 8) < 1000;
    }

    private static boolean isSlow(AcceptedTiming detailed) {
        return detailed.timing() != null && detailed.timing().pixelClock().compareTo(Frequency.ofHz(10_000_000)) < 0;
    }

    private void timings() {
        impossible();
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
        List<AcceptedTiming> detailed = of(TimingOrigin.DETAILED);
        inSequence(
                "detailed", detailed.stream().filter(timing -> !isSlow(timing)).toList());
        putCount("detailed timings below 10 MHz", detailed.stream().filter(OurFacts::isSlow));
        List<AcceptedTiming> standard = of(TimingOrigin.STANDARD);
        standard("standard", standard.stream().filter(timing -> timing.number() <= MOST_STANDARD_OF_BASE));
        standard("further standard", standard.stream().filter(timing -> timing.number() > MOST_STANDARD_OF_BASE));
        inSequence("established", of(TimingOrigin.ESTABLISHED));
        inSequence("CVT code", of(TimingOrigin.CVT_CODE));
        displayId(of(TimingOrigin.DISPLAYID));
    }

    private void displayId(List<AcceptedTiming> timings) {
        inSequence("DisplayID", timings);
        for (int i = 0; i < timings.size(); i++) {
            String name = "DisplayID " + (i + 1);
            facts.put(name + " preferred", timings.get(i).preferred());
            facts.put(name + " in 4:2:0", timings.get(i).chroma420() != Chroma420.NOT_LISTED);
        }
    }

    private void standard(String name, Stream<AcceptedTiming> timings) {
        Map<Boolean, List<AcceptedTiming>> byNarrowness =
                timings.collect(Collectors.partitioningBy(OurFacts::isNarrow));
        inSequence(name, byNarrowness.get(false));
        putCount(name + " timings of 256 pixels", byNarrowness.get(true).stream());
    }

    private void inSequence(String name, List<AcceptedTiming> timings) {
        facts.put(name + " timings", timings.size());
        for (int i = 0; i < timings.size(); i++) {
            putTiming(name + " " + (i + 1), timings.get(i));
        }
    }

    private void putTiming(String name, AcceptedTiming accepted) {
        RasterTiming timing = accepted.timing();
        NominalFormat nominal = accepted.nominal();
        if (timing != null) {
            facts.putOurs(name, timing, accepted.basis() == TimingBasis.GTF);
        } else if (nominal != null) {
            facts.put(name + " size", List.of(nominal.horizontalActive(), nominal.verticalActive()));
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
    private SortedSet<String> nativeSizes() {
        SortedSet<String> sizes = new TreeSet<>();
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
        facts.put("range limits possible", true);
        putHz("range least field rate", limits.minFieldRate());
        putHz("range greatest field rate", limits.maxFieldRate());
        putHz("range least line rate", limits.minLineRate());
        putHz("range greatest line rate", limits.maxLineRate());
        putHz("range greatest clock", limits.maxPixelClock());
        facts.put("range formula", limits.formula().name());
        if (limits.secondaryGtf() != null) {
            secondary(limits.secondaryGtf());
        }
        if (limits.cvt() != null) {
            cvt(limits.cvt());
        }
    }

    private void secondary(SecondaryGtf secondary) {
        putHz("range GTF start", secondary.startLineRate());
        facts.put("range GTF C", secondary.curve().c());
        facts.put("range GTF M", secondary.curve().m());
        facts.put("range GTF K", secondary.curve().k());
        facts.put("range GTF J", secondary.curve().j());
    }

    private void cvt(CvtSupport cvt) {
        facts.put("range CVT version", cvt.version() + "." + cvt.revision());
        facts.putIfPresent("range CVT most pixels", cvt.maxActivePixels());
        facts.put("range CVT aspects", cvt.aspects());
        facts.putIfPresent("range CVT preferred aspect", cvt.preferredAspect());
        facts.put("range CVT standard blanking", cvt.standardBlanking());
        facts.put("range CVT reduced blanking", cvt.reducedBlanking());
        facts.putIfPresent("range CVT preferred rate", cvt.preferredFieldRateHz());
    }

    private void putHz(String name, @Nullable Frequency frequency) {
        if (frequency != null) {
            facts.put(name, frequency.hz());
        }
    }
}
