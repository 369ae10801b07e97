package rasterfit.rule;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/** The limits of a request, one rule for each measure that can be limited. */
public final class LimitRules {
    private static final List<String> MEASURES = List.of(
            "acceptance",
            "addedLatencyFields",
            "addedLatencyMs",
            "aspectErrorPercent",
            "bufferedLines",
            "coverageHeightPercent",
            "coveragePercent",
            "croppedDots",
            "croppedLines",
            "croppedUsedDots",
            "croppedUsedLines",
            "croppedUsedLinesPercent",
            "displayLagMs",
            "dotWidthRatio",
            "dropOrRepeatEverySeconds",
            "horizontalScale",
            "lineHeightRatio",
            "price",
            "samplesPerDot",
            "totalLatencyMs",
            "verticalScale");

    static final List<Rule> ALL = rules();

    private LimitRules() {}

    private static List<Rule> rules() {
        List<Rule> rules = new ArrayList<>();
        for (String measure : MEASURES) {
            rules.add(new Rule(
                    "limit." + measure,
                    Stage.SETUP,
                    Severity.REFUSAL,
                    "Every mode must keep the limit of the request on " + measure + ".",
                    "the request"));
        }
        return List.copyOf(rules);
    }

    /** @throws IllegalArgumentException if no limit can be put on the measure */
    public static Rule of(String measure) {
        return ALL.stream()
                .filter(rule -> rule.id().equals("limit." + measure))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no limit on " + measure));
    }

    /** @param value absent where it is unknown */
    public static Refusal refusal(
            String measure, @Nullable Rational value, Rational limit, boolean atMost, String unit) {
        // Where both look the same when rounded, only the exact numbers tell them apart.
        boolean alike = value != null && value.toSixDigits().compareTo(limit.toSixDigits()) == 0;
        String actual = value == null ? "unknown" : number(value, alike) + " " + unit;
        return new Refusal(
                of(measure), value, limit, unit, worded(measure, actual.trim(), atMost, number(limit, alike)));
    }

    /** For measures that are compared by name: grades of acceptance, prices in words. */
    public static Refusal inWords(String measure, String value, boolean atMost, String limit) {
        return new Refusal(of(measure), null, null, null, worded(measure, value, atMost, limit));
    }

    private static String worded(String measure, String value, boolean atMost, String limit) {
        return value + " of " + measure + " against " + (atMost ? "at most " : "at least ") + limit
                + "; a looser limit or other equipment would help.";
    }

    private static String number(Rational value, boolean exactly) {
        return exactly ? value.toString() : value.toSixDigits().toPlainString();
    }
}
