package rasterfit.rule;

import static rasterfit.rule.Severity.REFUSAL;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Mode;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Scan;

/** Whether an input can follow a raster: rates, scan, half-height fields. */
public final class InputRules {
    private static final Perspective CONVERTER = new Perspective(
            rule("input.line-rate-outside-range", Stage.CONVERTER, "The line rate must lie in the input's range."),
            rule("input.field-rate-outside-range", Stage.CONVERTER, "The field rate must lie in the input's range."),
            rule("input.scan-not-accepted", Stage.CONVERTER, "The input must take the raster's scan."),
            rule(
                    "input.half-height-not-shown",
                    Stage.CONVERTER,
                    "Fields that are all alike, of about 240 or 288 lines, must be known to the input."));
    private static final Perspective DISPLAY = new Perspective(
            rule(
                    "display.line-rate-outside-range",
                    Stage.DISPLAY_INPUT,
                    "A line rate outside of what a tube or an analog input takes is not tried."),
            rule(
                    "display.field-rate-outside-range",
                    Stage.DISPLAY_INPUT,
                    "A field rate outside of what a tube or an analog input takes is not tried."),
            rule("display.scan-not-accepted", Stage.DISPLAY_INPUT, "The input must take the raster's scan."),
            rule(
                    "display.half-height-not-shown",
                    Stage.DISPLAY_INPUT,
                    "Fields that are all alike, of about 240 or 288 lines, must be known to the input."));

    static final List<Rule> ALL = List.of(
            CONVERTER.lineRate(),
            CONVERTER.fieldRate(),
            CONVERTER.scan(),
            CONVERTER.halfHeight(),
            DISPLAY.lineRate(),
            DISPLAY.fieldRate(),
            DISPLAY.scan(),
            DISPLAY.halfHeight());

    private InputRules() {}

    private record Perspective(Rule lineRate, Rule fieldRate, Rule scan, Rule halfHeight) {}

    private static Rule rule(String id, Stage stage, String statement) {
        return new Rule(id, stage, REFUSAL, statement, "declared facts");
    }

    /** What an input says of the rasters that it follows. */
    public record Abilities(
            @Nullable FrequencyRange lineRate,
            @Nullable FrequencyRange fieldRate,
            Set<Scan> scans,
            HalfHeight halfHeight) {}

    public static Optional<Refusal> converterFollows(Mode mode, Abilities input) {
        return follows(
                CONVERTER, mode.lineRate(), mode.fieldRate(), mode.scan(), mode.isHalfHeightProgressive(), input);
    }

    public static Optional<Refusal> displayFollows(
            Frequency lineRate, Frequency fieldRate, Scan scan, boolean halfHeight, Abilities input) {
        return follows(DISPLAY, lineRate, fieldRate, scan, halfHeight, input);
    }

    private static Optional<Refusal> follows(
            Perspective at, Frequency lineRate, Frequency fieldRate, Scan scan, boolean halfHeight, Abilities input) {
        Refusal refusal = Rules.first(
                inside(at.lineRate(), "line rate", lineRate, input.lineRate()),
                inside(at.fieldRate(), "field rate", fieldRate, input.fieldRate()));
        if (!input.scans().contains(scan)) {
            String message = scan + " is not taken by this input; another input may take it.";
            refusal = Rules.first(refusal, new Refusal(at.scan(), null, null, null, message));
        }
        if (halfHeight && (input.halfHeight() == HalfHeight.REFUSED || input.halfHeight() == HalfHeight.UNSTABLE)) {
            String message = "A half-height progressive raster is " + input.halfHeight()
                    + " at this input; an input that shows it, or a converter before it, would help.";
            refusal = Rules.first(refusal, new Refusal(at.halfHeight(), null, null, null, message));
        }
        return Optional.ofNullable(refusal);
    }

    private static @Nullable Refusal inside(Rule rule, String what, Frequency value, @Nullable FrequencyRange range) {
        if (range == null || range.contains(value)) {
            return null;
        }
        Frequency limit = range.nearestEnd(value);
        return new Refusal(
                rule,
                value.hz(),
                limit.hz(),
                "Hz",
                value.hz().toSixDigits().toPlainString() + " Hz " + what + " against "
                        + limit.hz().toSixDigits().toPlainString()
                        + " Hz; an input with a wider range, or a converter before it, would help.");
    }
}
