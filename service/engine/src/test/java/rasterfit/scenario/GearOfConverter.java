package rasterfit.scenario;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Fact;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LineStandard;
import rasterfit.gear.LinkKind;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.ScaleAxis;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Scan;
import rasterfit.timing.VideoTiming;

/**
 * The engine's converter as it is written. What it does not say: 300 ms to resynchronise, 4 settings; analog inputs of 15 to
 * 16.5 kHz, 47 to 63 Hz with a digitiser of 110 MHz and 640 to 4095 samples; 165 MHz of output; a scaler that is locked
 * within 6000 ppm, with two taps, any factors, 48 lines and dots of crop and a bob deinterlacer.
 */
final class GearOfConverter {
    private static final Rational LINE_RATE_RESOLUTION_PPM = Rational.of(2000);

    private GearOfConverter() {}

    static Converter of(DeviceText converter) {
        Facts facts = converter.facts();
        List<Processing> processing = new ArrayList<>();
        for (ClauseText clause : converter.clauses()) {
            processing.add(processing(clause));
        }
        try {
            return new Converter(
                    converter.id().text(),
                    converter.id().text(),
                    Prices.of(facts),
                    converter.inputs().stream().map(GearOfConverter::input).toList(),
                    processing,
                    converter.outputs().stream().map(GearOfConverter::output).toList(),
                    Fact.known(facts.number("resync-ms", "300")),
                    Fact.known(facts.number("tune", "4")));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    converter.id().fault(e.getMessage()).getMessage(), e);
        }
    }

    private static ConverterInput input(PortText port) {
        Facts facts = port.facts();
        boolean digital = port.isDigital();
        return new ConverterInput(
                port.id().text(),
                port.plug(),
                port.level(),
                port.accepts(),
                Megahertz.range(facts, "line", digital ? null : "15000-16500"),
                Megahertz.range(facts, "field", "47-63"),
                scans(facts),
                HalfHeight.valueOf(facts.text("half", "SHOWN")),
                Fact.unknown(),
                LINE_RATE_RESOLUTION_PPM,
                digital || facts.text("digitiser", "").equals("NONE") ? null : digitiser(facts));
    }

    static EnumSet<Scan> scans(Facts facts) {
        EnumSet<Scan> scans = EnumSet.noneOf(Scan.class);
        for (String scan : facts.list("scans", "PROGRESSIVE,INTERLACED")) {
            scans.add(Scan.valueOf(scan));
        }
        return scans;
    }

    private static Digitiser digitiser(Facts facts) {
        return new Digitiser(
                Megahertz.frequency(facts, "max-rate", "110"),
                facts.parsed("samples", facts.text("samples", "640-4095"), GearOfConverter::samples),
                32,
                List.of(),
                Fact.known(1));
    }

    private static SamplesPerLine samples(String text) {
        if (text.contains("-")) {
            String[] ends = text.split("-", 2);
            return new SamplesPerLine.FreeRange(Integer.parseInt(ends[0]), Integer.parseInt(ends[1]));
        }
        return new SamplesPerLine.FixedList(
                Facts.list(text).stream().map(Integer::valueOf).toList());
    }

    private static ConverterOutput output(PortText port) {
        LinkKind link = port.link();
        if (link == null) {
            SignalText signal = port.signal();
            return new ConverterOutput.Analog(
                    port.id().text(), port.plug(), signal.format(), signal.sync(), signal.level(), null);
        }
        return new ConverterOutput.Digital(
                port.id().text(),
                port.plug(),
                link,
                Megahertz.frequency(port.facts(), "maxclock", "165"),
                port.facts().text("repetition", "yes").equals("yes"));
    }

    private static Processing processing(ClauseText clause) {
        Facts facts = clause.facts();
        Fact pipelineUs = Fact.known(facts.number("pipeline-us", "2"));
        String id = clause.what().text();
        return switch (id) {
            case "pass" -> new Processing.FormatOnly(id, pipelineUs);
            case "repeat" ->
                new Processing.LineRepeat(
                        id,
                        clause.arguments().stream().map(GearOfConverter::lines).toList(),
                        null,
                        Fact.known(1),
                        null,
                        Processing.InterlacedFields.valueOf(facts.text("interlaced", "FIELD_ON_FIELD")),
                        pipelineUs);
            case "scale" ->
                new Processing.RasterScale(
                        id,
                        timings(clause.arguments().get(0)),
                        axis(facts),
                        axis(facts),
                        deinterlacers(facts),
                        facts.list("lock", "LOCKED:6000").stream()
                                .map(text -> facts.parsed("lock", text, GearOfConverter::lock))
                                .toList(),
                        pipelineUs);
            default -> throw clause.what().fault("no way of processing");
        };
    }

    /** {@code 240>480,720}. */
    private static Processing.LineCounts lines(Word word) {
        String[] sides = word.text().split(">", 2);
        try {
            int from = Integer.parseInt(sides[0]);
            List<Integer> to =
                    Facts.list(sides[1]).stream().map(Integer::valueOf).toList();
            return new Processing.LineCounts(from > 250 ? LineStandard.L625_50 : LineStandard.L525_60, from, to);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(word.fault(e.getMessage()).getMessage(), e);
        }
    }

    private static List<OfferedTiming> timings(Word word) {
        List<OfferedTiming> offered = new ArrayList<>();
        for (String label : Facts.list(word.text())) {
            VideoTiming timing = vic(word, label);
            offered.add(new OfferedTiming(label, timing.timing(), timing.pictureAspect()));
        }
        return offered;
    }

    /** {@code vic:16}. */
    static VideoTiming vic(Word word, String label) {
        if (!label.matches("vic:[0-9]{1,3}")) {
            throw word.fault("a timing is written as vic:16");
        }
        return Cta861.find(Integer.parseInt(label.substring(4)))
                .orElseThrow(() -> word.fault("CTA-861-I has no " + label));
    }

    private static ScaleAxis axis(Facts facts) {
        return new ScaleAxis(
                ScaleAxis.Factors.valueOf(facts.text("factors", "ANY")),
                facts.whole("taps", 2),
                facts.whole("crop", 48));
    }

    private static List<Deinterlacer> deinterlacers(Facts facts) {
        String kind = facts.text("deint", "BOB");
        return kind.equals("NONE")
                ? List.of()
                : List.of(new Deinterlacer(
                        facts.parsed("deint", kind, Deinterlacer.Kind::valueOf), Fact.unknown(), false));
    }

    /** {@code LOCKED:ppm}, {@code LOCKED:ppm:lines}, {@code FREE:stores} or {@code VARIABLE}. */
    private static RateLock lock(String text) {
        String[] parts = text.split(":", -1);
        return switch (parts[0]) {
            case "LOCKED" -> new RateLock.SourceLocked(Rational.parse(parts[1]), null, lines(parts));
            case "FREE" -> new RateLock.FreeRunning(List.of(), Integer.parseInt(parts[1]));
            case "VARIABLE" -> new RateLock.VariableRefresh(null);
            default -> throw new IllegalArgumentException("no rate lock");
        };
    }

    private static @Nullable Integer lines(String[] parts) {
        return parts.length > 2 ? Integer.valueOf(parts[2]) : null;
    }
}
