package rasterfit.match.worked;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
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
import rasterfit.gear.LineStandard;
import rasterfit.gear.Link;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Panel;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Plug;
import rasterfit.gear.PriceRange;
import rasterfit.gear.Processing;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.SinkLimitsReader;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Variant;
import rasterfit.gear.Window;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.match.Limit;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.Matcher;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.WorkLimit;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Money;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Scan;
import rasterfit.timing.VideoTiming;

/**
 * What the worked examples share.
 *
 * <p>The 60 Hz console: dot clock 3/2 · 315/88 MHz = 59.0625/11 MHz = 5.369 318 MHz, 341 dots a line, 262 lines: line
 * rate 15 745.801 Hz (63.508 995 µs), field rate 60.098 478 Hz (T = 16.639 357 ms). A dot on the tube is (135/11)/2 :
 * 59.0625/11 = 67.5/59.0625 = 8/7 wide.
 *
 * <p>The link: an amplifier of 6 MHz, a lead of 50 MHz and (before a digitiser) a filter of 35 MHz pass
 * 1/√(1/36 + 1/2500 + 1/1225) = 1/√0.028 994 104 = 1/0.170 276 55 = 5.872 799 MHz; rise time 0.35/5.872 799 MHz =
 * 59.596 793 ns. Jitter: 1 ns of the digitiser and 2 ns of the separator that finds the sync in composite video. So an
 * edge is soft over 62.596 793 ns: 0.336 102 101 of a dot of 5.369 318 MHz.
 *
 * <p>The lead costs 18 EUR. All devices are invented.
 */
final class Gear {
    /** 5.369 318 MHz · 62.596 793 ns. */
    static final double SOFTNESS = 0.336102100666;

    /** 5.872 799 MHz in whole hertz. */
    static final long LINK_HZ = 5_872_799;

    private static final Plug CONSOLE = new Plug(new Connector("own:console-av"), null);
    private static final Plug SCART = new Plug(new Connector("SCART"), null);
    private static final Plug DIGITAL = new Plug(new Connector("HDMI"), null);
    private static final Rational RESOLUTION_PPM = Rational.of(2000);

    private Gear() {}

    /** 256 dots by 240 lines from dot 65, line 18. */
    static Mode half525(Window used) {
        return mode(LineStandard.L525_60, "59062500/11", "341", "262", new Window(256, 240, 65, 18), used);
    }

    static Mode mode(LineStandard standard, String dotClockHz, String dots, String lines, Window active, Window used) {
        Rational linesPerField = Rational.parse(lines);
        return new Mode(
                "picture",
                standard,
                Frequency.parseHz(dotClockHz),
                Rational.parse(dots),
                linesPerField,
                linesPerField.isWhole() ? Scan.PROGRESSIVE : Scan.INTERLACED,
                Rational.ONE,
                false,
                active,
                used,
                false,
                PictureShape.TUBE_4_3);
    }

    static Digitiser digitiser(long maxHz, Integer... samples) {
        return new Digitiser(
                Frequency.ofHz(maxHz),
                new SamplesPerLine.FixedList(List.of(samples)),
                32,
                List.of(Frequency.ofHz(35_000_000)),
                Fact.known(1));
    }

    static ConverterOutput digitalOut(LinkKind link, boolean repetition) {
        return new ConverterOutput.Digital("out", DIGITAL, link, Frequency.ofHz(165_000_000), repetition);
    }

    /** 300 ms to follow a new raster. */
    static Converter converter(
            Digitiser digitiser, Processing processing, ConverterOutput output, int toTune, String least, String most) {
        ConverterInput input = new ConverterInput(
                "in",
                SCART,
                Level.VIDEO_75_OHM,
                List.of(new Carried(Format.RGB, Set.of())),
                new FrequencyRange(Frequency.ofHz(15_000), Frequency.ofHz(16_500)),
                new FrequencyRange(Frequency.ofHz(47), Frequency.ofHz(63)),
                EnumSet.allOf(Scan.class),
                HalfHeight.SHOWN,
                Fact.unknown(),
                RESOLUTION_PPM,
                digitiser);
        return new Converter(
                "box",
                "Box",
                price(least, most),
                List.of(input),
                List.of(processing),
                List.of(output),
                Fact.known(300),
                Fact.known(toTune));
    }

    static OfferedTiming offered(int vic) {
        VideoTiming timing = Cta861.find(vic).orElseThrow();
        return new OfferedTiming("vic:" + vic, timing.timing(), timing.pictureAspect());
    }

    private static PriceRange price(String least, String greatest) {
        return new PriceRange(
                new Money(new BigDecimal(least), "EUR"), new Money(new BigDecimal(greatest), "EUR"), null);
    }

    /** HDMI up to 165 MHz; limits 48–62 Hz, 15–68 kHz, 150 MHz, not continuous. */
    static SinkLimits television(int... vics) {
        List<SinkLimits.ListedRaster> listed = new ArrayList<>();
        for (int vic : vics) {
            listed.addAll(SinkLimitsReader.listed("vic:" + vic, Cta861.find(vic).orElseThrow()));
        }
        return new SinkLimits(
                listed,
                new FrequencyRange(Frequency.ofHz(48), Frequency.ofHz(62)),
                new FrequencyRange(Frequency.ofHz(15_000), Frequency.ofHz(68_000)),
                Frequency.ofHz(150_000_000),
                false,
                Frequency.ofHz(165_000_000),
                LinkKind.HDMI);
    }

    /** A grid that shows raster columns and rows without interpolating. */
    static Display screen(
            DisplayClass displayClass,
            int columns,
            int rows,
            AspectControl control,
            Fact overscanPercent,
            SinkLimits sink,
            List<LagReading> lag,
            @Nullable Boolean lowDelay) {
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
                List.of(control),
                overscanPercent,
                Fact.unknown(),
                lag,
                lowDelay);
        Panel panel = new Panel.Grid(columns, rows, null, Panel.Filter.NEAREST);
        return new Display("screen", "Screen", displayClass, panel, List.of(input), List.of());
    }

    /** A 4:3 tube with an RGB input of 15.5–15.85 kHz and 49–61 Hz, of which nothing else is known. */
    static Display tube() {
        DisplayInput input = new DisplayInput(
                "rgb",
                null,
                SCART,
                Level.VIDEO_75_OHM,
                List.of(new Carried(Format.RGB, Set.of())),
                new FrequencyRange(Frequency.ofHz(15_500), Frequency.ofHz(15_850)),
                new FrequencyRange(Frequency.ofHz(49), Frequency.ofHz(61)),
                EnumSet.allOf(Scan.class),
                HalfHeight.SHOWN,
                RESOLUTION_PPM,
                null,
                List.of(AspectControl.FILL),
                Fact.unknown(),
                Fact.unknown(),
                List.of(),
                null);
        return new Display(
                "tube", "Tube", DisplayClass.TUBE, new Panel.Tube(Rational.of(4, 3)), List.of(input), List.of());
    }

    /** The example's request, with the weights of an intent. */
    static MatchResult match(Mode mode, Converter converter, Display display, Intent intent, Limit... limits) {
        return match(mode, List.of(converter), display, intent, Map.of(), 1, limits);
    }

    static MatchResult match(
            Mode mode,
            List<Converter> converters,
            Display display,
            Intent intent,
            Map<Criterion, Double> weights,
            int settingsPerRoute,
            Limit... limits) {
        SourceOutput output = new SourceOutput(
                "rgb",
                CONSOLE,
                Format.RGB,
                SyncKind.SYNC_ON_COMPOSITE,
                null,
                Level.VIDEO_75_OHM,
                Fact.known(6_000_000));
        Link lead = Link.cable(
                "lead",
                "Lead",
                CONSOLE,
                SCART,
                List.of(new Carried(Format.RGB, Set.of())),
                price("18", "18"),
                Fact.known(50_000_000));
        MatchRequest request = new MatchRequest(
                "Console",
                new Variant("console", null, null, null, List.of(output), List.of(mode)),
                display,
                new MatchRequest.Equipment(false, converters, List.of(lead)),
                intent,
                weights,
                List.of(limits),
                PixelAspectConvention.BROADCAST,
                MatchRequest.Explanation.SUMMARY,
                10,
                settingsPerRoute);
        return new Matcher(WorkLimit.DEFAULT).match(request, Catalogue.EMPTY);
    }
}
