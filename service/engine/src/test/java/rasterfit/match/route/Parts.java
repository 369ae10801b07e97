package rasterfit.match.route;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Carried;
import rasterfit.gear.Connector;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Panel;
import rasterfit.gear.Plug;
import rasterfit.gear.PriceRange;
import rasterfit.gear.Processing;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Variant;
import rasterfit.match.Intent;
import rasterfit.match.MatchRequest;
import rasterfit.match.Modes;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Money;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Outputs, leads, boxes and screens of which only the joints matter. */
final class Parts {
    private static final Rational RESOLUTION_PPM = Rational.of(2000);

    private Parts() {}

    static Plug plug(String connector) {
        return new Plug(new Connector(connector), null);
    }

    static Plug plug(String connector, String wiring) {
        return new Plug(new Connector(connector), wiring);
    }

    static List<Carried> all(Format... formats) {
        return Arrays.stream(formats)
                .map(format -> new Carried(format, Set.of()))
                .toList();
    }

    static SourceOutput output(String id, Plug plug, Format format, @Nullable SyncKind sync, Level level) {
        return new SourceOutput(id, plug, format, sync, null, level, Fact.unknown());
    }

    static SourceOutput rgb(Plug plug) {
        return output("rgb", plug, Format.RGB, SyncKind.COMPOSITE_SYNC, Level.VIDEO_75_OHM);
    }

    static Link cable(String id, Plug from, Plug to, Format... formats) {
        return link(id, Link.Kind.CABLE, from, to, null, formats);
    }

    static Link link(String id, Link.Kind kind, Plug from, Plug to, @Nullable PriceRange price, Format... formats) {
        return new Link(id, id, kind, from, to, all(formats), List.of(), price, Fact.unknown(), Fact.unknown(), null);
    }

    static Converter converter(String id, @Nullable PriceRange price, Plug in, Level level, ConverterOutput... out) {
        ConverterInput input = new ConverterInput(
                "in",
                in,
                level,
                all(Format.RGB),
                null,
                null,
                EnumSet.allOf(Scan.class),
                HalfHeight.SHOWN,
                Fact.unknown(),
                RESOLUTION_PPM,
                null);
        return new Converter(
                id,
                id,
                price,
                List.of(input),
                List.of(new Processing.FormatOnly("pass", Fact.unknown())),
                List.of(out),
                Fact.unknown(),
                Fact.unknown());
    }

    static ConverterOutput digitalOut(Plug plug) {
        return new ConverterOutput.Digital("digital", plug, LinkKind.HDMI, Frequency.ofHz(165_000_000), true);
    }

    static ConverterOutput analogOut(Plug plug, SyncKind sync, Level level) {
        return new ConverterOutput.Analog("analog", plug, Format.RGB, sync, level, null);
    }

    static DisplayInput input(String id, @Nullable String state, @Nullable Plug plug, Level level, Carried... accepts) {
        return new DisplayInput(
                id,
                state,
                plug,
                level,
                List.of(accepts),
                null,
                null,
                EnumSet.allOf(Scan.class),
                HalfHeight.SHOWN,
                RESOLUTION_PPM,
                null,
                List.of(AspectControl.FILL),
                Fact.unknown(),
                Fact.unknown(),
                List.of(),
                null);
    }

    static DisplayInput input(String id, @Nullable Plug plug, Format... accepts) {
        return input(id, null, plug, Level.VIDEO_75_OHM, all(accepts).toArray(Carried[]::new));
    }

    static Display display(DisplayInput... inputs) {
        return new Display(
                "tube", "Tube", DisplayClass.TUBE, new Panel.Tube(Rational.of(4, 3)), List.of(inputs), List.of());
    }

    static PriceRange price(String least, String greatest, String currency) {
        return new PriceRange(
                new Money(new BigDecimal(least), currency), new Money(new BigDecimal(greatest), currency), null);
    }

    static List<Route> routes(Display display, List<SourceOutput> outputs, List<Converter> converters, Link... links) {
        return routes(Set.of(), display, outputs, converters, links);
    }

    /** @param owned ids of converters and links */
    static List<Route> routes(
            Set<String> owned, Display display, List<SourceOutput> outputs, List<Converter> converters, Link... links) {
        MatchRequest request = new MatchRequest(
                "Console",
                new Variant("console", null, null, null, outputs, List.of(Modes.half525())),
                display,
                new MatchRequest.Equipment(false, List.of(), List.of()),
                Intent.EVEN_WEIGHTS,
                Map.of(),
                List.of(),
                PixelAspectConvention.BROADCAST,
                MatchRequest.Explanation.SUMMARY,
                1,
                1,
                new MatchRequest.Owned(false, false, owned, List.of()));
        return RouteFinder.find(request, converters, List.of(links));
    }
}
