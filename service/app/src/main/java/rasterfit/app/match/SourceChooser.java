package rasterfit.app.match;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.app.belongings.Owned;
import rasterfit.app.belongings.Owned.OwnedSource;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.SourceBody;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Source;
import rasterfit.gear.Variant;

/** Finds the console that a request means. */
final class SourceChooser {
    private static final String WAYS = "A source is named by catalogueId or itemId, or described by name, outputs and"
            + " modes, or by name and variants.";

    private final Catalogue catalogue;
    private final NamedCollection collection;

    SourceChooser(Catalogue catalogue, NamedCollection collection) {
        this.catalogue = catalogue;
        this.collection = collection;
    }

    @Nullable
    ChosenSource choose(Place at, SourceChoice choice) {
        boolean isNamed = choice.catalogueId() != null || choice.itemId() != null;
        int ways = (choice.catalogueId() != null ? 1 : 0)
                + (choice.itemId() != null ? 1 : 0)
                + (choice.variants() != null ? 1 : 0)
                + (choice.isOneVariant() ? 1 : 0);
        if (ways != 1 || (isNamed && (choice.id() != null || choice.name() != null))) {
            at.wrongForm(WAYS);
            return null;
        }
        if (choice.itemId() != null) {
            return owned(at, choice.itemId(), choice.variantId());
        }
        Source source = isNamed ? catalogued(at.member("catalogueId"), choice.catalogueId()) : described(at, choice);
        return source == null ? null : chosen(at.member("variantId"), source, choice.variantId(), false);
    }

    private @Nullable ChosenSource owned(Place at, String itemId, @Nullable String variantId) {
        OwnedSource item = collection.find(at.member("itemId"), itemId, Owned::sources, "source");
        if (item == null) {
            return null;
        }
        String own = item.variantId();
        if (own != null && variantId != null && !own.equals(variantId)) {
            at.member("variantId").invalid("The item is another variant, " + own + ".");
            return null;
        }
        return chosen(at.member("variantId"), item.source(), own == null ? variantId : own, true);
    }

    private static @Nullable ChosenSource chosen(Place at, Source source, @Nullable String variantId, boolean owned) {
        Variant variant = variant(at, source, variantId);
        if (variant == null) {
            return null;
        }
        List<Variant> others =
                source.variants().stream().filter(each -> !each.equals(variant)).toList();
        return new ChosenSource(source.name(), variant, owned, owned ? List.of() : others);
    }

    private @Nullable Source catalogued(Place at, @Nullable String id) {
        Source source = catalogue.sources().get(id);
        if (source == null) {
            at.invalid("The catalogue has no source with this id.");
        }
        return source;
    }

    private static @Nullable Source described(Place at, SourceChoice choice) {
        if (choice.name() == null) {
            at.member("name").missing("This member is required.");
            return null;
        }
        if (choice.variants() != null) {
            return GearReader.source(at, new SourceBody(choice.id(), choice.name(), choice.variants()), "source");
        }
        if (choice.outputs() == null || choice.modes() == null) {
            at.member(choice.outputs() == null ? "outputs" : "modes").missing("This member is required.");
            return null;
        }
        SourceBody.VariantBody variant = new SourceBody.VariantBody(
                null,
                null,
                choice.region(),
                choice.hardwareRevision(),
                choice.price(),
                choice.outputs(),
                choice.modes(),
                choice.supply(),
                choice.provenance());
        return GearReader.sourceOfOneVariant(at, choice.id(), choice.name(), variant);
    }

    private static @Nullable Variant variant(Place at, Source source, @Nullable String id) {
        List<Variant> variants = source.variants();
        if (id == null && variants.size() == 1) {
            return variants.get(0);
        }
        String known = variants.stream().map(Variant::id).collect(Collectors.joining(", "));
        if (id == null) {
            at.missing("The source has several variants; name one of " + known + ".");
            return null;
        }
        Optional<Variant> variant =
                variants.stream().filter(one -> one.id().equals(id)).findFirst();
        if (variant.isEmpty()) {
            at.invalid("The source has no variant with this id; it has " + known + ".");
        }
        return variant.orElse(null);
    }
}
