package rasterfit.replay;

import java.util.Collection;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.LinkKind;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.Variant;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.rule.Stage;

/**
 * The gear that the route of an answer names, looked up by the ids and ports that it tells.
 *
 * @param leg absent on a direct route
 */
record Chain(
        SourceOutput output, @Nullable Leg leg, Display display, DisplayInput displayInput) {

    record Leg(Converter converter, ConverterInput input, ConverterOutput output) {}

    static Chain of(RankedSetup setup, Variant variant, Display display, Collection<Converter> converters) {
        RouteStep source = step(setup.route(), Stage.SOURCE_OUTPUT);
        RouteStep end = step(setup.route(), Stage.DISPLAY_INPUT);
        if (source == null || end == null) {
            throw new IllegalArgumentException("a route begins at a source and ends at a display: " + setup.route());
        }
        RouteStep between = step(setup.route(), Stage.CONVERTER);
        return new Chain(
                one(variant.outputs(), output -> output.id().equals(source.port())),
                between == null ? null : leg(between, converters),
                display,
                one(
                        display.inputs(),
                        input -> input.id().equals(end.port())
                                && (end.state() == null ? input.state() == null : end.state().equals(input.state()))));
    }

    private static Leg leg(RouteStep step, Collection<Converter> converters) {
        Converter converter = one(converters, each -> each.id().equals(step.id()));
        String[] ports = String.valueOf(step.port()).split(" → ", 2);
        return new Leg(
                converter,
                one(converter.inputs(), input -> input.id().equals(ports[0])),
                one(converter.outputs(), output -> output.id().equals(ports[1])));
    }

    private static @Nullable RouteStep step(List<RouteStep> route, Stage stage) {
        return route.stream().filter(step -> step.stage() == stage).findFirst().orElse(null);
    }

    private static <T> T one(Collection<T> all, Predicate<T> wanted) {
        List<T> found = all.stream().filter(wanted).toList();
        if (found.size() != 1) {
            throw new IllegalArgumentException("the answer names " + found.size() + " parts where it must name one");
        }
        return found.get(0);
    }

    /** Whether the signal that reaches the display is digital. */
    boolean endsDigital() {
        return leg == null ? output.format().isDigital() : leg.output().format().isDigital();
    }

    /** Only HDMI tells a display the aspect of a converter's picture (HDMI 1.3a §8.2: the AVI InfoFrame). */
    boolean converterSignalsAspect() {
        return leg != null
                && leg.output() instanceof ConverterOutput.Digital digital
                && digital.link() == LinkKind.HDMI;
    }
}
