package rasterfit.edid.oracle;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rasterfit.quantity.Rational;

/** The display range limits as {@code edid-decode} prints them. */
final class TheirRangeFacts {
    /** Monitor ranges (GTF): 48-62 Hz V, 14-70 kHz H, max dotclock 160 MHz */
    private static final Pattern RANGES = Pattern.compile(
            "Monitor ranges \\((.*)\\): (\\d+)-(\\d+) Hz V, (\\d+)-(\\d+) kHz H(?:, max dotclock (\\d+) MHz)?");

    private TheirRangeFacts() {}

    static void put(Facts facts, Printed limits) {
        Matcher ranges = limits.under("Monitor ranges")
                .map(line -> RANGES.matcher(line.text()))
                .filter(Matcher::matches)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no ranges in " + limits));
        facts.put("range least field rate", Rational.parse(ranges.group(2)));
        facts.put("range greatest field rate", Rational.parse(ranges.group(3)));
        facts.put("range least line rate", Rational.parse(ranges.group(4)).times(1000));
        facts.put("range greatest line rate", Rational.parse(ranges.group(5)).times(1000));
        limits.value("Real max dotclock")
                .map(TheirFacts::megahertz)
                .or(() -> java.util.Optional.ofNullable(ranges.group(6)).map(TheirFacts::megahertz))
                .ifPresent(clock -> facts.put("range greatest clock", clock));
        facts.put("range formula", formula(ranges.group(1)));
        limits.value("CVT version").ifPresent(version -> {
            facts.put("range CVT version", version);
            limits.value("Max active pixels per line")
                    .ifPresent(pixels -> facts.put("range CVT most pixels", Integer.parseInt(pixels)));
            facts.put("range CVT standard blanking", limits.has("Supports CVT standard blanking"));
            facts.put("range CVT reduced blanking", limits.has("Supports CVT reduced blanking"));
            limits.value("Preferred vertical refresh")
                    .ifPresent(rate -> facts.put("range CVT preferred rate", Integer.parseInt(rate.replace(" Hz", ""))));
        });
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
