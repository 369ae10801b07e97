package rasterfit.match;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Carried;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Connector;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Level;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Panel;
import rasterfit.gear.Plug;
import rasterfit.gear.PriceRange;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.ScaleAxis;
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
import rasterfit.timing.VideoTiming;

/** One console, some converters and one display for tests, written with as few words as will do. */
public final class Workbench {
    private static final Plug ANALOG = new Plug(new Connector("SCART"), null);
    private static final Plug DIGITAL = new Plug(new Connector("HDMI"), null);
    private static final Rational RESOLUTION_PPM = Rational.of(2000);

    private final List<Converter> converters = new ArrayList<>();
    private final List<Limit> limits = new ArrayList<>();
    private final Map<Criterion, Double> weights = new LinkedHashMap<>();
    private List<Mode> modes = List.of();
    private Display display = television(0, 16, 31, 4, 19, 2, 17);
    private Intent intent = Intent.EVEN_WEIGHTS;
    private MatchRequest.Explanation explain = MatchRequest.Explanation.SUMMARY;
    private int top = 100;
    private int settingsPerRoute = 1;

    public Workbench modes(Mode... some) {
        modes = List.of(some);
        return this;
    }

    public Workbench converters(Converter... some) {
        converters.addAll(List.of(some));
        return this;
    }

    public Workbench display(Display one) {
        display = one;
        return this;
    }

    public Workbench limits(Limit... some) {
        limits.addAll(List.of(some));
        return this;
    }

    public Workbench weight(Criterion criterion, double weight) {
        weights.put(criterion, weight);
        return this;
    }

    public Workbench intent(Intent one) {
        intent = one;
        return this;
    }

    public Workbench explained() {
        explain = MatchRequest.Explanation.FULL;
        return this;
    }

    public Workbench settingsPerRoute(int count) {
        settingsPerRoute = count;
        return this;
    }

    public Workbench top(int count) {
        top = count;
        return this;
    }

    public MatchRequest request() {
        SourceOutput output = new SourceOutput(
                "rgb", ANALOG, Format.RGB, SyncKind.COMPOSITE_SYNC, null, Level.VIDEO_75_OHM, Fact.known(6_000_000));
        return new MatchRequest(
                "Console",
                new Variant("console", null, null, null, List.of(output), modes),
                display,
                new MatchRequest.Equipment(false, converters, List.of()),
                intent,
                weights,
                limits,
                PixelAspectConvention.BROADCAST,
                explain,
                top,
                settingsPerRoute);
    }

    public MatchResult match() {
        return new Matcher(WorkLimit.DEFAULT).match(request(), Catalogue.EMPTY);
    }

    /** 1920 × 1080, nearest-sample panel, HDMI up to 165 MHz, limits 48–62 Hz, 15–68 kHz, 150 MHz; lag 10 ms. */
    public static Display television(int overscanPercent, int... vics) {
        return grid(1920, 1080, overscanPercent, vics);
    }

    public static Display grid(int columns, int rows, int overscanPercent, int... vics) {
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
                Frequency.ofHz(165_000_000),
                LinkKind.HDMI);
        DisplayInput input = new DisplayInput(
                "digital",
                null,
                DIGITAL,
                Level.VIDEO_75_OHM,
                List.of(new Carried(Format.TMDS, Set.of())),
                null,
                null,
                EnumSet.allOf(Scan.class),
                HalfHeight.SHOWN,
                RESOLUTION_PPM,
                sink,
                List.of(AspectControl.values()),
                Fact.known(overscanPercent),
                Fact.known(2000),
                List.of(new rasterfit.gear.LagReading(
                        null,
                        new Fact.Within(Rational.of(9), Rational.of(10), Rational.of(12)),
                        rasterfit.gear.LagReading.Method.SPLIT_SIGNAL,
                        null,
                        rasterfit.gear.Basis.MEASURED)),
                null);
        return new Display(
                "screen",
                "Screen",
                DisplayClass.TELEVISION,
                new Panel.Grid(columns, rows, null, Panel.Filter.NEAREST),
                List.of(input),
                List.of());
    }

    /** The same display with a single aspect control. */
    public static Display only(AspectControl control, Display display) {
        DisplayInput input = display.inputs().get(0);
        DisplayInput controlled = new DisplayInput(
                input.id(),
                input.state(),
                input.plug(),
                input.level(),
                input.accepts(),
                input.lineRate(),
                input.fieldRate(),
                input.scans(),
                input.halfHeight(),
                input.lineRateResolutionPpm(),
                input.sink(),
                List.of(control),
                input.overscanPercent(),
                input.resyncMs(),
                input.lag(),
                input.lowDelay());
        return new Display(
                display.id(),
                display.name(),
                display.displayClass(),
                display.panel(),
                List.of(controlled),
                display.assumptions());
    }

    /** A 4:3 tube with an RGB input, 15.6–15.8 kHz, 49–61 Hz, no overscan. */
    public static Display tube(int overscanPercent) {
        DisplayInput input = new DisplayInput(
                "rgb",
                null,
                ANALOG,
                Level.VIDEO_75_OHM,
                List.of(new Carried(Format.RGB, Set.of(SyncKind.COMPOSITE_SYNC))),
                new FrequencyRange(Frequency.ofHz(15_500), Frequency.ofHz(15_850)),
                new FrequencyRange(Frequency.ofHz(49), Frequency.ofHz(61)),
                EnumSet.allOf(Scan.class),
                HalfHeight.SHOWN,
                RESOLUTION_PPM,
                null,
                List.of(AspectControl.FILL),
                Fact.known(overscanPercent),
                Fact.unknown(),
                List.of(),
                null);
        return new Display(
                "tube", "Tube", DisplayClass.TUBE, new Panel.Tube(Rational.of(4, 3)), List.of(input), List.of());
    }

    /** Input SCART RGB, output HDMI up to 165 MHz with repetition; 300 ms to resynchronise, 4 settings, 100 EUR. */
    public static Converter converter(String id, @Nullable SamplesPerLine samples, Processing... processing) {
        return converter(id, "100", samples, processing);
    }

    public static Converter converter(
            String id, @Nullable String price, @Nullable SamplesPerLine samples, Processing... processing) {
        Digitiser digitiser = samples == null
                ? null
                : new Digitiser(
                        Frequency.ofHz(110_000_000), samples, 32, List.of(Frequency.ofHz(35_000_000)), Fact.known(1));
        ConverterInput input = new ConverterInput(
                "in",
                ANALOG,
                Level.VIDEO_75_OHM,
                List.of(new Carried(Format.RGB, Set.of())),
                new FrequencyRange(Frequency.ofHz(15_000), Frequency.ofHz(16_500)),
                new FrequencyRange(Frequency.ofHz(47), Frequency.ofHz(63)),
                EnumSet.allOf(Scan.class),
                HalfHeight.SHOWN,
                Fact.unknown(),
                RESOLUTION_PPM,
                digitiser);
        PriceRange range = price == null
                ? null
                : new PriceRange(
                        new Money(new BigDecimal(price), "EUR"), new Money(new BigDecimal(price), "EUR"), null);
        return new Converter(
                id,
                id,
                range,
                List.of(input),
                List.of(processing),
                List.of(new ConverterOutput.Digital("out", DIGITAL, LinkKind.HDMI, Frequency.ofHz(165_000_000), true)),
                Fact.known(300),
                Fact.known(4));
    }

    public static SamplesPerLine samples(Integer... counts) {
        return new SamplesPerLine.FixedList(List.of(counts));
    }

    public static Processing formatOnly() {
        return new Processing.FormatOnly("pass", Fact.known(2));
    }

    /** From 240 or 288 lines; the first copy begins after one line, 2 µs of electronics. */
    public static Processing repeat(int... copies) {
        List<Integer> from240 = new ArrayList<>();
        List<Integer> from288 = new ArrayList<>();
        for (int m : copies) {
            from240.add(240 * m);
            from288.add(288 * m);
        }
        return new Processing.LineRepeat(
                "repeat",
                List.of(
                        new Processing.LineCounts(rasterfit.gear.LineStandard.L525_60, 240, from240),
                        new Processing.LineCounts(rasterfit.gear.LineStandard.L625_50, 288, from288)),
                null,
                Fact.known(1),
                null,
                Processing.InterlacedFields.FIELD_ON_FIELD,
                Fact.known(2));
    }

    /** Any factors, crop of up to 48 lines and 64 dots, 10 µs of electronics, bob for interlaced sources. */
    public static Processing scale(int taps, List<RateLock> locks, int... vics) {
        List<OfferedTiming> offered = new ArrayList<>();
        for (int vic : vics) {
            VideoTiming timing = Cta861.find(vic).orElseThrow();
            offered.add(new OfferedTiming("vic:" + vic, timing.timing(), timing.pictureAspect()));
        }
        return new Processing.RasterScale(
                "scale",
                offered,
                new ScaleAxis(ScaleAxis.Factors.ANY, taps, 48),
                new ScaleAxis(ScaleAxis.Factors.ANY, taps, 64),
                List.of(new Deinterlacer(Deinterlacer.Kind.BOB, Fact.unknown(), false)),
                locks,
                Fact.known(10));
    }

    public static RateLock locked(int pullPpm, @Nullable Integer bufferLines) {
        return new RateLock.SourceLocked(Rational.of(pullPpm), null, bufferLines);
    }

    public static RateLock free(int fieldStores, Frequency... rates) {
        return new RateLock.FreeRunning(List.of(rates), fieldStores);
    }
}
