package rasterfit.remedy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rasterfit.match.Chain;
import rasterfit.match.Chain.Unit;
import rasterfit.remedy.Change.Kind;

/** In what one part two chains differ. */
final class Swap {
    private Swap() {}

    /**
     * Empty if they are equal, or differ in more than one part.
     *
     * @param added whether the request has to gain what is new in the second
     */
    static Optional<Change> between(Chain from, Chain to, boolean added) {
        boolean output = from.output().equals(to.output());
        boolean converters = from.converters().equals(to.converters());
        boolean input = from.input().equals(to.input());
        if (converters && input && !output) {
            return Optional.of(Change.of(
                    Kind.OTHER_OUTPUT,
                    to.output(),
                    from.output(),
                    added,
                    "Use the console's output " + to.output() + " in place of " + from.output() + "."));
        }
        if (output && converters && !input) {
            return Optional.of(input(from.input(), to.input(), added));
        }
        return output && input && !converters
                ? converters(from.converters(), to.converters(), added)
                : Optional.empty();
    }

    private static Change input(Chain.Input from, Chain.Input to, boolean added) {
        return from.id().equals(to.id())
                ? Change.of(
                        Kind.OTHER_MENU_STATE,
                        to.path(),
                        from.path(),
                        added,
                        "Set the display's input " + to.id() + " to " + to.state() + " in place of " + from.state()
                                + ".")
                : Change.of(
                        Kind.OTHER_DISPLAY_INPUT,
                        to.path(),
                        from.path(),
                        added,
                        "Use the display's input " + to.path() + " in place of " + from.path() + ".");
    }

    private static Optional<Change> converters(List<Unit> from, List<Unit> to, boolean added) {
        if (from.size() == to.size()) {
            return replaced(from, to, added);
        }
        for (int at = 0; at < Math.max(from.size(), to.size()); at++) {
            if (to.size() == from.size() + 1 && without(to, at).equals(from)) {
                Unit unit = to.get(at);
                return Optional.of(Change.of(
                        Kind.ADDED_CONVERTER,
                        unit.id(),
                        null,
                        added,
                        (added ? "Add the converter " : "Put the converter ")
                                + unit.name()
                                + (added ? "." : " in between.")));
            }
            if (from.size() == to.size() + 1 && without(from, at).equals(to)) {
                Unit unit = from.get(at);
                return Optional.of(Change.of(
                        Kind.WITHOUT_CONVERTER,
                        unit.id(),
                        null,
                        added,
                        "Leave the converter " + unit.name() + " out."));
            }
        }
        return Optional.empty();
    }

    private static List<Unit> without(List<Unit> units, int at) {
        List<Unit> rest = new ArrayList<>(units);
        rest.remove(at);
        return rest;
    }

    private static Optional<Change> replaced(List<Unit> from, List<Unit> to, boolean added) {
        Change change = null;
        for (int at = 0; at < from.size(); at++) {
            if (!from.get(at).equals(to.get(at))) {
                if (change != null) {
                    return Optional.empty();
                }
                change = replaced(from.get(at), to.get(at), added);
            }
        }
        return Optional.ofNullable(change);
    }

    private static Change replaced(Unit from, Unit to, boolean added) {
        return from.id().equals(to.id())
                ? Change.of(
                        Kind.OTHER_CONVERTER_PORTS,
                        to.id() + ":" + to.ports(),
                        from.id() + ":" + from.ports(),
                        added,
                        "Use the converter " + to.name() + " by " + to.ports() + " in place of " + from.ports() + ".")
                : Change.of(
                        Kind.OTHER_CONVERTER,
                        to.id(),
                        from.id(),
                        added,
                        (added ? "Add" : "Use") + " the converter " + to.name() + " in place of " + from.name() + ".");
    }
}
