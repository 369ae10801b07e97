package rasterfit.edid.oracle;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import rasterfit.quantity.Rational;

/** The display range limits as {@code edid-decode} prints them. */
final class TheirRangeFacts {
    /** Monitor ranges (GTF): 48-62 Hz V, 14-70 kHz H, max dotclock 160 MHz */
    private static final Pattern RANGES = Pattern.compile(
            "Monitor ranges \\((.*)\\): (\\d+)-(\\d+) Hz V, (\\d+)-(\\d+) kHz H(?:, max dotclock (\\d+) MHz)?");

    private TheirRangeFacts() {}

    /** Of more than one descriptor the first with a rate between its limits counts. */
    static void put(Facts facts, List<Printed> descriptors) {
        descriptors.stream()
                .filter(limits -> isPossible(ranges(limits)))
                .findFirst()
                .or(() -> descriptors.stream().findFirst())
                .ifPresent(limits -> put(facts, limits));
    }

    private static Matcher ranges(Printed limits) {
        return limits.under("Monitor ranges")
                .map(line -> RANGES.matcher(line.text()))
                .filter(Matcher::matches)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no ranges in " + limits));
    }

    private static boolean isPossible(Matcher ranges) {
        int[] limits = IntStream.rangeClosed(2, 5)
                .map(group -> Integer.parseInt(ranges.group(group)))
                .toArray();
        return limits[0] <= limits[1] && limits[2] <= limits[3] && limits[1] > 0 && limits[3] > 0;
    }

    private static void put(Facts facts, Printed limits) {
        Matcher ranges = ranges(limits);
        facts.put("range limits possible", isPossible(ranges));
        facts.put("range least field rate", Rational.parse(ranges.group(2)));
        facts.put("range greatest field rate", Rational.parse(ranges.group(3)));
        facts.put("range least line rate", Rational.parse(ranges.group(4)).times(1000));
        facts.put("range greatest line rate", Rational.parse(ranges.group(5)).times(1000));
        limits.value("Real max dotclock")
                .map(TheirFacts::megahertz)
                .or(() -> Optional.ofNullable(ranges.group(6)).map(TheirFacts::megahertz))
                .ifPresent(clock -> facts.put("range greatest clock", clock));
        facts.put("range formula", formula(ranges.group(1)));
        limits.under("GTF Secondary Curve").findFirst().ifPresent(curve -> {
            facts.put(
                    "range GTF start", number(curve, "Start frequency", " kHz").times(1000));
            facts.put("range GTF C", number(curve, "C:", "%"));
            facts.put("range GTF M", number(curve, "M:", "%/kHz"));
            facts.put("range GTF K", number(curve, "K:", ""));
            facts.put("range GTF J", number(curve, "J:", "%"));
        });
        limits.value("CVT version").ifPresent(version -> {
            facts.put("range CVT version", version);
            limits.value("Max active pixels per line")
                    .ifPresent(pixels -> facts.put("range CVT most pixels", Integer.parseInt(pixels)));
            facts.put(
                    "range CVT aspects",
                    Arrays.stream(limits.value("Supported aspect ratios")
                                    .orElseThrow()
                                    .split(" ", -1))
                            .filter(written -> !written.isEmpty())
                            .map(TheirRangeFacts::aspect)
                            .toList());
            limits.value("Preferred aspect ratio")
                    .filter(written -> written.contains(":"))
                    .ifPresent(written -> facts.put("range CVT preferred aspect", aspect(written)));
            facts.put("range CVT standard blanking", limits.has("Supports CVT standard blanking"));
            facts.put("range CVT reduced blanking", limits.has("Supports CVT reduced blanking"));
            limits.value("Preferred vertical refresh")
                    .ifPresent(
                            rate -> facts.put("range CVT preferred rate", Integer.parseInt(rate.replace(" Hz", ""))));
        });
    }

    private static Rational number(Printed curve, String name, String unit) {
        return Rational.parse(curve.value(name).orElseThrow().replace(unit, ""));
    }

    private static Rational aspect(String written) {
        return Rational.parse(written.replace(':', '/'));
    }

    private static String formula(String printed) {
        return switch (printed) {
            case "GTF" -> "DEFAULT_GTF";
            case "Bare Limits" -> "NONE";
            case "Secondary GTF" -> "SECONDARY_GTF";
            case "CVT" -> "CVT";
            default -> "UNKNOWN";
        };
    }
}
