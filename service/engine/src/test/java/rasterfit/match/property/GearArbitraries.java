package rasterfit.match.property;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.domains.DomainContextBase;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Basis;
import rasterfit.gear.Carried;
import rasterfit.gear.Connector;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.Plug;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.SinkLimitsReader;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Variant;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.match.MatchRequest;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Scan;

/**
 * Random consoles, converters, cables and displays, small enough that every setting of every route can be looked at, and
 * the requests made of them. Figures lie in the range of the trade; everything shrinks towards fewer and plainer parts.
 */
public final class GearArbitraries extends DomainContextBase {
    static final Plug SCART = new Plug(new Connector("SCART"), null);
    static final Plug HDMI = new Plug(new Connector("HDMI"), null);
    /** More than any of these requests has setups: all of them are in the answer. */
    static final int ALL = 100_000;

    private static final Rational RESOLUTION_PPM = Rational.of(2000);

    /** All setups of all routes in the answer, no limits, weights alone to order them. */
    @Provide
    public Arbitrary<MatchRequest> requests() {
        return Arbitraries.frequencyOf(
                Tuple.of(3, requests(ModeArbitraries.lookAlike(), false)),
                Tuple.of(2, requests(ModeArbitraries.apart(), true)));
    }

    /** @param few whether the settings of two groups must stay few enough to be combined freely */
    private static Arbitrary<MatchRequest> requests(Arbitrary<List<Mode>> modes, boolean few) {
        return Combinators.combine(
                        outputs(),
                        modes,
                        display(few),
                        ConverterArbitraries.converters(few),
                        links(few),
                        weights(),
                        Arbitraries.of(PixelAspectConvention.class))
                .as((outputs, list, display, converters, links, weights, convention) -> new MatchRequest(
                        "Console",
                        new Variant("console", null, null, null, outputs, list),
                        display,
                        new MatchRequest.Equipment(false, converters, links),
                        Intent.EVEN_WEIGHTS,
                        weights,
                        List.of(),
                        convention,
                        MatchRequest.Explanation.SUMMARY,
                        ALL,
                        ALL));
    }

    /** A few differ from the others, or one alone counts: then many setups are equally good, and some dominate others. */
    private static Arbitrary<Map<Criterion, Double>> weights() {
        Arbitrary<Map<Criterion, Double>> few = Arbitraries.maps(
                        Arbitraries.of(Criterion.class), Arbitraries.of(0.0, 0.5, 2.0, 5.0))
                .ofMaxSize(3);
        Arbitrary<Map<Criterion, Double>> one = Arbitraries.of(Criterion.class).map(alone -> {
            Map<Criterion, Double> weights = new EnumMap<>(Criterion.class);
            for (Criterion criterion : Criterion.values()) {
                weights.put(criterion, criterion == alone ? 1.0 : 0.0);
            }
            return weights;
        });
        return Arbitraries.frequencyOf(Tuple.of(4, few), Tuple.of(1, one));
    }

    /** One RGB socket, now and then two. */
    private static Arbitrary<List<SourceOutput>> outputs() {
        Arbitrary<SourceOutput> rgb = Combinators.combine(
                        bandwidth(), Arbitraries.of(SyncKind.COMPOSITE_SYNC, SyncKind.SYNC_ON_COMPOSITE))
                .as((bandwidth, sync) ->
                        new SourceOutput("rgb", SCART, Format.RGB, sync, null, Level.VIDEO_75_OHM, bandwidth));
        return Arbitraries.frequencyOf(
                Tuple.of(5, rgb.map(List::of)),
                Tuple.of(
                        1,
                        Combinators.combine(rgb, rgb)
                                .as((a, b) -> List.of(a, Altered.with(b, "id", "rgb-of-the-second-socket")))));
    }

    private static Arbitrary<Fact> bandwidth() {
        return Arbitraries.integers()
                .between(2, 12)
                .map(megahertz -> Fact.known(megahertz * 1_000_000L))
                .injectNull(0.25)
                .map(known -> known == null ? Fact.unknown() : known);
    }

    /** Up to two cables for the console and at most one between digital sockets. */
    private static Arbitrary<List<Link>> links(boolean few) {
        Arbitrary<Link> lead = Combinators.combine(ConverterArbitraries.price().injectNull(0.2), bandwidth())
                .as((price, bandwidth) -> Link.cable(
                        "lead", "Lead", SCART, SCART, List.of(new Carried(Format.RGB, Set.of())), price, bandwidth));
        Arbitrary<Link> digital = ConverterArbitraries.price()
                .map(price -> Link.cable(
                        "digital-lead",
                        "Digital lead",
                        HDMI,
                        HDMI,
                        List.of(new Carried(Format.TMDS, Set.of())),
                        price,
                        Fact.unknown()));
        return Combinators.combine(lead.list().ofMaxSize(few ? 1 : 2), digital.injectNull(0.7))
                .as((leads, between) -> {
                    List<Link> links = new ArrayList<>();
                    for (Link each : leads) {
                        links.add(Altered.with(each, "id", "lead-" + (links.size() + 1)));
                    }
                    if (between != null) {
                        links.add(between);
                    }
                    return links;
                });
    }

    private static Arbitrary<Display> display(boolean few) {
        Arbitrary<List<DisplayInput>> screenInputs = Combinators.combine(
                        digitalInput("digital-1", few),
                        digitalInput("digital-2", few).injectNull(few ? 1 : 0.7),
                        analogInput().injectNull(0.6))
                .as((a, b, c) -> Stream.of(a, b, c).filter(Objects::nonNull).toList());
        Arbitrary<Panel> grid = Combinators.combine(
                        Arbitraries.of(List.of(1920, 1080), List.of(1280, 1024), List.of(1366, 768)),
                        Arbitraries.of(Panel.Filter.class))
                .as((size, filter) -> new Panel.Grid(size.get(0), size.get(1), null, filter));
        Arbitrary<Display> screen = Combinators.combine(
                        Arbitraries.of(DisplayClass.TELEVISION, DisplayClass.MONITOR, DisplayClass.PROJECTOR),
                        grid,
                        screenInputs)
                .as((kind, panel, inputs) -> new Display("screen", "Screen", kind, panel, inputs, List.of()));
        Arbitrary<Display> tube = analogInput()
                .map(input -> new Display(
                        "tube",
                        "Tube",
                        DisplayClass.TUBE,
                        new Panel.Tube(Rational.of(4, 3)),
                        List.of(input),
                        List.of()));
        return Arbitraries.frequencyOf(Tuple.of(19, screen), Tuple.of(1, tube));
    }

    private static Arbitrary<DisplayInput> digitalInput(String id, boolean few) {
        Arbitrary<List<AspectControl>> controls = Arbitraries.of(AspectControl.class)
                .set()
                .ofMinSize(1)
                .ofMaxSize(few ? 1 : 2)
                .map(set -> set.stream().sorted().toList());
        return Combinators.combine(
                        sink(),
                        controls,
                        Arbitraries.integers().between(0, 5),
                        Arbitraries.integers().between(300, 4000),
                        lag(),
                        Arbitraries.of(true, false))
                .as((sink, offered, overscan, resync, lag, lowDelay) -> new DisplayInput(
                        id,
                        null,
                        HDMI,
                        Level.VIDEO_75_OHM,
                        List.of(new Carried(Format.TMDS, Set.of())),
                        null,
                        null,
                        EnumSet.allOf(Scan.class),
                        HalfHeight.SHOWN,
                        RESOLUTION_PPM,
                        sink,
                        offered,
                        Fact.known(overscan),
                        Fact.known(resync),
                        lag,
                        lowDelay));
    }

    private static Arbitrary<SinkLimits> sink() {
        Arbitrary<List<SinkLimits.ListedRaster>> listed = Arbitraries.of(2, 3, 4, 16, 17, 19, 31, 1, 8)
                .set()
                .ofMinSize(2)
                .ofMaxSize(6)
                .map(vics -> vics.stream()
                        .sorted()
                        .flatMap(vic -> SinkLimitsReader.listed(
                                "vic:" + vic, Cta861.find(vic).orElseThrow())
                                .stream())
                        .toList());
        return Combinators.combine(
                        listed,
                        Arbitraries.of(62, 61, 59),
                        Arbitraries.of(68, 80, 50),
                        Arbitraries.of(150, 100),
                        Arbitraries.of(false, false, true),
                        Arbitraries.of(165, 225, 100))
                .as((rasters, fields, lines, clock, continuous, tmds) -> new SinkLimits(
                        rasters,
                        new FrequencyRange(Frequency.ofHz(49), Frequency.ofHz(fields)),
                        new FrequencyRange(Frequency.ofHz(15_000), Frequency.ofHz(lines * 1000L)),
                        Frequency.ofHz(clock * 1_000_000L),
                        continuous,
                        Frequency.ofHz(tmds * 1_000_000L),
                        LinkKind.HDMI));
    }

    /** No reading, or one or two of different strength. */
    private static Arbitrary<List<LagReading>> lag() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 60),
                        Arbitraries.integers().between(0, 20),
                        Arbitraries.of(LagReading.Method.class),
                        Arbitraries.integers().between(0, 767).injectNull(0.5),
                        Arbitraries.of(Basis.MEASURED, Basis.PUBLISHED, Basis.DECLARED))
                .as((least, spread, method, row, basis) -> new LagReading(
                        null,
                        new Fact.Within(Rational.of(least), null, Rational.of(least + spread)),
                        method,
                        row,
                        basis))
                .list()
                .ofMaxSize(2);
    }

    private static Arbitrary<DisplayInput> analogInput() {
        return Combinators.combine(
                        Arbitraries.of(15_850, 15_740),
                        Arbitraries.of(61, 55),
                        Arbitraries.integers().between(0, 8),
                        lag())
                .as((lines, fields, overscan, lag) -> new DisplayInput(
                        "analog-1",
                        null,
                        SCART,
                        Level.VIDEO_75_OHM,
                        List.of(new Carried(Format.RGB, Set.of())),
                        new FrequencyRange(Frequency.ofHz(15_500), Frequency.ofHz(lines)),
                        new FrequencyRange(Frequency.ofHz(49), Frequency.ofHz(fields)),
                        EnumSet.allOf(Scan.class),
                        HalfHeight.SHOWN,
                        RESOLUTION_PPM,
                        null,
                        List.of(AspectControl.FILL),
                        Fact.known(overscan),
                        Fact.known(300),
                        lag,
                        null));
    }
}
