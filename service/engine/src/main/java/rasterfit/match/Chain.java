package rasterfit.match;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.rule.Stage;

/**
 * The parts of a route without the links that join them: two routes that differ in a cable have one chain.
 *
 * @param output of the console
 * @param converters in signal order; none on a direct route
 * @param input of the display
 */
public record Chain(String output, List<Unit> converters, Input input) {
    /** @param ports which of its inputs and outputs is used */
    public record Unit(String id, String name, @Nullable String ports) {}

    /** @param state menu state; absent where the input has none */
    public record Input(String id, @Nullable String state) {
        /** {@code digital-1} or {@code digital-1/low-lag}. */
        public String path() {
            return state == null ? id : id + "/" + state;
        }
    }

    public Chain {
        converters = List.copyOf(converters);
    }

    /** @param route from the console's output to the display's input */
    public static Chain of(List<RouteStep> route) {
        List<Unit> converters = new ArrayList<>();
        RouteStep first = route.get(0);
        RouteStep last = route.get(route.size() - 1);
        for (RouteStep step : route) {
            if (step.stage() == Stage.CONVERTER) {
                converters.add(new Unit(step.id(), step.name(), step.port()));
            }
        }
        return new Chain(first.id(), converters, new Input(last.port() == null ? "" : last.port(), last.state()));
    }
}
