package rasterfit.app.gear;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.EdidReading;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Link;
import rasterfit.gear.Panel;
import rasterfit.gear.PriceRange;
import rasterfit.gear.Source;
import rasterfit.timing.Raster;

/**
 * Reads gear from its written form. Every method notes what is wrong at the given place and returns null if it could
 * build nothing; the caller ends with {@link Faults#throwIfAny}. Required members have to be there already ({@link
 * RequiredMembers}).
 */
public final class GearReader {
    /** Most items of one kind in a document or a request (assumption). */
    public static final int MOST_ITEMS = 1000;

    private GearReader() {}

    /** @param defaultId for inline gear without an id; null where an id is required */
    public static @Nullable Source source(Place at, SourceBody body, @Nullable String defaultId) {
        return SourceReader.read(at, body, defaultId);
    }

    /** A console described as its only variant, whose members stand beside its name. */
    public static @Nullable Source sourceOfOneVariant(
            Place at, @Nullable String id, String name, SourceBody.VariantBody variant) {
        return SourceReader.readOneVariant(at, id, name, variant);
    }

    /** @param defaultId for inline gear without an id; null where an id is required */
    public static @Nullable Display display(Place at, DisplayBody body, @Nullable String defaultId) {
        return new DisplayReader(at, body).read(defaultId);
    }

    /** A display of which nothing but the EDID of one input is known. */
    public static @Nullable Display displayFromEdid(Place at, String name, String edidBase64) {
        return EdidDisplay.read(at, name, edidBase64);
    }

    /** The bytes of an EDID in base64; null, and a fault at the place, if it is none. */
    public static byte @Nullable [] edidBytes(Place at, String base64) {
        return EdidText.bytes(at, base64);
    }

    /** What an EDID says; null, and a fault at the place, if the bytes are none. */
    public static @Nullable EdidReading edid(Place at, byte[] bytes) {
        return EdidText.read(at, bytes);
    }

    /** The panel that is taken where an EDID alone is known; absent if the EDID names no raster that a panel can have. */
    public static Optional<Panel.Grid> assumedPanel(EdidReading edid) {
        return Optional.ofNullable(EdidDisplay.panel(edid));
    }

    /** The class that is taken where it is not stated. */
    public static DisplayClass assumedClass(Panel panel, List<EdidReading> edids) {
        return EdidDisplay.assumedClass(panel, edids);
    }

    /** @param defaultId for inline gear without an id; null where an id is required */
    public static @Nullable Converter converter(Place at, ConverterBody body, @Nullable String defaultId) {
        return ConverterReader.read(at, body, defaultId);
    }

    /** @param defaultId for inline gear without an id; null where an id is required */
    public static @Nullable Link link(Place at, LinkBody body, @Nullable String defaultId) {
        return LinkReader.read(at, body, defaultId);
    }

    /** The raster of a numbered timing, such as {@code vic:16}. */
    public static @Nullable Raster numberedTiming(Place at, String reference) {
        NamedTiming timing = TimingReferences.read(at, reference);
        return timing == null ? null : timing.timing().raster();
    }

    /** A price that stands beside gear which has no place for it. */
    public static @Nullable PriceRange price(Place at, @Nullable PriceBody body) {
        return SharedReader.price(at.member("price"), body);
    }

    /** A price on its own. */
    public static @Nullable PriceRange priceAt(Place at, PriceBody body) {
        return SharedReader.price(at, body);
    }

    /** The converters of a request; those without an id are numbered. */
    public static List<Converter> inlineConverters(Place at, @Nullable List<ConverterBody> bodies) {
        List<Converter> converters = at.each(
                bodies, 0, MOST_ITEMS, (place, body) -> converter(place, body, "inline-converter-" + place.number()));
        at.distinct(converters, Converter::id);
        return converters;
    }

    /** The links of a request; those without an id are numbered. */
    public static List<Link> inlineLinks(Place at, @Nullable List<LinkBody> bodies) {
        List<Link> links =
                at.each(bodies, 0, MOST_ITEMS, (place, body) -> link(place, body, "inline-link-" + place.number()));
        at.distinct(links, Link::id);
        return links;
    }

    /** @throws rasterfit.app.problem.ProblemException with every fault of the document */
    public static Catalogue catalogue(CatalogueBody body, long revision) {
        RequiredMembers.check(body);
        Faults faults = new Faults();
        Place root = Place.root(faults);
        ProvenancePaths.check(root, body);
        if (!body.format().equals(CatalogueBody.FORMAT)) {
            root.member("format").unknownValue("The format is " + CatalogueBody.FORMAT + ".");
        }
        List<Source> sources =
                items(root.member("sources"), body.sources(), (at, item) -> source(at, item, null), Source::id);
        List<Display> displays =
                items(root.member("displays"), body.displays(), (at, item) -> display(at, item, null), Display::id);
        List<Converter> converters = items(
                root.member("converters"), body.converters(), (at, item) -> converter(at, item, null), Converter::id);
        List<Link> links = items(root.member("links"), body.links(), (at, item) -> link(at, item, null), Link::id);
        faults.throwIfAny();
        return Catalogue.of(revision, sources, displays, converters, links);
    }

    private static <B, T> List<T> items(
            Place at, @Nullable List<B> bodies, Place.ElementReader<B, T> reader, Function<T, String> id) {
        List<T> items = at.each(bodies, 0, MOST_ITEMS, reader);
        at.distinct(items, id);
        return items;
    }
}
