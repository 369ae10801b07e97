package rasterfit.app.collection;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.app.collection.OwnItemBody.ItemKind;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Source;
import rasterfit.gear.Variant;

/** Reads owned items against the catalogue. */
final class ItemReader {
    private static final String WAYS =
            "An item is named by kind and catalogueId, or described in one of source, display,"
                    + " converter and link.";

    private final Catalogue catalogue;

    ItemReader(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    /**
     * Notes what is wrong. What the catalogue lacks is wrong where it is named anew, and stays as it is where it was there when
     * it was named.
     *
     * @param before the item as it is stored; absent if it is new
     */
    void read(Place at, String id, OwnItemBody body, @Nullable OwnItem before) {
        at.member("name").optionalText(body.name());
        at.member("hardwareRevision").optionalText(body.hardwareRevision());
        at.member("firmware").optionalText(body.firmware());
        at.member("serialNumber").optionalText(body.serialNumber());
        at.member("note").optionalText(body.note());
        Days.check(at.member("acquiredOn"), body.acquiredOn());
        if (body.paid() != null) {
            GearReader.priceAt(at.member("paid"), body.paid());
        }
        OwnItem item = item(at, id, body);
        if (item == null) {
            return;
        }
        boolean isAsBefore = before != null && item.isSameGearAs(before);
        if (item.isMissing() && !isAsBefore) {
            at.member("catalogueId").invalid("The catalogue has no " + item.kind() + " with this id.");
        }
        if (item.variantId() != null && item.kind() != ItemKind.SOURCE) {
            at.member("variantId").invalid("Only a console has variants.");
        } else if (item.source() != null && item.isLost() && !isAsBefore) {
            at.member("variantId")
                    .invalid("The source has no variant with this id; it has " + variants(item.source()) + ".");
        }
    }

    /** As it was written when it was sound; the catalogue may lack it by now. */
    @Nullable
    OwnItem item(Place at, String id, OwnItemBody body) {
        long described = Stream.of(body.source(), body.display(), body.converter(), body.link())
                .filter(one -> one != null)
                .count();
        boolean isNamed = body.catalogueId() != null;
        if (described + (isNamed ? 1 : 0) != 1 || isNamed != (body.kind() != null)) {
            at.wrongForm(WAYS);
            return null;
        }
        return isNamed ? named(id, body, body.catalogueId(), body.kind()) : described(at, id, body);
    }

    private OwnItem named(String id, OwnItemBody body, @Nullable String catalogueId, @Nullable ItemKind kind) {
        return new OwnItem(
                id,
                kind == null ? ItemKind.LINK : kind,
                catalogueId,
                body.variantId(),
                body.firmware(),
                kind == ItemKind.SOURCE ? catalogue.sources().get(catalogueId) : null,
                kind == ItemKind.DISPLAY ? catalogue.displays().get(catalogueId) : null,
                kind == ItemKind.CONVERTER ? catalogue.converters().get(catalogueId) : null,
                kind == ItemKind.LINK ? catalogue.links().get(catalogueId) : null);
    }

    private static @Nullable OwnItem described(Place at, String id, OwnItemBody body) {
        var source = body.source() == null ? null : GearReader.source(at.member("source"), body.source(), id);
        var display = body.display() == null ? null : GearReader.display(at.member("display"), body.display(), id);
        var converter =
                body.converter() == null ? null : GearReader.converter(at.member("converter"), body.converter(), id);
        var link = body.link() == null ? null : GearReader.link(at.member("link"), body.link(), id);
        ItemKind kind = body.source() != null
                ? ItemKind.SOURCE
                : body.display() != null
                        ? ItemKind.DISPLAY
                        : body.converter() != null ? ItemKind.CONVERTER : ItemKind.LINK;
        return source == null && display == null && converter == null && link == null
                ? null
                : new OwnItem(id, kind, null, body.variantId(), body.firmware(), source, display, converter, link);
    }

    private static String variants(Source source) {
        return source.variants().stream().map(Variant::id).collect(Collectors.joining(", "));
    }
}
