package rasterfit.rule;

import static rasterfit.rule.Severity.REFUSAL;

import java.util.List;
import java.util.Optional;
import rasterfit.gear.Format;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** What a converter's own limits forbid: sampling, memory, crop, rate lock, formats. */
public final class ProcessingRules {
    private static final Rule FORMAT = rule(
            "convert.format-not-produced",
            "The processing must be able to make the output's format from the input's: analog lines need a digitiser,"
                    + " and line repetition and scaling work on samples.");
    private static final Rule SAMPLE_RATE = rule(
            "digitise.sample-rate-exceeds-converter",
            "Samples per line times line rate must not exceed the digitiser's greatest sample rate.");
    private static final Rule REPEAT_SAMPLES =
            rule("repeat.samples-per-line-outside-limits", "Line repetition carries only so many samples per line.");
    private static final Rule REPEAT_CLASS =
            rule("repeat.no-line-count-for-input", "Line repetition must list a line count for the input's class.");
    private static final Rule REPEAT_INTERLACED =
            rule("repeat.interlaced-refused", "Line repetition must be able to show interlaced fields.");
    private static final Rule CROP_LINES =
            rule("scale.lines-cropped-exceed-limit", "A scaler can cut off only so many lines.");
    private static final Rule CROP_DOTS =
            rule("scale.dots-cropped-exceed-limit", "A scaler can cut off only so many dots.");
    private static final Rule MEMORY = rule(
            "buffer.lines-exceed-memory",
            "The lines that must be held until they are shown must fit into the converter's memory.");
    private static final Rule PULL =
            rule("lock.pull-exceeds-range", "A locked output can be pulled only so far from its nominal field rate.");
    private static final Rule VARIABLE_REFRESH = rule(
            "lock.variable-refresh-not-known-at-display",
            "A varying field rate helps only at a display input that is known to follow it.");
    private static final Rule DEINTERLACER =
            rule("deinterlace.none-offered", "An interlaced source on a progressive output needs a deinterlacer.");
    private static final Rule INTERLACED_OUTPUT = rule(
            "scale.interlaced-output-not-computed", "Interlaced output of a scaler is not computed by this version.");

    static final List<Rule> ALL = List.of(
            FORMAT,
            SAMPLE_RATE,
            REPEAT_SAMPLES,
            REPEAT_CLASS,
            REPEAT_INTERLACED,
            CROP_LINES,
            CROP_DOTS,
            MEMORY,
            PULL,
            VARIABLE_REFRESH,
            DEINTERLACER,
            INTERLACED_OUTPUT);

    private ProcessingRules() {}

    private static Rule rule(String id, String statement) {
        return new Rule(id, Stage.CONVERTER, REFUSAL, statement, "declared facts");
    }

    public static Refusal formatNotProduced(Format from, Format to, String processing) {
        return plain(
                FORMAT,
                from + " to " + to + " is not something that " + processing
                        + " can do; another processing or output may.");
    }

    public static Optional<Refusal> sampleRate(Frequency rate, Frequency greatest) {
        return atMost(SAMPLE_RATE, rate.hz(), greatest.hz(), "Hz", "of samples", "fewer samples per line would help");
    }

    public static Refusal samplesPerLine(int samples, int nearestAllowed) {
        return new Refusal(
                REPEAT_SAMPLES,
                Rational.of(samples),
                Rational.of(nearestAllowed),
                "samples",
                samples + " samples per line against " + nearestAllowed
                        + "; a sample count inside of the limits would help.");
    }

    public static Refusal noLineCount(int lines) {
        return plain(
                REPEAT_CLASS,
                lines + " lines per field of this standard are not in the converter's list; another processing or"
                        + " converter may take them.");
    }

    public static Refusal interlacedNotRepeated() {
        return plain(
                REPEAT_INTERLACED,
                "Interlaced fields are refused by this processing; a deinterlacing scaler would help.");
    }

    public static Optional<Refusal> croppedLines(int cropped, int greatest) {
        return atMost(
                CROP_LINES,
                Rational.of(cropped),
                Rational.of(greatest),
                "lines",
                "cut off",
                "a smaller factor would help");
    }

    public static Optional<Refusal> croppedDots(Rational cropped, int greatest) {
        return atMost(CROP_DOTS, cropped, Rational.of(greatest), "dots", "cut off", "a smaller width would help");
    }

    public static Optional<Refusal> memory(int needed, int present) {
        return atMost(
                MEMORY,
                Rational.of(needed),
                Rational.of(present),
                "lines",
                "to hold",
                "less crop, another output timing or a free-running output would help");
    }

    /** Both in ppm; the pull counts either way. */
    public static Optional<Refusal> pull(Rational ppm, Rational greatestPpm) {
        return atMost(
                PULL,
                ppm.abs(),
                greatestPpm,
                "ppm",
                "away from the nominal field rate",
                "an output timing of a nearer nominal rate or a free-running output would help");
    }

    public static Refusal variableRefreshUnknown() {
        return plain(
                VARIABLE_REFRESH,
                "Variable refresh is not known of this display input; a locked or free-running output would help.");
    }

    public static Refusal noDeinterlacer() {
        return plain(DEINTERLACER, "No deinterlacer is listed for this processing; another converter may have one.");
    }

    public static Refusal interlacedOutput(String timing) {
        return plain(
                INTERLACED_OUTPUT,
                timing + " is interlaced, which this version does not compute as an output; a progressive timing would"
                        + " do.");
    }

    private static Optional<Refusal> atMost(
            Rule rule, Rational value, Rational limit, String unit, String what, String help) {
        if (!value.isGreaterThan(limit)) {
            return Optional.empty();
        }
        return Optional.of(new Refusal(
                rule,
                value,
                limit,
                unit,
                number(value) + " " + unit + " " + what + " against " + number(limit) + " " + unit + "; " + help
                        + "."));
    }

    private static String number(Rational value) {
        return value.toSixDigits().toPlainString();
    }

    private static Refusal plain(Rule rule, String message) {
        return new Refusal(rule, null, null, null, message);
    }
}
