package rasterfit.scenario;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import rasterfit.match.MatchRequest;
import rasterfit.match.PixelAspectConvention;

/**
 * One numbered scenario.
 *
 * @param number letter of the theme and two digits
 * @param source where the expectation comes from
 */
record Scenario(
        String number,
        String title,
        Place place,
        DeviceText console,
        DeviceText display,
        List<DeviceText> converters,
        List<LinkText> links,
        AskText ask,
        Expectation expectation,
        String source) {

    MatchRequest request() {
        return new MatchRequest(
                console.id().text(),
                GearOfConsole.of(console),
                GearOfDisplay.of(display),
                new MatchRequest.Equipment(
                        false,
                        converters.stream().map(GearOfConverter::of).toList(),
                        links.stream().map(GearOfLink::of).toList()),
                ask.intent,
                ask.weights,
                ask.limits,
                PixelAspectConvention.BROADCAST,
                MatchRequest.Explanation.SUMMARY,
                10,
                1,
                new MatchRequest.Owned(false, false, ask.owned, List.of()));
    }

    /** What it states and the engine has no place for yet. */
    Set<String> waiting() {
        Set<String> waiting = new LinkedHashSet<>(ask.waiting);
        Stream.concat(Stream.of(console, display), converters.stream()).forEach(device -> {
            device.inputs().forEach(port -> waiting.addAll(port.facts().waiting()));
            device.outputs().forEach(port -> waiting.addAll(port.facts().waiting()));
            device.clauses().forEach(clause -> waiting.addAll(clause.facts().waiting()));
        });
        links.forEach(link -> waiting.addAll(link.facts().waiting()));
        return waiting;
    }

    /** Every way in which a step of a chain over this gear can be written. */
    Set<String> possibleSteps() {
        Set<String> steps = new LinkedHashSet<>();
        console.outputs().forEach(port -> steps.add(named(console, port)));
        links.forEach(link -> steps.add(link.id().text()));
        for (DeviceText converter : converters) {
            for (PortText in : converter.inputs()) {
                converter
                        .outputs()
                        .forEach(out -> steps.add(
                                named(converter, in) + " → " + out.id().text()));
            }
        }
        for (PortText port : display.inputs()) {
            String state = port.facts().text("state");
            steps.add(named(display, port) + (state == null ? "" : "/" + state));
        }
        return steps;
    }

    private static String named(DeviceText device, PortText port) {
        return device.id().text() + ":" + port.id().text();
    }

    @Override
    public String toString() {
        return number + " " + title;
    }
}
