package rasterfit.match.property;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Digitiser;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Estimate;
import rasterfit.gear.Fact;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.LagReading;
import rasterfit.gear.Link;
import rasterfit.gear.PriceRange;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.ScaleAxis;
import rasterfit.gear.SinkLimits;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Money;
import rasterfit.quantity.Rational;

/**
 * A way in which one part can be worse, and what may follow from it for a setup with the same settings: the utilities that
 * may fall, and whether settings may be lost. No utility may rise, none but the named may move, no setting may come to be.
 *
 * @param part id of the device, cable or display input that is worse
 * @param mayFall criteria whose utility may fall
 * @param losesSettings whether settings that could be set before may be refused or not be there
 */
record Worsening(
        String name, String part, Set<Criterion> mayFall, boolean losesSettings, UnaryOperator<MatchRequest> change) {

    /** What a request can be made worse in: its first converter, its first digital input, its first cable. */
    static List<Worsening> of(MatchRequest request) {
        List<Worsening> all = new ArrayList<>();
        Converter box = request.equipment().converters().get(0);
        all.add(converter("dearer converter", box, Set.of(Criterion.COST), false, Worsening::dearer));
        all.add(converter(
                "longer resynchronisation",
                box,
                Set.of(Criterion.MODE_SWITCH_GAP),
                false,
                c -> Altered.with(c, "resyncMs", more(c.resyncMs(), 700))));
        all.add(converter(
                "more to tune",
                box,
                Set.of(Criterion.EFFORT),
                false,
                c -> Altered.with(c, "settingsToTune", more(c.settingsToTune(), 3))));
        all.add(converter(
                "longer pipeline",
                box,
                Set.of(Criterion.LATENCY),
                false,
                c -> ways(
                        c, way -> Altered.with((Record & Processing) way, "pipelineUs", more(way.pipelineUs(), 900)))));
        all.add(converter(
                "later first copy", box, Set.of(Criterion.LATENCY), true, c -> ways(c, Worsening::laterCopy)));
        all.add(converter(
                "slower deinterlacing",
                box,
                Set.of(Criterion.LATENCY),
                false,
                c -> ways(c, Worsening::slowerDeinterlacing)));
        all.add(converter("less memory", box, Set.of(), true, c -> ways(c, Worsening::lessMemory)));
        all.add(converter("less pull", box, Set.of(), true, c -> ways(c, Worsening::lessPull)));
        all.add(converter("less crop", box, Set.of(), true, c -> ways(c, Worsening::lessCrop)));
        all.add(converter(
                "more jitter",
                box,
                Set.of(Criterion.DOT_UNIFORMITY),
                false,
                c -> digitiser(c, d -> Altered.with(d, "clockJitterNs", more(d.clockJitterNs(), 4)))));
        all.add(converter(
                "slower digitiser",
                box,
                Set.of(),
                true,
                c -> digitiser(
                        c,
                        d -> Altered.with(d, "maxSampleRate", d.maxSampleRate().times(Rational.of(1, 2))))));
        all.add(converter("fewer sample counts", box, Set.of(), true, c -> digitiser(c, Worsening::fewerCounts)));
        all.add(converter("slower output", box, Set.of(), true, Worsening::slowerOutput));
        for (DisplayInput input : request.display().inputs().subList(0, 1)) {
            all.add(input("more display lag", input, Set.of(Criterion.LATENCY), false, Worsening::laggier));
            if (input.sink() != null) {
                all.add(input(
                        "lower TMDS clock",
                        input,
                        Set.of(),
                        true,
                        i -> sink(i, s -> Altered.with(s, "maxTmdsClock", Frequency.ofHz(60_000_000)))));
                all.add(input(
                        "narrower scan limits",
                        input,
                        Set.of(Criterion.ACCEPTANCE),
                        false,
                        i -> sink(
                                i,
                                s -> Altered.with(
                                        s, "fieldRate", new FrequencyRange(Frequency.ofHz(50), Frequency.ofHz(56))))));
                all.add(input(
                        "less pixel clock",
                        input,
                        Set.of(Criterion.ACCEPTANCE),
                        false,
                        i -> sink(i, s -> Altered.with(s, "maxPixelClock", Frequency.ofHz(40_000_000)))));
                all.add(input(
                        "nothing promised",
                        input,
                        Set.of(Criterion.ACCEPTANCE),
                        false,
                        i -> sink(i, s -> Altered.with(s, "continuous", false))));
            }
        }
        for (Link link : request.equipment().links().stream().limit(1).toList()) {
            if (!link.id().equals("digital-lead")) {
                // The whole chain's bandwidth softens the edges, and what a direct input shows of them.
                all.add(link(
                        "narrower cable",
                        link,
                        Set.of(Criterion.LINK_DETAIL, Criterion.DOT_UNIFORMITY),
                        l -> Altered.with(l, "bandwidthHz", Fact.known(1_500_000))));
            }
            if (link.price() != null) {
                all.add(link(
                        "dearer cable",
                        link,
                        Set.of(Criterion.COST),
                        l -> Altered.with(l, "price", dearer(l.price()))));
            }
        }
        return all;
    }

    private static Worsening converter(
            String name, Converter box, Set<Criterion> mayFall, boolean loses, UnaryOperator<Converter> change) {
        return new Worsening(name, box.id(), mayFall, loses, request -> Altered.converter(request, box.id(), change));
    }

    private static Worsening input(
            String name,
            DisplayInput input,
            Set<Criterion> mayFall,
            boolean loses,
            UnaryOperator<DisplayInput> change) {
        return new Worsening(name, input.id(), mayFall, loses, request -> Altered.input(request, input.id(), change));
    }

    private static Worsening link(String name, Link link, Set<Criterion> mayFall, UnaryOperator<Link> change) {
        return new Worsening(
                name,
                link.id(),
                mayFall,
                false,
                request -> Altered.links(
                        request,
                        request.equipment().links().stream()
                                .map(each -> each.id().equals(link.id()) ? change.apply(each) : each)
                                .toList()));
    }

    private static Fact more(Fact fact, long by) {
        return Fact.known(fact.orAssume(Estimate.exactly(0)).typical().plus(Rational.of(by)));
    }

    private static Converter dearer(Converter converter) {
        PriceRange price = converter.price();
        return price == null ? converter : Altered.with(converter, "price", dearer(price));
    }

    private static PriceRange dearer(PriceRange price) {
        BigDecimal more = BigDecimal.valueOf(35);
        String currency = price.least().currency();
        return new PriceRange(
                new Money(price.least().amount().add(more), currency),
                new Money(price.greatest().amount().add(more), currency),
                price.asOf());
    }

    private static Converter ways(Converter converter, UnaryOperator<Processing> change) {
        return Altered.with(
                converter,
                "processing",
                converter.processing().stream().map(change).toList());
    }

    private static Processing laterCopy(Processing way) {
        return way instanceof Processing.LineRepeat repeat
                ? Altered.with(
                        repeat,
                        "latestStartLines",
                        repeat.latestStartLines().isUnknown() ? Fact.known(2) : more(repeat.latestStartLines(), 1))
                : way;
    }

    private static Processing slowerDeinterlacing(Processing way) {
        if (!(way instanceof Processing.RasterScale scale)) {
            return way;
        }
        List<Deinterlacer> slower = scale.deinterlacers().stream()
                .map(each -> Altered.with(each, "addedFields", more(each.addedFields(), 1)))
                .toList();
        return Altered.with(scale, "deinterlacers", slower);
    }

    private static Processing lessMemory(Processing way) {
        if (way instanceof Processing.LineRepeat repeat) {
            return Altered.with(repeat, "bufferLines", repeat.bufferLines() == null ? 2 : repeat.bufferLines() - 1);
        }
        return way instanceof Processing.RasterScale scale ? locks(scale, Worsening::lessMemory) : way;
    }

    private static RateLock lessMemory(RateLock lock) {
        return lock instanceof RateLock.SourceLocked locked
                ? Altered.with(locked, "bufferLines", locked.bufferLines() == null ? 20 : locked.bufferLines() / 2)
                : lock;
    }

    private static Processing lessPull(Processing way) {
        return way instanceof Processing.RasterScale scale
                ? locks(
                        scale,
                        lock -> lock instanceof RateLock.SourceLocked locked
                                ? Altered.with(
                                        locked, "pullPpm", locked.pullPpm().dividedBy(4))
                                : lock)
                : way;
    }

    private static Processing locks(Processing.RasterScale scale, UnaryOperator<RateLock> change) {
        return Altered.with(
                scale, "rateLocks", scale.rateLocks().stream().map(change).toList());
    }

    private static Processing lessCrop(Processing way) {
        return way instanceof Processing.RasterScale scale
                ? Altered.with(
                        Altered.with(scale, "vertical", halfCrop(scale.vertical())),
                        "horizontal",
                        halfCrop(scale.horizontal()))
                : way;
    }

    private static ScaleAxis halfCrop(ScaleAxis axis) {
        return Altered.with(axis, "maxCrop", axis.maxCrop() / 2);
    }

    private static Converter digitiser(Converter converter, UnaryOperator<Digitiser> change) {
        List<ConverterInput> inputs = converter.inputs().stream()
                .map(input -> input.digitiser() == null
                        ? input
                        : Altered.with(input, "digitiser", change.apply(input.digitiser())))
                .toList();
        return Altered.with(converter, "inputs", inputs);
    }

    /** Of a list the last is gone. A free range stays: of a narrower one other counts are worth trying. */
    private static Digitiser fewerCounts(Digitiser digitiser) {
        return digitiser.samplesPerLine() instanceof SamplesPerLine.FixedList list
                        && list.values().size() > 1
                ? Altered.with(
                        digitiser,
                        "samplesPerLine",
                        new SamplesPerLine.FixedList(
                                list.values().subList(0, list.values().size() - 1)))
                : digitiser;
    }

    private static Converter slowerOutput(Converter converter) {
        List<ConverterOutput> outputs = converter.outputs().stream()
                .map(output -> output instanceof ConverterOutput.Digital digital
                        ? (ConverterOutput) Altered.with(digital, "maxTmdsClock", Frequency.ofHz(50_000_000))
                        : output)
                .toList();
        return Altered.with(converter, "outputs", outputs);
    }

    /** Every reading is higher; where nobody has read the delay nothing changes. */
    private static DisplayInput laggier(DisplayInput input) {
        Rational more = Rational.of(25);
        List<LagReading> readings = input.lag().stream()
                .map(reading -> Altered.with(
                        reading,
                        "ms",
                        new Fact.Within(
                                reading.ms().least().plus(more),
                                null,
                                reading.ms().greatest().plus(more))))
                .toList();
        return readings.isEmpty() ? input : Altered.with(input, "lag", readings);
    }

    private static DisplayInput sink(DisplayInput input, UnaryOperator<SinkLimits> change) {
        return input.sink() == null ? input : Altered.with(input, "sink", change.apply(input.sink()));
    }
}
