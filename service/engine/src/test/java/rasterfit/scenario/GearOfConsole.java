package rasterfit.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.Variant;
import rasterfit.gear.Window;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Scan;

/**
 * The engine's variant of a console as it is written. An output has 6 MHz unless it says otherwise; without a mode the console
 * has the class {@code 240p}.
 */
final class GearOfConsole {
    private static final String USUAL_MODE = "240p";

    /** Dot clock, dots, lines, scan and window of a class; sources: BT.1700, BT.601, CTA-861-I tables 1 and 2, VESA DMT. */
    private record ModeClass(
            LineStandard standard,
            String clockHz,
            String dots,
            String lines,
            Scan scan,
            Window active,
            PictureShape shape) {}

    private static final Map<String, ModeClass> CLASSES = Map.of(
            // 3/2 and 15/8 of 315/88 MHz
            "240p", progressive(LineStandard.L525_60, "59062500/11", "341", "262", new Window(256, 240, 65, 18)),
            "240p-320", progressive(LineStandard.L525_60, "73828125/11", "855/2", "262", new Window(320, 240, 80, 18)),
            // 6/5 of 4.43361875 MHz
            "288p", progressive(LineStandard.L625_50, "5320342.5", "341", "312", new Window(256, 288, 65, 22)),
            // square pixels of both standards
            "480i", interlaced(LineStandard.L525_60, "135000000/11", "780", "525/2", new Window(640, 240, 118, 18)),
            "576i", interlaced(LineStandard.L625_50, "14750000", "944", "625/2", new Window(768, 288, 150, 22)),
            // VIC 2, 8 and 23
            "480p", progressive(LineStandard.L525_60, "27000000", "858", "525", new Window(720, 480, 122, 36)),
            "240p-digital",
                    progressive(LineStandard.L525_60, "27000000", "1716", "262", new Window(1440, 240, 238, 18)),
            "288p-digital",
                    progressive(LineStandard.L625_50, "27000000", "1728", "312", new Window(1440, 288, 264, 22)),
            // VIC 4 and 16
            "720p", square("74250000", "1650", "750", new Window(1280, 720, 260, 25)),
            "1080p", square("148500000", "2200", "1125", new Window(1920, 1080, 192, 41)));

    /** DMT 4h. */
    private static final ModeClass VGA = square("25175000", "800", "525", new Window(640, 480, 144, 35));

    private GearOfConsole() {}

    static Variant of(DeviceText console) {
        if (console.outputs().isEmpty()) {
            throw console.id().fault("a console has an output");
        }
        List<Mode> modes = new ArrayList<>();
        for (ClauseText clause : console.clauses("mode")) {
            modes.add(mode(clause.arguments().get(0), clause.facts()));
        }
        if (modes.isEmpty()) {
            Word usual = new Word(USUAL_MODE, console.id().place());
            modes.add(mode(usual, Facts.take(new Words(List.of(), usual.place()), Vocabulary.MODE)));
        }
        return new Variant(
                console.id().text(),
                null,
                null,
                Prices.of(console.facts()),
                console.outputs().stream().map(GearOfConsole::output).toList(),
                modes);
    }

    private static SourceOutput output(PortText port) {
        SignalText signal = port.signal();
        return new SourceOutput(
                port.id().text(),
                port.plug(),
                signal.format(),
                signal.sync(),
                signal.encoding(),
                signal.level(),
                Megahertz.fact(port.facts(), "bandwidth", "6"));
    }

    private static Mode mode(Word name, Facts facts) {
        ModeClass its = name.is("vga") ? VGA : CLASSES.get(name.text());
        if (its == null) {
            throw name.fault("not a class of modes; known are vga and "
                    + CLASSES.keySet().stream().sorted().toList());
        }
        Window active = new Window(
                its.active().dots(),
                facts.whole("active-lines", its.active().lines()),
                its.active().firstDot(),
                its.active().firstLine());
        return facts.parsed(
                "mode",
                name.text(),
                text -> new Mode(
                        facts.text("name", text),
                        its.standard(),
                        Frequency.parseHz(facts.text("clock", its.clockHz())),
                        facts.number("dots", its.dots()),
                        facts.number("lines", its.lines()),
                        its.scan(),
                        facts.number("share", "1"),
                        facts.has("play"),
                        active,
                        active,
                        false,
                        PictureShape.valueOf(facts.text("shape", its.shape().name()))));
    }

    private static ModeClass progressive(
            LineStandard standard, String clockHz, String dots, String lines, Window active) {
        return new ModeClass(standard, clockHz, dots, lines, Scan.PROGRESSIVE, active, PictureShape.TUBE_4_3);
    }

    private static ModeClass interlaced(
            LineStandard standard, String clockHz, String dots, String lines, Window active) {
        return new ModeClass(standard, clockHz, dots, lines, Scan.INTERLACED, active, PictureShape.TUBE_4_3);
    }

    private static ModeClass square(String clockHz, String dots, String lines, Window active) {
        return new ModeClass(
                LineStandard.OTHER, clockHz, dots, lines, Scan.PROGRESSIVE, active, PictureShape.SQUARE_DOTS);
    }
}
