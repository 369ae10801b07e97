package rasterfit.scenario;

import rasterfit.gear.Fact;
import rasterfit.gear.Link;

/** The engine's link as it is written: 100 MHz, no delay and no price unless it says otherwise. */
final class GearOfLink {
    private GearOfLink() {}

    static Link of(LinkText link) {
        Facts facts = link.facts();
        return new Link(
                link.id().text(),
                link.id().text(),
                link.kind(),
                link.from(),
                link.to(),
                link.carries().stream().map(SignalText::carried).toList(),
                link.conversions().stream().map(ConversionText::conversion).toList(),
                Prices.of(facts),
                Megahertz.fact(facts, "bandwidth", "100"),
                Fact.known(facts.number("delay-us", "0")),
                facts.has("ports") ? facts.whole("ports", 0) : null);
    }
}
