package rasterfit.scenario;

import java.util.ArrayList;
import java.util.List;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Basis;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Panel;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.SinkLimitsReader;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * The engine's display as it is written. What it does not say: 1920 by 1080 pixels without overscan, a delay of 10 [9–12] ms,
 * all aspect controls; a tube is 4:3 with 5 % of overscan and fills. Analog inputs take 15.5 to 15.85 kHz and 49 to 61 Hz;
 * digital ones list the usual timings of CTA-861-I within 48 to 62 Hz, 15 to 68 kHz and 150 MHz, with a link of 165 MHz.
 */
final class GearOfDisplay {
    private static final String USUAL_TIMINGS = "vic:16,vic:31,vic:4,vic:19,vic:2,vic:3,vic:17,vic:18";
    private static final Rational LINE_RATE_RESOLUTION_PPM = Rational.of(2000);

    private GearOfDisplay() {}

    static Display of(DeviceText display) {
        boolean tube = display.kind() == DeviceText.Kind.TUBE;
        if (display.inputs().isEmpty()) {
            throw display.id().fault("a display has an input");
        }
        return new Display(
                display.id().text(),
                display.id().text(),
                DisplayClass.valueOf(display.kind().name()),
                tube ? new Panel.Tube(Rational.of(4, 3)) : new Panel.Grid(1920, 1080, null, Panel.Filter.NEAREST),
                display.inputs().stream().map(port -> input(port, tube)).toList(),
                List.of());
    }

    private static DisplayInput input(PortText port, boolean tube) {
        Facts facts = port.facts();
        LinkKind link = port.link();
        String overscan = facts.text("overscan", tube ? "5" : "0");
        String resyncMs = facts.text("resync-ms", link == null ? "?" : "2000");
        return new DisplayInput(
                port.id().text(),
                facts.text("state"),
                port.plug(),
                port.level(),
                port.accepts(),
                Megahertz.range(facts, "line", link == null ? "15500-15850" : null),
                Megahertz.range(facts, "field", link == null ? "49-61" : null),
                GearOfConverter.scans(facts),
                HalfHeight.valueOf(facts.text("half", "SHOWN")),
                LINE_RATE_RESOLUTION_PPM,
                link == null ? null : sink(port, link),
                facts.list("aspects", tube ? "FILL" : "FILL,SIGNALLED,ONE_TO_ONE").stream()
                        .map(control -> facts.parsed("aspects", control, AspectControl::valueOf))
                        .toList(),
                fact(facts, "overscan", overscan),
                fact(facts, "resync-ms", resyncMs),
                lag(facts, tube),
                null);
    }

    private static Fact fact(Facts facts, String name, String text) {
        return text.equals("?") ? Fact.unknown() : Fact.known(facts.parsed(name, text, Rational::parse));
    }

    private static List<LagReading> lag(Facts facts, boolean tube) {
        String text = facts.text("lag");
        if (text == null) {
            return tube ? List.of() : List.of(reading(Rational.of(9), Rational.of(10), Rational.of(12)));
        }
        if (text.equals("?")) {
            return List.of();
        }
        Rational ms = facts.parsed("lag", text, Rational::parse);
        return List.of(reading(ms, ms, ms));
    }

    private static LagReading reading(Rational least, Rational typical, Rational greatest) {
        return new LagReading(
                null, new Fact.Within(least, typical, greatest), LagReading.Method.SPLIT_SIGNAL, null, Basis.MEASURED);
    }

    private static SinkLimits sink(PortText port, LinkKind link) {
        Facts facts = port.facts();
        List<SinkLimits.ListedRaster> listed = new ArrayList<>();
        for (String label : facts.list("lists", USUAL_TIMINGS)) {
            listed.addAll(SinkLimitsReader.listed(label, GearOfConverter.vic(port.id(), label)));
        }
        return new SinkLimits(
                listed,
                range(48, 62),
                range(15_000, 68_000),
                Frequency.ofHz(150_000_000),
                false,
                Megahertz.frequency(facts, "maxclock", "165"),
                link);
    }

    private static FrequencyRange range(long least, long greatest) {
        return new FrequencyRange(Frequency.ofHz(least), Frequency.ofHz(greatest));
    }
}
