package rasterfit.match.route;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Link;
import rasterfit.gear.SourceOutput;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.rule.Refusal;
import rasterfit.rule.Signal;
import rasterfit.rule.Stage;

/**
 * A chain whose connectors mate.
 *
 * @param run from the console to the converter, or to the display on a direct route
 * @param leg through a converter; absent for a direct route
 * @param refusal the first rule that forbids the chain; absent if it is open
 */
public record Route(
        String sourceName,
        SourceOutput output,
        Run run,
        @Nullable Leg leg,
        Display display,
        DisplayInput displayInput,
        @Nullable Refusal refusal) {

    /** @param run from the converter to the display */
    public record Leg(Converter converter, ConverterInput input, ConverterOutput output, Run run) {}

    /** The analog or digital signal that is converted, or shown on a direct route: behind the adapters of its run. */
    public Signal signal() {
        return run.arriving();
    }

    /** All links, in signal order. */
    public List<Link> links() {
        List<Link> links = new ArrayList<>(run.links());
        if (leg != null) {
            links.addAll(leg.run().links());
        }
        return links;
    }

    public boolean isOpen() {
        return refusal == null;
    }

    /** The chain by itself, whoever owns it. */
    public List<RouteStep> steps() {
        return steps(MatchRequest.Owned.NOTHING);
    }

    /** @param owned which of the parts belong to whoever asks */
    public List<RouteStep> steps(MatchRequest.Owned owned) {
        List<RouteStep> steps = new ArrayList<>();
        String signal = output.sync() == null ? output.format().name() : output.format() + " with " + output.sync();
        steps.add(
                new RouteStep(Stage.SOURCE_OUTPUT, output.id(), sourceName, output.id(), null, signal, owned.source()));
        addLinks(steps, run, owned);
        if (leg != null) {
            steps.add(new RouteStep(
                    Stage.CONVERTER,
                    leg.converter().id(),
                    leg.converter().name(),
                    leg.input().id() + " → " + leg.output().id(),
                    null,
                    leg.output().format().name(),
                    owned.parts().contains(leg.converter().id())));
            addLinks(steps, leg.run(), owned);
        }
        steps.add(new RouteStep(
                Stage.DISPLAY_INPUT,
                display.id(),
                display.name(),
                displayInput.id(),
                displayInput.state(),
                null,
                owned.display()));
        return steps;
    }

    private static void addLinks(List<RouteStep> steps, Run run, MatchRequest.Owned owned) {
        for (Link link : run.links()) {
            steps.add(new RouteStep(
                    stage(link.kind()),
                    link.id(),
                    link.name(),
                    null,
                    null,
                    link.from().connector() + " → " + link.to().connector(),
                    owned.parts().contains(link.id())));
        }
    }

    private static Stage stage(Link.Kind kind) {
        return switch (kind) {
            case CABLE -> Stage.CABLE;
            case ADAPTER -> Stage.ADAPTER;
            case SWITCH -> Stage.SWITCH;
        };
    }

    /** The ids along the chain; unique among the routes of a match, and independent of the catalogue's order. */
    public String key() {
        return String.join(" > ", ids());
    }

    /** One id for each part, ports and states included. */
    public List<String> ids() {
        return steps().stream()
                .map(step -> step.id()
                        + (step.port() == null || step.stage() == Stage.SOURCE_OUTPUT ? "" : ":" + step.port())
                        + (step.state() == null ? "" : "/" + step.state()))
                .collect(Collectors.toList());
    }

    /** Whether the signal on its last hop is digital. */
    public boolean endsDigital() {
        return (leg == null ? run : leg.run()).arriving().format().isDigital();
    }
}
