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
import rasterfit.rule.Stage;

/**
 * A chain whose connectors mate.
 *
 * @param cable from the console; absent for a plain lead
 * @param leg through a converter; absent for a direct route
 * @param refusal the first rule that forbids the chain; absent if it is open
 */
public record Route(
        String sourceName,
        SourceOutput output,
        @Nullable Link cable,
        @Nullable Leg leg,
        Display display,
        DisplayInput displayInput,
        @Nullable Refusal refusal) {

    /** @param cable from the converter on; absent for a plain lead */
    public record Leg(
            Converter converter,
            ConverterInput input,
            ConverterOutput output,
            @Nullable Link cable) {}

    public boolean isOpen() {
        return refusal == null;
    }

    Route refusedBy(Refusal why) {
        return new Route(sourceName, output, cable, leg, display, displayInput, why);
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
        if (cable != null) {
            steps.add(cableStep(cable, owned));
        }
        if (leg != null) {
            steps.add(new RouteStep(
                    Stage.CONVERTER,
                    leg.converter().id(),
                    leg.converter().name(),
                    leg.input().id() + " → " + leg.output().id(),
                    null,
                    leg.output().format().name(),
                    owned.parts().contains(leg.converter().id())));
            if (leg.cable() != null) {
                steps.add(cableStep(leg.cable(), owned));
            }
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

    private static RouteStep cableStep(Link cable, MatchRequest.Owned owned) {
        return new RouteStep(
                Stage.CABLE,
                cable.id(),
                cable.name(),
                null,
                null,
                cable.from().connector() + " → " + cable.to().connector(),
                owned.parts().contains(cable.id()));
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
        return leg == null ? output.format().isDigital() : leg.output().format().isDigital();
    }
}
