package rasterfit.rule;

import static rasterfit.rule.Severity.REFUSAL;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Carried;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Plug;

/** Whether a signal and the next part of the chain fit: format, sync, level, wiring. */
public final class SignalRules {
    private static final Perspective CONVERTER = new Perspective(
            new Rule(
                    "input.format-not-accepted",
                    Stage.CONVERTER,
                    REFUSAL,
                    "A converter input takes only the formats that it lists.",
                    "declared facts"),
            new Rule(
                    "sync.kind-not-accepted",
                    Stage.CONVERTER,
                    REFUSAL,
                    "A converter input takes only the sync kinds that it lists.",
                    "declared facts"),
            new Rule(
                    "sync.logic-level-into-75-ohm",
                    Stage.CONVERTER,
                    REFUSAL,
                    "Sync at logic level must not go into an input made for 0.3 V of sync into 75 ohm: it can harm it.",
                    "E-EDID A2 table 3.11; common practice"),
            new Rule(
                    "wiring.differs-at-the-input",
                    Stage.CONVERTER,
                    REFUSAL,
                    "Two plugs of one kind may be wired differently; only the same wiring connects the same signals.",
                    "common practice"),
            new Rule(
                    "input.encoding-not-decoded",
                    Stage.CONVERTER,
                    REFUSAL,
                    "A decoder that does not know the colour encoding shows the picture without colour, or nothing.",
                    "BT.1700; common practice"));
    private static final Perspective DISPLAY = new Perspective(
            new Rule(
                    "display.format-not-accepted",
                    Stage.DISPLAY_INPUT,
                    REFUSAL,
                    "A display input takes only the formats that it lists.",
                    "declared facts"),
            new Rule(
                    "display.sync-kind-not-accepted",
                    Stage.DISPLAY_INPUT,
                    REFUSAL,
                    "A display input takes only the sync kinds that it lists.",
                    "declared facts"),
            new Rule(
                    "display.logic-level-into-75-ohm",
                    Stage.DISPLAY_INPUT,
                    REFUSAL,
                    "Sync at logic level must not go into an input made for 0.3 V of sync into 75 ohm: it can harm it.",
                    "E-EDID A2 table 3.11; common practice"),
            new Rule(
                    "display.wiring-differs",
                    Stage.DISPLAY_INPUT,
                    REFUSAL,
                    "Two plugs of one kind may be wired differently; only the same wiring connects the same signals.",
                    "common practice"),
            new Rule(
                    "display.encoding-not-decoded",
                    Stage.DISPLAY_INPUT,
                    REFUSAL,
                    "A decoder that does not know the colour encoding shows the picture without colour, or nothing.",
                    "BT.1700; common practice"));

    private static final Rule NOTHING_MATES = new Rule(
            "chain.nothing-mates",
            Stage.SOURCE_OUTPUT,
            REFUSAL,
            "A chain needs connectors that mate from the console to the display.",
            "common practice");

    static final List<Rule> ALL = List.of(
            NOTHING_MATES,
            CONVERTER.format(),
            CONVERTER.sync(),
            CONVERTER.level(),
            CONVERTER.wiring(),
            CONVERTER.encoding(),
            DISPLAY.format(),
            DISPLAY.sync(),
            DISPLAY.level(),
            DISPLAY.wiring(),
            DISPLAY.encoding());

    private SignalRules() {}

    /** The same five questions at a converter's and at a display's input. */
    private record Perspective(Rule format, Rule sync, Rule level, Rule wiring, Rule encoding) {}

    /** For a request without a single chain. */
    public static Refusal nothingMates(String outputs, String inputs) {
        return new Refusal(
                NOTHING_MATES,
                null,
                null,
                null,
                "No chain mates from " + outputs + " to " + inputs
                        + "; a cable or converter with these connectors would help.");
    }

    public static Optional<Refusal> converterTakes(
            Signal signal, String input, @Nullable Plug plug, Level level, List<Carried> accepts) {
        return takes(CONVERTER, signal, input, plug, level, accepts);
    }

    public static Optional<Refusal> displayTakes(
            Signal signal, String input, @Nullable Plug plug, Level level, List<Carried> accepts) {
        return takes(DISPLAY, signal, input, plug, level, accepts);
    }

    private static Optional<Refusal> takes(
            Perspective at, Signal signal, String input, @Nullable Plug plug, Level level, List<Carried> accepts) {
        Refusal refusal = null;
        Optional<Carried> accepted = find(accepts, signal.format());
        if (accepted.isEmpty()) {
            refusal = refusal(
                    at.format(),
                    signal.format() + " is not taken by input " + input
                            + "; another input or a converter that gives one of its formats would do.");
        } else if (!accepted.get().takes(signal.sync())) {
            refusal = refusal(
                    at.sync(),
                    signal.sync() + " is not taken by input " + input + " with " + signal.format()
                            + "; an adapter that gives one of "
                            + accepted.get().syncs().stream().sorted().toList()
                            + " would help.");
        }
        if (accepted.isPresent() && !accepted.get().decodes(signal.encoding())) {
            Refusal colour = refusal(
                    at.encoding(),
                    signal.encoding() + " is not decoded by input " + input
                            + ", which would show it without colour at best; an output without a colour encoding, such as RGB or"
                            + " YPbPr, would do.");
            refusal = Rules.first(refusal, colour);
        }
        if (signal.level().isLogic()
                && level == Level.VIDEO_75_OHM
                && !signal.format().isDigital()) {
            Refusal harm = refusal(
                    at.level(),
                    signal.level() + " sync meets the 75 ohm input " + input
                            + " and can harm it; an attenuating adapter to 0.3 V of sync is needed. Do not try without.");
            refusal = Rules.first(refusal, harm);
        }
        if (signal.plug() != null && plug != null && !plug.isWiredLike(signal.plug())) {
            Refusal wiring = refusal(
                    at.wiring(),
                    signal.plug().wiring() + " meets " + plug.wiring() + " at input " + input
                            + "; a cable of the input's wiring would fit.");
            refusal = Rules.first(refusal, wiring);
        }
        return Optional.ofNullable(refusal);
    }

    private static Optional<Carried> find(List<Carried> list, Format format) {
        return list.stream().filter(carried -> carried.format() == format).findFirst();
    }

    private static Refusal refusal(Rule rule, String message) {
        return new Refusal(rule, null, null, null, message);
    }
}
