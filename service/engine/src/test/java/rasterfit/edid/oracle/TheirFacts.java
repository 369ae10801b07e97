package rasterfit.edid.oracle;

import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rasterfit.quantity.Rational;
import rasterfit.timing.PrintedTiming;

/** What {@code edid-decode} prints for an EDID ({@code -s -L -p -n}), as {@link Facts}. */
final class TheirFacts {
    /** Unknown :  1280x1280   70.000 Hz   1:1 */
    private static final Pattern WITHOUT_RASTER = Pattern.compile("Unknown :\\s+(\\d+)x(\\d+)\\s+\\d+\\.000 Hz.*");

    private final Facts facts = new Facts();
    private final List<Printed> lines;
    private final List<Printed> blocks;

    private TheirFacts(List<Printed> lines) {
        this.lines = lines;
        this.blocks = lines.stream()
                .filter(line -> line.text().matches("Block \\d+, .*:"))
                .toList();
    }

    static Facts of(List<String> printed) {
        TheirFacts theirs = new TheirFacts(Printed.read(printed));
        theirs.checksums();
        theirs.base(theirs.blocks.get(0));
        theirs.timings();
        theirs.displayId();
        new TheirCtaFacts(theirs.facts, theirs.extensions(", CTA-861")).put();
        return theirs.facts;
    }

    private void checksums() {
        int block = -1;
        for (Printed line : lines) {
            if (blocks.contains(line)) {
                block++;
            } else if (line.startsWith("Checksum: ")) {
                facts.put("checksum of block " + block, !line.text().contains("should be"));
            }
        }
    }

    private void base(Printed base) {
        facts.put("version", base.value("EDID Structure Version & Revision").orElseThrow());
        Printed product = base.under("Vendor & Product").findFirst().orElseThrow();
        facts.put("manufacturer", product.value("Manufacturer").orElseThrow());
        facts.put("product code", Integer.parseInt(product.value("Model:").orElseThrow()));
        made(product);
        Printed features = base.under("Basic Display").findFirst().orElseThrow();
        facts.put("analog", features.has("Analog display"));
        facts.put("continuous frequency", features.has("Display is continuous frequency"));
        facts.put("default GTF", features.has("Supports GTF timings within operating range"));
        TheirRangeFacts.put(
                facts,
                descriptors()
                        .filter(line -> line.startsWith("Display Range Limits:"))
                        .toList());
    }

    /** "Made in: week 9 of 2009", "Made in: 2009", "Model year: 2009". */
    private void made(Printed product) {
        Optional<String> modelYear = product.value("Model year");
        Optional<String> made = product.value("Made in");
        facts.put("model year", modelYear.isPresent());
        modelYear.ifPresent(year -> facts.put("year", Integer.parseInt(year)));
        made.ifPresent(written -> {
            String[] words = written.split(" ", -1);
            facts.put("year", Integer.parseInt(words[words.length - 1]));
            if (words.length == 4) {
                facts.put("week", Integer.parseInt(words[1]));
            }
        });
    }

    private void timings() {
        List<PrintedTiming> detailed = detailed();
        putCount("detailed timings of one value", detailed.stream().filter(TheirFacts::isFiller));
        putCount(
                "impossible detailed timings",
                detailed.stream().filter(timing -> isImpossible(timing) && !isFiller(timing)));
        facts.put("preferred", preferred());
        facts.put("native sizes", nativeSizes());
        inSequence(
                "detailed",
                detailed.stream()
                        .filter(timing -> !isImpossible(timing) && !isFiller(timing))
                        .toList());
        standard();
        inSequence(
                "established",
                Stream.concat(
                                blocks.get(0).under("Established Timings"),
                                descriptors().filter(line -> line.startsWith("Established timings III")))
                        .flatMap(Printed::timings)
                        .toList());
        cvtCodes(Stream.concat(
                        descriptors().filter(line -> line.startsWith("CVT 3 Byte")),
                        extensions(", Video Timing Extension")
                                .flatMap(block -> block.under("Coordinated Video Timings")))
                .flatMap(Printed::timings)
                .toList());
    }

    private void cvtCodes(List<PrintedTiming> codes) {
        List<PrintedTiming> wide =
                codes.stream().filter(code -> code.horizontalActive() > 0).toList();
        facts.put("CVT code timings", wide.size());
        for (int i = 0; i < wide.size(); i++) {
            putFormula("CVT code " + (i + 1), wide.get(i));
        }
        putCount("CVT codes of no pixels", codes.stream().filter(code -> code.horizontalActive() == 0));
    }

    /** It prints negative porches, or nothing at all, where a formula leaves no room for them. */
    private void putFormula(String name, PrintedTiming timing) {
        if (timing.hasNoRoom()) {
            facts.put(name + " size", List.of(timing.horizontalActive(), timing.verticalActive()));
        } else {
            facts.putTheirs(name, timing);
        }
    }

    private void putCount(String name, Stream<PrintedTiming> timings) {
        int count = (int) timings.count();
        if (count > 0) {
            facts.put(name, count);
        }
    }

    /** What no raster can be; it prints the numbers as they stand. */
    private static boolean isImpossible(PrintedTiming timing) {
        return timing.hasNoRoom()
                || timing.verticalSync() == 0
                || timing.horizontalActive() == 0
                || timing.verticalActive() == 0;
    }

    /** FFh in all bytes, which add up to a timing; other values do not. */
    private static boolean isFiller(PrintedTiming timing) {
        return timing.pixelClockHz().equals(Rational.of(655_350_000))
                && timing.horizontalActive() == 4095
                && timing.horizontalFrontPorch() == 1023
                && timing.horizontalBorder() == 255;
    }

    /** Those of the base block, then those of the extensions. */
    private List<PrintedTiming> detailed() {
        return Stream.concat(
                        descriptors(),
                        extensions(", CTA-861", ", Video Timing Extension")
                                .flatMap(block -> block.under("Detailed Timing Descriptors"))
                                .flatMap(section -> section.children().stream()))
                .flatMap(line -> Stream.ofNullable(line.timing()))
                .filter(timing -> timing.name().startsWith("DTD"))
                .toList();
    }

    /** A size and rate without a raster of its own has two, of which EDID 1.4 means the first; in early ones it has none. */
    private void standard() {
        Stream<Printed> base = Stream.concat(
                blocks.get(0).under("Standard Timings"),
                descriptors().filter(line -> line.startsWith("Standard Timing Identifications")));
        standard("standard", base);
        standard(
                "further standard",
                extensions(", Video Timing Extension").flatMap(block -> block.under("Standard Timings")));
    }

    private void standard(String name, Stream<Printed> sections) {
        List<Printed> listed = sections.flatMap(section -> section.children().stream())
                .filter(line -> !line.text().contains("EDID 1.3 source"))
                .filter(line -> line.timing() != null
                        || WITHOUT_RASTER.matcher(line.text()).matches())
                .toList();
        List<Printed> others = listed.stream().filter(line -> !isOfSpaces(line)).toList();
        facts.put(name + " timings", others.size());
        for (int i = 0; i < others.size(); i++) {
            PrintedTiming timing = others.get(i).timing();
            if (timing != null) {
                putFormula(name + " " + (i + 1), timing);
            } else {
                facts.put(name + " " + (i + 1) + " size", size(others.get(i)));
            }
        }
        if (others.size() < listed.size()) {
            facts.put(name + " timings of spaces", listed.size() - others.size());
        }
    }

    private static List<Integer> size(Printed withoutRaster) {
        Matcher size = WITHOUT_RASTER.matcher(withoutRaster.text());
        if (!size.matches()) {
            throw new IllegalArgumentException("no size in " + withoutRaster);
        }
        return List.of(Integer.parseInt(size.group(1)), Integer.parseInt(size.group(2)));
    }

    /** 20 20, which is 504 pixels at 92 Hz if it is anything. */
    private static boolean isOfSpaces(Printed line) {
        PrintedTiming timing = line.timing();
        if (timing == null) {
            return line.text().matches("Unknown :\\s+504x504\\s+92\\.000 Hz.*");
        }
        boolean isRate = timing.fieldRateHz().minus(Rational.of(92)).abs().isLessThan(Rational.of(3, 2));
        return timing.horizontalActive() == 504
                && (timing.verticalActive() == 315 || timing.verticalActive() == 504)
                && isRate;
    }

    /** Of its own extensions and of blocks inside CTA-861, in order. */
    private void displayId() {
        List<PrintedTiming> timings = extensions(", DisplayID", ", CTA-861")
                .flatMap(block -> block.children().stream()
                        .filter(section ->
                                block.text().contains(", DisplayID") || section.startsWith("DisplayID Type")))
                .flatMap(Printed::timings)
                .toList();
        inSequence("DisplayID", timings);
        for (int i = 0; i < timings.size(); i++) {
            String name = "DisplayID " + (i + 1);
            facts.put(name + " preferred", timings.get(i).remark().contains("preferred"));
            facts.put(name + " in 4:2:0", timings.get(i).remark().contains("YCbCr 4:2:0"));
        }
    }

    private Stream<Printed> descriptors() {
        return blocks.get(0).under("Detailed Timing Descriptors").flatMap(section -> section.children().stream());
    }

    private Stream<Printed> extensions(String... titles) {
        return blocks.stream().filter(block -> Stream.of(titles).anyMatch(block.text()::contains));
    }

    private void inSequence(String name, List<PrintedTiming> timings) {
        facts.put(name + " timings", timings.size());
        for (int i = 0; i < timings.size(); i++) {
            facts.putTheirs(name + " " + (i + 1), timings.get(i));
        }
    }

    /** The detailed ones among those that the base block alone prefers. */
    private List<String> preferred() {
        return lines.stream()
                .filter(line -> line.text().matches("Preferred Video Timings? if only Block 0 is parsed:"))
                .flatMap(Printed::timings)
                .filter(timing -> timing.name().startsWith("DTD"))
                .map(timing -> "detailed:" + timing.name().substring(3).trim())
                .toList();
    }

    /** By the base block alone and by those with CTA-861. */
    private SortedSet<String> nativeSizes() {
        return lines.stream()
                .filter(line -> line.startsWith("Native Video Resolution")
                        && !line.text().contains("DisplayID"))
                .flatMap(section -> section.children().stream())
                .map(Printed::text)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    static Rational megahertz(String written) {
        return Rational.parse(written.replace(" MHz", "")).times(1_000_000);
    }
}
