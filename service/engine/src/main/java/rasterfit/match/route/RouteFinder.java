package rasterfit.match.route;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.ColourEncoding;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.match.MatchRequest;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;
import rasterfit.rule.Signal;
import rasterfit.rule.SignalRules;

/**
 * Lays every chain whose connectors mate: output → links → [converter → links] → display input. A chain that a signal
 * rule forbids is kept with its refusal.
 *
 * <p>Second converters will join here.
 */
public final class RouteFinder {
    private final MatchRequest request;
    private final Collection<Link> links;
    private final RunFinder runs;
    private final List<Route> routes = new ArrayList<>();

    private RouteFinder(MatchRequest request, Collection<Link> links) {
        this.request = request;
        this.links = links;
        this.runs = new RunFinder(links);
    }

    /** Routes in the order of their keys. */
    public static List<Route> find(MatchRequest request, Collection<Converter> converters, Collection<Link> links) {
        RouteFinder finder = new RouteFinder(request, links);
        finder.direct();
        converters.forEach(finder::through);
        finder.routes.sort(Comparator.comparing(Route::key));
        return finder.routes;
    }

    private void direct() {
        for (SourceOutput output : request.source().outputs()) {
            for (DisplayInput input : request.display().inputs()) {
                for (Run run : runs.find(emitted(output), input.plug(), input.accepts())) {
                    add(output, run, null, input, displayTakes(run, input));
                }
            }
        }
    }

    private void through(Converter converter) {
        List<Exit> exits = exits(converter, runs);
        for (SourceOutput output : request.source().outputs()) {
            for (ConverterInput input : converter.inputs()) {
                for (Run run : runs.find(emitted(output), input.plug(), input.accepts())) {
                    boolean takesAny = run.links().stream().anyMatch(this::isOwned);
                    converted(output, run, converter, input, takesAny ? exits(converter, left(run)) : exits);
                }
            }
        }
    }

    /** How a converter reaches the display. */
    private record Exit(ConverterOutput output, Run run, DisplayInput input) {}

    /** A link that is owned is one piece: behind the converter it is not there any more. */
    private RunFinder left(Run used) {
        return new RunFinder(links.stream()
                .filter(link -> !(isOwned(link) && used.links().contains(link)))
                .toList());
    }

    private boolean isOwned(Link link) {
        return request.owned().parts().contains(link.id());
    }

    private List<Exit> exits(Converter converter, RunFinder runs) {
        List<Exit> found = new ArrayList<>();
        for (ConverterOutput output : converter.outputs()) {
            for (DisplayInput input : request.display().inputs()) {
                runs.find(signalOf(output), input.plug(), input.accepts())
                        .forEach(run -> found.add(new Exit(output, run, input)));
            }
        }
        return found;
    }

    private void converted(SourceOutput output, Run run, Converter converter, ConverterInput input, List<Exit> exits) {
        Optional<Refusal> taken =
                SignalRules.converterTakes(run.arriving(), input.id(), input.plug(), input.level(), input.accepts());
        for (Exit exit : exits) {
            Route.Leg leg = new Route.Leg(converter, input, exit.output(), exit.run());
            Stream<Refusal> atInputs = Stream.concat(taken.stream(), displayTakes(exit.run(), exit.input()));
            add(output, run, leg, exit.input(), atInputs);
        }
    }

    /** Of the rules that forbid a chain the first in chain order counts; what a link does not pass never arrives. */
    private void add(
            SourceOutput output, Run run, Route.@Nullable Leg leg, DisplayInput input, Stream<Refusal> atInputs) {
        Optional<Refusal> onTheWay = Optional.ofNullable(
                Rules.first(run.refusal(), leg == null ? null : leg.run().refusal()));
        Refusal refusal = onTheWay.or(() -> atInputs.findFirst()).orElse(null);
        routes.add(new Route(request.sourceName(), output, run, leg, request.display(), input, refusal));
    }

    private static Stream<Refusal> displayTakes(Run run, DisplayInput input) {
        return SignalRules.displayTakes(run.arriving(), input.path(), input.plug(), input.level(), input.accepts())
                .stream();
    }

    private Signal emitted(SourceOutput output) {
        return new Signal(output.format(), output.sync(), output.level(), output.plug(), encodingOf(output));
    }

    /** Where it is not stated, the usual one of the line standard of the first mode. */
    private @Nullable ColourEncoding encodingOf(SourceOutput output) {
        if (!output.format().hasColourEncoding() || output.encoding() != null) {
            return output.encoding();
        }
        return ColourEncoding.usualOf(request.source().modes().get(0).lineStandard())
                .orElse(null);
    }

    private static Signal signalOf(ConverterOutput output) {
        Format format = output.format();
        SyncKind sync = output instanceof ConverterOutput.Analog analog ? analog.sync() : null;
        Level level = output instanceof ConverterOutput.Analog analog ? analog.level() : Level.VIDEO_75_OHM;
        return new Signal(format, sync, level, output.plug());
    }
}
