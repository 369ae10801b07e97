package rasterfit.match.route;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Carried;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.match.MatchRequest;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;
import rasterfit.rule.SignalRules;
import rasterfit.rule.SignalRules.Signal;

/**
 * Lays every chain whose connectors mate: output → [cable] → [converter → [cable]] → display input. A chain that a
 * signal rule forbids is kept with its refusal.
 *
 * <p>Adapters, switches and second converters will
 * join here.
 */
public final class RouteFinder {
    private RouteFinder() {}

    /** Routes in the order of their keys. */
    public static List<Route> find(MatchRequest request, Collection<Converter> converters, Collection<Link> links) {
        List<Link> cables =
                links.stream().filter(link -> link.kind() == Link.Kind.CABLE).toList();
        List<Route> routes = new ArrayList<>();
        Display display = request.display();
        for (SourceOutput output : request.source().outputs()) {
            Signal signal = new Signal(output.format(), output.sync(), output.level(), output.plug());
            for (DisplayInput input : display.inputs()) {
                for (Hop hop : hops(signal, input.plug(), input.accepts(), cables)) {
                    routes.add(direct(request, output, signal, hop, input));
                }
            }
            for (Converter converter : converters) {
                for (ConverterInput converterInput : converter.inputs()) {
                    for (Hop hop : hops(signal, converterInput.plug(), converterInput.accepts(), cables)) {
                        addConverted(routes, request, output, signal, hop, converter, converterInput, cables);
                    }
                }
            }
        }
        routes.sort(Comparator.comparing(Route::key));
        return routes;
    }

    /** @param cable absent for a plain lead */
    private record Hop(@Nullable Link cable) {
        Signal carry(Signal signal) {
            return cable == null ? signal : signal.through(cable);
        }

        Optional<Refusal> refusal(Signal signal) {
            return cable == null ? Optional.empty() : SignalRules.carries(cable, signal);
        }
    }

    /**
     * The cables that mate at both ends. Only where none of them carries the signal are equal connectors taken to be
     * joined by a plain lead.
     */
    private static List<Hop> hops(Signal signal, @Nullable Plug to, List<Carried> accepts, List<Link> cables) {
        Plug from = signal.plug();
        if (from == null || to == null) {
            return isOfOneKind(signal, accepts) ? List.of(new Hop(null)) : List.of();
        }
        List<Hop> hops = new ArrayList<>();
        boolean carried = false;
        for (Link cable : cables) {
            if (cable.from().mates(from) && cable.to().mates(to)) {
                hops.add(new Hop(cable));
                carried |= SignalRules.carries(cable, signal).isEmpty();
            }
        }
        if (!carried && from.mates(to)) {
            hops.add(new Hop(null));
        }
        return hops;
    }

    /** A plug that is not stated takes any connector of its kind of signal. */
    private static boolean isOfOneKind(Signal signal, List<Carried> accepts) {
        return accepts.stream()
                .anyMatch(carried ->
                        carried.format().isDigital() == signal.format().isDigital());
    }

    private static Route direct(MatchRequest request, SourceOutput output, Signal signal, Hop hop, DisplayInput input) {
        Route route = new Route(request.sourceName(), output, hop.cable(), null, request.display(), input, null);
        Optional<Refusal> refusal = SignalRules.computable(output.format())
                .or(() -> hop.refusal(signal))
                .or(() -> displayTakes(hop.carry(signal), input));
        return refusal.map(route::refusedBy).orElse(route);
    }

    private static void addConverted(
            List<Route> routes,
            MatchRequest request,
            SourceOutput output,
            Signal signal,
            Hop hop,
            Converter converter,
            ConverterInput input,
            List<Link> cables) {
        List<Link> left = left(cables, hop.cable(), request.owned().parts());
        for (ConverterOutput converterOutput : converter.outputs()) {
            Signal converted = signalOf(converterOutput);
            for (DisplayInput displayInput : request.display().inputs()) {
                for (Hop second : hops(converted, displayInput.plug(), displayInput.accepts(), left)) {
                    Route route = new Route(
                            request.sourceName(),
                            output,
                            hop.cable(),
                            new Route.Leg(converter, input, converterOutput, second.cable()),
                            request.display(),
                            displayInput,
                            null);
                    Optional<Refusal> refusal = SignalRules.computable(output.format())
                            .or(() -> cableRefusal(hop, signal, second, converted))
                            .or(() -> SignalRules.converterTakes(
                                    hop.carry(signal), input.id(), input.plug(), input.level(), input.accepts()))
                            .or(() -> displayTakes(second.carry(converted), displayInput));
                    routes.add(refusal.map(route::refusedBy).orElse(route));
                }
            }
        }
    }

    /** A cable that is owned is one piece: behind the converter it is not there any more. */
    private static List<Link> left(List<Link> cables, @Nullable Link used, Set<String> owned) {
        return used == null || !owned.contains(used.id())
                ? cables
                : cables.stream().filter(cable -> !cable.id().equals(used.id())).toList();
    }

    private static Optional<Refusal> cableRefusal(Hop first, Signal signal, Hop second, Signal converted) {
        return Optional.ofNullable(Rules.first(
                first.refusal(signal).orElse(null), second.refusal(converted).orElse(null)));
    }

    private static Optional<Refusal> displayTakes(Signal signal, DisplayInput input) {
        return SignalRules.displayTakes(signal, input.path(), input.plug(), input.level(), input.accepts());
    }

    private static Signal signalOf(ConverterOutput output) {
        Format format = output.format();
        SyncKind sync = output instanceof ConverterOutput.Analog analog ? analog.sync() : null;
        Level level = output instanceof ConverterOutput.Analog analog ? analog.level() : Level.VIDEO_75_OHM;
        return new Signal(format, sync, level, output.plug());
    }
}
