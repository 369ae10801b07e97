package rasterfit.rule;

import static rasterfit.rule.Severity.REFUSAL;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Carried;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;

/** Whether a signal passes a cable, an adapter or a switch: format, sync, wiring. */
public final class LinkRules {
    private static final Questions CABLE = new Questions(
            new Rule(
                    "cable.format-not-carried",
                    Stage.CABLE,
                    REFUSAL,
                    "A cable carries only the formats that it is wired for; it never converts.",
                    "common practice"),
            new Rule(
                    "cable.sync-not-carried",
                    Stage.CABLE,
                    REFUSAL,
                    "A cable carries only the sync kinds that it is wired for.",
                    "common practice"),
            wiring("wiring.differs-at-the-cable", Stage.CABLE),
            "carried");
    private static final Questions ADAPTER = new Questions(
            new Rule(
                    "adapter.format-not-taken",
                    Stage.ADAPTER,
                    REFUSAL,
                    "An adapter takes only the formats that it converts or is wired for; a passive coupler converts nothing.",
                    "common practice"),
            new Rule(
                    "adapter.sync-not-taken",
                    Stage.ADAPTER,
                    REFUSAL,
                    "An adapter takes only the sync kinds and levels that it converts or is wired for.",
                    "common practice"),
            wiring("wiring.differs-at-the-adapter", Stage.ADAPTER),
            "taken");
    private static final Questions SWITCH = new Questions(
            new Rule(
                    "switch.format-not-passed",
                    Stage.SWITCH,
                    REFUSAL,
                    "A switch passes only the formats that it is made for.",
                    "common practice"),
            new Rule(
                    "switch.sync-not-passed",
                    Stage.SWITCH,
                    REFUSAL,
                    "A switch passes only the sync kinds that it is made for.",
                    "common practice"),
            wiring("wiring.differs-at-the-switch", Stage.SWITCH),
            "passed");

    static final List<Rule> ALL = Stream.of(CABLE, ADAPTER, SWITCH)
            .flatMap(at -> Stream.of(at.format(), at.sync(), at.wiring()))
            .toList();

    private LinkRules() {}

    /** The same three questions at each kind of link. */
    private record Questions(Rule format, Rule sync, Rule wiring, String verb) {}

    private static Rule wiring(String id, Stage stage) {
        return new Rule(
                id,
                stage,
                REFUSAL,
                "Two plugs of one kind may be wired differently; only the same wiring connects the same signals.",
                "EN 50049-1 for one family (from memory); common practice");
    }

    /** Empty if the signal comes out at the other end, as itself or converted. */
    public static Optional<Refusal> passes(Link link, Signal signal) {
        Questions at = questions(link.kind());
        Refusal refusal = null;
        if (signal.conversionIn(link).isEmpty()) {
            refusal = unchanged(at, link, signal);
        }
        Plug plug = signal.plug();
        if (plug != null && !link.from().isWiredLike(plug)) {
            Refusal wiring = refusal(
                    at.wiring(),
                    plug.wiring() + " at the plug, " + link.from().wiring() + " at " + link.name()
                            + "; one of the same wiring would fit.");
            refusal = Rules.first(refusal, wiring);
        }
        return Optional.ofNullable(refusal);
    }

    private static @Nullable Refusal unchanged(Questions at, Link link, Signal signal) {
        Optional<Carried> carried = link.carries().stream()
                .filter(one -> one.format() == signal.format())
                .findFirst();
        boolean isConverted = link.conversions().stream().anyMatch(one -> one.fromFormat() == signal.format());
        if (carried.isEmpty() && !isConverted) {
            return refusal(
                    at.format(),
                    signal.format() + " is not " + at.verb() + " by " + link.name() + "; one made for it would do.");
        }
        if (carried.isEmpty() || !carried.get().takes(signal.sync())) {
            return refusal(
                    at.sync(),
                    signal.sync() + " at " + signal.level() + " is not " + at.verb() + " by " + link.name() + " with "
                            + signal.format() + "; one made for it would do.");
        }
        return null;
    }

    private static Questions questions(Link.Kind kind) {
        return switch (kind) {
            case CABLE -> CABLE;
            case ADAPTER -> ADAPTER;
            case SWITCH -> SWITCH;
        };
    }

    private static Refusal refusal(Rule rule, String message) {
        return new Refusal(rule, null, null, null, message);
    }
}
