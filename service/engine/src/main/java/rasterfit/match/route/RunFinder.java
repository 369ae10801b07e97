package rasterfit.match.route;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Carried;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.rule.LinkRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.Signal;

/**
 * Lays cables, adapters and switches one behind the other between two devices. Each link has to make a difference: a signal
 * is never brought back to what it was before, and a lead that ends as it begins is only of use from device to device.
 * Behind a link that does not pass the signal nothing is added.
 */
final class RunFinder {
    /** Most links between two devices: a cable, a switch, an adapter and another cable (assumption). */
    static final int MOST_LINKS = 4;

    private final List<Link> links;

    RunFinder(Collection<Link> links) {
        this.links = List.copyOf(links);
    }

    /**
     * Every run that mates at both ends. Only where no single cable brings the signal there are equal connectors taken to be
     * joined by a plain lead.
     *
     * @param to absent where the input's connector is not known: it then takes any of its kind of signal
     */
    List<Run> find(Signal signal, @Nullable Plug to, List<Carried> accepts) {
        Plug from = signal.plug();
        if (from == null || to == null) {
            return isOfOneKind(signal, accepts) ? List.of(Run.plain(signal)) : List.of();
        }
        List<Run> found = new ArrayList<>();
        extend(Run.plain(signal), to, new HashSet<>(Set.of(signal)), found);
        if (found.stream().noneMatch(RunFinder::isOneCable) && from.mates(to)) {
            found.add(Run.plain(signal));
        }
        return found;
    }

    private static boolean isOneCable(Run run) {
        return run.links().size() == 1 && run.links().get(0).kind() == Link.Kind.CABLE && run.refusal() == null;
    }

    /** @param before every state of the signal from the device to the end of the run */
    private void extend(Run run, Plug to, Set<Signal> before, List<Run> found) {
        Plug end = run.arriving().plug();
        for (Link link : links) {
            if (end == null || !link.from().mates(end) || !canBeAdded(link, run)) {
                continue;
            }
            Signal after = run.arriving().through(link);
            Refusal refusal = LinkRules.passes(link, run.arriving()).orElse(null);
            Run longer = run.with(link, after, refusal);
            boolean isNew = before.add(after);
            // Behind a switch the signal is what it was in front of it.
            boolean isOfUse = isNew || link.kind() == Link.Kind.SWITCH;
            if (link.to().mates(to) && (isOfUse || refusal != null || isOnlyLead(link, run))) {
                found.add(longer);
            }
            if (isOfUse && refusal == null && longer.links().size() < MOST_LINKS) {
                extend(longer, to, before, found);
            }
            if (isNew) {
                before.remove(after);
            }
        }
    }

    private static boolean canBeAdded(Link link, Run run) {
        boolean isSecondSwitch = link.kind() == Link.Kind.SWITCH
                && run.links().stream().anyMatch(other -> other.kind() == Link.Kind.SWITCH);
        return !isSecondSwitch && !run.links().contains(link);
    }

    /** From socket to socket. */
    private static boolean isOnlyLead(Link link, Run run) {
        return run.isPlain() && link.kind() == Link.Kind.CABLE;
    }

    /** A plug that is not stated takes any connector of its kind of signal. */
    private static boolean isOfOneKind(Signal signal, List<Carried> accepts) {
        return accepts.stream()
                .anyMatch(carried ->
                        carried.format().isDigital() == signal.format().isDigital());
    }
}
