package rasterfit.match;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Basis;
import rasterfit.gear.Carried;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Connector;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Digitiser;
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
import rasterfit.gear.OwnEvidence;
import rasterfit.gear.Panel;
import rasterfit.gear.Plug;
import rasterfit.gear.PriceRange;
import rasterfit.gear.Processing;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.SinkLimitsReader;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Variant;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Money;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Scan;

/**
 * One console, one converter and one display of which everything is stated, so that nothing has to be told of the setup;
 * a test changes one fact at a time. The converter locks 1080p to the console and takes 1364 samples of its 341 dots.
 */
final class Scene {
    static final Plug CONSOLE = new Plug(new Connector("own:console-av"), null);
    static final Plug SCART = new Plug(new Connector("SCART"), null);
    static final Plug HDMI = new Plug(new Connector("HDMI"), null);
    static final Plug VGA = new Plug(new Connector("VGA"), null);

    Plug outputPlug = CONSOLE;
    Format format = Format.RGB;
    Fact sourceBandwidth = Fact.known(6_000_000);
    List<Mode> modes = List.of(Modes.half525());

    @Nullable
    Link lead = cable("lead", CONSOLE, SCART, Fact.known(50_000_000));

    @Nullable
    Link last = cable("last", HDMI, HDMI, Fact.known(500_000_000));

    boolean converted = true;

    @Nullable
    PriceRange converterPrice;

    List<Limit> limits = List.of();

    @Nullable
    FrequencyRange converterLineRate;

    HalfHeight converterHalfHeight = HalfHeight.SHOWN;
    List<Integer> samples = List.of(1364);
    /** In place of the list of samples. */
    SamplesPerLine.@Nullable FreeRange sampleRange;

    int settingsPerRoute = 1;
    Fact jitter = Fact.known(1);
    Processing processing = Workbench.scale(2, List.of(Workbench.locked(6000, null)), 16);
    LinkKind link = LinkKind.HDMI;
    Frequency maxSampleRate = Frequency.ofHz(110_000_000);

    /** In place of the digital output. */
    @Nullable
    ConverterOutput converterOutput;

    boolean repetition = true;
    Frequency converterMaxTmdsClock = Frequency.ofHz(165_000_000);
    Fact converterResync = Fact.known(300);
    Fact settingsToTune = Fact.known(4);

    DisplayClass displayClass = DisplayClass.TELEVISION;
    Panel panel = new Panel.Grid(1920, 1080, null, Panel.Filter.NEAREST);
    Plug displayPlug = HDMI;
    HalfHeight displayHalfHeight = HalfHeight.SHOWN;
    List<Integer> vics = List.of(16, 4, 31);
    boolean sinkKnown = true;

    @Nullable
    FrequencyRange displayLineRate;

    @Nullable
    FrequencyRange displayFieldRate;

    @Nullable
    Frequency displayMaxTmdsClock = Frequency.ofHz(165_000_000);

    List<AspectControl> controls = List.of(AspectControl.SIGNALLED);
    Fact overscanPercent = Fact.known(0);
    Fact displayResync = Fact.known(2000);
    List<LagReading> lag = List.of(reading(LagReading.Method.SPLIT_SIGNAL));
    /** What the owner of the display found out. */
    OwnEvidence own = OwnEvidence.NONE;

    List<String> assumptions = List.of();
    PixelAspectConvention pixelAspect = PixelAspectConvention.BROADCAST;
    MatchRequest.Explanation explain = MatchRequest.Explanation.SUMMARY;
    final Map<Criterion, Double> weights = new EnumMap<>(Criterion.class);

    static Link cable(String id, Plug from, Plug to, Fact bandwidth) {
        PriceRange price =
                new PriceRange(new Money(new BigDecimal("18"), "EUR"), new Money(new BigDecimal("18"), "EUR"), null);
        return Link.cable(
                id,
                id,
                from,
                to,
                List.of(new Carried(Format.RGB, Set.of()), new Carried(Format.TMDS, Set.of())),
                price,
                bandwidth);
    }

    /** 10 [9–12] ms at the top row at any timing. */
    static LagReading reading(LagReading.Method method) {
        return new LagReading(
                null, new Fact.Within(Rational.of(9), Rational.of(10), Rational.of(12)), method, null, Basis.MEASURED);
    }

    /** @param more links beside the leads */
    MatchResult match(Link... more) {
        List<Link> links = new ArrayList<>(List.of(more));
        if (lead != null) {
            links.add(lead);
        }
        if (last != null) {
            links.add(last);
        }
        MatchRequest request = new MatchRequest(
                "Console",
                new Variant("console", null, null, null, List.of(output()), modes),
                display(),
                new MatchRequest.Equipment(false, converted ? List.of(converter()) : List.of(), links),
                Intent.EVEN_WEIGHTS,
                weights,
                limits,
                pixelAspect,
                explain,
                10_000,
                settingsPerRoute);
        return new Matcher(WorkLimit.DEFAULT).match(request, Catalogue.EMPTY);
    }

    private SourceOutput output() {
        SyncKind sync = format.isDigital() ? null : SyncKind.COMPOSITE_SYNC;
        return new SourceOutput("out", outputPlug, format, sync, null, Level.VIDEO_75_OHM, sourceBandwidth);
    }

    private Converter converter() {
        Digitiser digitiser = new Digitiser(
                maxSampleRate,
                sampleRange != null ? sampleRange : new SamplesPerLine.FixedList(samples),
                32,
                List.of(Frequency.ofHz(35_000_000)),
                jitter);
        ConverterInput input = new ConverterInput(
                "in",
                format.isDigital() ? HDMI : SCART,
                Level.VIDEO_75_OHM,
                List.of(new Carried(format, Set.of())),
                converterLineRate,
                null,
                EnumSet.allOf(Scan.class),
                converterHalfHeight,
                Fact.unknown(),
                Rational.of(2000),
                format.isDigital() ? null : digitiser);
        return new Converter(
                "box",
                "Box",
                converterPrice,
                List.of(input),
                List.of(processing),
                List.of(
                        converterOutput != null
                                ? converterOutput
                                : new ConverterOutput.Digital("out", HDMI, link, converterMaxTmdsClock, repetition)),
                converterResync,
                settingsToTune);
    }

    private Display display() {
        List<SinkLimits.ListedRaster> listed = new ArrayList<>();
        for (int vic : vics) {
            listed.addAll(SinkLimitsReader.listed("vic:" + vic, Cta861.find(vic).orElseThrow()));
        }
        SinkLimits sink = new SinkLimits(
                listed,
                new FrequencyRange(Frequency.ofHz(48), Frequency.ofHz(62)),
                new FrequencyRange(Frequency.ofHz(15_000), Frequency.ofHz(68_000)),
                Frequency.ofHz(150_000_000),
                false,
                displayMaxTmdsClock,
                LinkKind.HDMI);
        DisplayInput input = new DisplayInput(
                "in",
                null,
                displayPlug,
                Level.VIDEO_75_OHM,
                List.of(new Carried(displayPlug.equals(HDMI) ? Format.TMDS : Format.RGB, Set.of())),
                displayLineRate,
                displayFieldRate,
                EnumSet.allOf(Scan.class),
                displayHalfHeight,
                Rational.of(2000),
                sinkKnown ? sink : null,
                controls,
                overscanPercent,
                displayResync,
                lag,
                null,
                own);
        return new Display("screen", "Screen", displayClass, panel, List.of(input), assumptions);
    }
}
