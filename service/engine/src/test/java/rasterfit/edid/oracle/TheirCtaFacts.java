package rasterfit.edid.oracle;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.Chroma420;
import rasterfit.edid.VideoCapability;
import rasterfit.timing.PrintedTiming;

/** The extensions of CTA-861 as {@code edid-decode} prints them. */
final class TheirCtaFacts {
    private static final Pattern NUMBER = Pattern.compile("(?:Unknown \\((?:HDMI )?VIC|VIC|HDMI VIC)\\s+(\\d+).*");

    private final Facts facts;
    private final List<Printed> extensions;

    TheirCtaFacts(Facts facts, Stream<Printed> extensions) {
        this.facts = facts;
        this.extensions = extensions.toList();
    }

    void put() {
        flags();
        List<Printed> videos = dataBlocks("Video Data Block:")
                .flatMap(block -> block.children().stream())
                .toList();
        List<Printed> only = dataBlocks("YCbCr 4:2:0 Video Data Block:")
                .flatMap(block -> block.children().stream())
                .toList();
        Set<Integer> also = also(videos);
        List<Printed> all = new ArrayList<>(videos);
        all.addAll(only);
        Map<Integer, @Nullable PrintedTiming> vics = byNumber(all.stream());
        Set<Integer> plain = byNumber(videos.stream()).keySet();
        also.addAll(byNumber(only.stream()).keySet());
        facts.put("VICs", List.copyOf(vics.keySet()));
        vics.forEach((vic, timing) -> {
            boolean isNative = all.stream()
                    .filter(video -> number(video).equals(Optional.of(vic)))
                    .anyMatch(video -> video.text().contains("(native)"));
            facts.put("vic:" + vic + " native", isNative);
            facts.put(
                    "vic:" + vic + " in 4:2:0",
                    !plain.contains(vic) ? Chroma420.ONLY : also.contains(vic) ? Chroma420.ALSO : Chroma420.NOT_LISTED);
            if (timing != null) {
                facts.putTheirs("vic:" + vic, timing);
            }
        });
        // Of more than one block the first counts.
        Optional<Printed> hdmi = vendor("(HDMI), OUI 00-0C-03").findFirst();
        hdmi.ifPresent(this::hdmi);
        Map<Integer, @Nullable PrintedTiming> hdmiVics = byNumber(hdmi.stream()
                .flatMap(block -> block.under("Extended HDMI"))
                .flatMap(details -> details.under("HDMI VICs"))
                .flatMap(list -> list.children().stream()));
        facts.put("HDMI VICs", List.copyOf(hdmiVics.keySet()));
        hdmiVics.forEach((vic, timing) -> {
            if (timing != null) {
                facts.putTheirs("hdmi-vic:" + vic, timing);
            }
        });
        extensions.stream()
                .flatMap(block -> block.children().stream())
                .filter(block -> block.startsWith("Vendor-Specific Data Block (HDMI Forum), OUI C4-5D-D8")
                        || block.startsWith("HDMI Forum Sink Capability Data Block"))
                .findFirst()
                .ifPresent(this::forum);
        dataBlocks("Video Capability Data Block").findFirst().ifPresent(this::capability);
    }

    private Stream<Printed> dataBlocks(String name) {
        return extensions.stream().flatMap(block -> block.under(name));
    }

    private Stream<Printed> vendor(String name) {
        return dataBlocks("Vendor-Specific Data Block " + name);
    }

    /** Of the first extension that has any; it prints a revision in front and the count of native timings behind. */
    private void flags() {
        Optional<Printed> first = extensions.stream()
                .filter(block -> block.has("Native detailed modes"))
                .findFirst();
        Predicate<String> has =
                prefix -> first.filter(block -> block.has(prefix)).isPresent();
        facts.put("underscan", has.test("Underscans IT Video Formats by default"));
        facts.put("basic audio", has.test("Basic audio support"));
        facts.put("YCbCr 4:4:4", has.test("Supports YCbCr 4:4:4"));
        facts.put("YCbCr 4:2:2", has.test("Supports YCbCr 4:2:2"));
    }

    private Set<Integer> also(List<Printed> videos) {
        Set<Integer> also = new LinkedHashSet<>();
        dataBlocks("YCbCr 4:2:0 Capability Map")
                .flatMap(map -> map.children().stream())
                .forEach(line -> {
                    if (line.startsWith("All VDB SVDs")) {
                        also.addAll(byNumber(videos.stream()).keySet());
                    } else {
                        number(line).ifPresent(also::add);
                    }
                });
        return also;
    }

    /** Each number once, where it first stands. */
    private static Map<Integer, @Nullable PrintedTiming> byNumber(Stream<Printed> lines) {
        Map<Integer, @Nullable PrintedTiming> timings = new LinkedHashMap<>();
        lines.forEach(line -> number(line).ifPresent(vic -> {
            if (!timings.containsKey(vic)) {
                timings.put(vic, line.timing());
            }
        }));
        return timings;
    }

    private static Optional<Integer> number(Printed line) {
        Matcher number = NUMBER.matcher(line.text());
        return number.matches() ? Optional.of(Integer.valueOf(number.group(1))) : Optional.empty();
    }

    private void hdmi(Printed hdmi) {
        hdmi.value("Maximum TMDS clock")
                .ifPresent(clock -> facts.put("HDMI max TMDS clock", TheirFacts.megahertz(clock)));
        facts.put(
                "HDMI deep colour",
                Stream.of(30, 36, 48)
                        .filter(bits -> hdmi.has("DC_" + bits + "bit"))
                        .toList());
        facts.put("HDMI deep colour 4:4:4", hdmi.has("DC_Y444"));
        facts.put("HDMI dual link", hdmi.has("DVI_Dual"));
        latency(hdmi, "Video latency", "HDMI video latency");
        latency(hdmi, "Audio latency", "HDMI audio latency");
        latency(hdmi, "Interlaced video latency", "HDMI interlaced video latency");
        latency(hdmi, "Interlaced audio latency", "HDMI interlaced audio latency");
    }

    private void latency(Printed hdmi, String printed, String name) {
        hdmi.value(printed)
                .filter(written -> written.endsWith(" ms"))
                .ifPresent(written -> facts.put(name, Integer.parseInt(written.replace(" ms", ""))));
    }

    private void capability(Printed capability) {
        facts.put(
                "YCbCr range selectable",
                capability.value("YCbCr quantization").orElseThrow().startsWith("Selectable"));
        facts.put(
                "RGB range selectable",
                capability.value("RGB quantization").orElseThrow().startsWith("Selectable"));
        facts.put("scan of preferred timing", scan(capability, "PT scan behavior"));
        facts.put("scan of computer formats", scan(capability, "IT scan behavior"));
        facts.put("scan of video formats", scan(capability, "CE scan behavior"));
    }

    private static VideoCapability.Scan scan(Printed capability, String name) {
        return switch (capability.value(name).orElseThrow()) {
            case "Always Overscanned" -> VideoCapability.Scan.ALWAYS_OVERSCANNED;
            case "Always Underscanned" -> VideoCapability.Scan.ALWAYS_UNDERSCANNED;
            case "Supports both over- and underscan" -> VideoCapability.Scan.BOTH;
            default -> VideoCapability.Scan.NOT_STATED;
        };
    }

    private void forum(Printed forum) {
        forum.value("Version").ifPresent(version -> facts.put("HDMI Forum version", Integer.parseInt(version)));
        forum.value("Maximum TMDS Character Rate")
                .ifPresent(rate -> facts.put("HDMI Forum max TMDS rate", TheirFacts.megahertz(rate)));
    }
}
