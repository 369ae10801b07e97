package rasterfit.sensitivity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Link;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchRequest.Equipment;

/** What is matched, and where its equipment comes from. What a request describes goes before what is catalogued. */
record Shelf(MatchRequest request, Catalogue catalogue) {
    Link link(String id) {
        return find(request.equipment().links(), catalogue.links().get(id), Link::id, id);
    }

    Converter converter(String id) {
        return find(request.equipment().converters(), catalogue.converters().get(id), Converter::id, id);
    }

    private static <T> T find(List<T> described, @Nullable T catalogued, Function<T, String> idOf, String id) {
        return Stream.concat(
                        described.stream().filter(each -> idOf.apply(each).equals(id)), Stream.ofNullable(catalogued))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("a route uses the unknown part " + id));
    }

    /** With every link of that id changed. */
    Shelf withLink(String id, UnaryOperator<Link> change) {
        Equipment equipment = request.equipment();
        return with(
                new Equipment(
                        equipment.fromCatalogue(),
                        equipment.converters(),
                        changed(equipment.links(), Link::id, id, change)),
                catalogue.converters().values(),
                changed(catalogue.links().values(), Link::id, id, change));
    }

    /** With every converter of that id changed. */
    Shelf withConverter(String id, UnaryOperator<Converter> change) {
        Equipment equipment = request.equipment();
        return with(
                new Equipment(
                        equipment.fromCatalogue(),
                        changed(equipment.converters(), Converter::id, id, change),
                        equipment.links()),
                changed(catalogue.converters().values(), Converter::id, id, change),
                catalogue.links().values());
    }

    private Shelf with(Equipment equipment, Collection<Converter> converters, Collection<Link> links) {
        return new Shelf(
                request.withEquipment(equipment),
                Catalogue.of(
                        catalogue.revision(),
                        catalogue.sources().values(),
                        catalogue.displays().values(),
                        converters,
                        links));
    }

    private static <T> List<T> changed(
            Collection<T> all, Function<T, String> idOf, String id, UnaryOperator<T> change) {
        List<T> changed = new ArrayList<>();
        for (T each : all) {
            changed.add(idOf.apply(each).equals(id) ? change.apply(each) : each);
        }
        return changed;
    }
}
