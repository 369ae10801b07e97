package rasterfit.app.match;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rasterfit.app.belongings.Owned;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.ProvenancePaths;
import rasterfit.app.gear.Range;
import rasterfit.app.gear.RequiredMembers;
import rasterfit.app.match.MatchRequestBody.EquipmentBody;
import rasterfit.app.match.MatchRequestBody.WeightsBody;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Link;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.match.Limit;
import rasterfit.match.MatchRequest;
import rasterfit.match.PixelAspectConvention;
import rasterfit.rule.Finding;

/** Reads a request against a catalogue, with all faults told at once. */
final class RequestReader {
    private static final int MOST_LIMITS = 32;
    private static final Range TOP = Range.of("1", "1000", "setups");
    private static final Range SETTINGS_PER_ROUTE = Range.of("1", "100", "settings");
    private static final Range WEIGHT = Range.of("0", "1000000", "");

    private final Faults faults = new Faults();
    private final Catalogue catalogue;
    private final Function<String, Optional<Owned>> collections;

    /** @param collections finds those of whoever asks, by id */
    RequestReader(Catalogue catalogue, Function<String, Optional<Owned>> collections) {
        this.catalogue = catalogue;
        this.collections = collections;
    }

    /** @throws rasterfit.app.problem.ProblemException with every fault of the request */
    ReadRequest read(MatchRequestBody body) {
        RequiredMembers.check(body);
        Place root = Place.root(faults);
        ProvenancePaths.check(root, body);
        NamedCollection collection = collection(root.member("equipment").member("collectionId"), body.equipment());
        ChosenSource source = new SourceChooser(catalogue, collection).choose(root.member("source"), body.source());
        ChosenDisplay display =
                new DisplayChooser(catalogue, collection).choose(root.member("display"), body.display());
        MatchRequest.Equipment described = equipment(root.member("equipment"), body.equipment());
        Intent intent = body.intent() == null ? Intent.EVEN_WEIGHTS : body.intent();
        Map<Criterion, Double> weights = weights(root.member("weights"), intent, body.weights());
        List<Limit> limits = root.member("limits").each(body.limits(), 0, MOST_LIMITS, LimitReader::read);
        int top = count(root.member("top"), body.top(), 5, TOP);
        int perRoute = count(root.member("settingsPerRoute"), body.settingsPerRoute(), 1, SETTINGS_PER_ROUTE);
        faults.throwIfAny();
        ChosenSource console = Objects.requireNonNull(source);
        ChosenDisplay screen = Objects.requireNonNull(display);
        Owned owned = collection.owned();
        MatchRequest request = new MatchRequest(
                console.name(),
                console.variant(),
                screen.display(),
                owned == null ? described : OwnedGear.beside(described, owned),
                intent,
                weights,
                limits,
                body.pixelAspect() == null ? PixelAspectConvention.BROADCAST : body.pixelAspect(),
                body.explain() == null ? MatchRequest.Explanation.SUMMARY : body.explain(),
                top,
                perRoute,
                owned == null ? MatchRequest.Owned.NOTHING : owned(console, screen, owned));
        return new ReadRequest(request, owned == null ? null : owned.revision());
    }

    private static MatchRequest.Owned owned(ChosenSource source, ChosenDisplay display, Owned owned) {
        List<Finding> findings = new ArrayList<>(OwnedGear.missing(owned));
        findings.addAll(display.findings());
        return new MatchRequest.Owned(source.owned(), display.owned(), OwnedGear.parts(owned), findings);
    }

    private NamedCollection collection(Place at, @Nullable EquipmentBody body) {
        String id = body == null ? null : body.collectionId();
        if (id == null) {
            return new NamedCollection(null, false);
        }
        Optional<Owned> owned = collections.apply(id);
        if (owned.isEmpty()) {
            at.invalid("There is no collection with this id.");
        }
        return new NamedCollection(owned.orElse(null), true);
    }

    /** The catalogue without what a request describes itself under the same id. */
    static Catalogue without(Catalogue catalogue, MatchRequest.Equipment inline) {
        boolean describesNothing =
                inline.converters().isEmpty() && inline.links().isEmpty();
        if (describesNothing || !inline.fromCatalogue()) {
            return catalogue;
        }
        List<String> converters =
                inline.converters().stream().map(Converter::id).toList();
        List<String> links = inline.links().stream().map(Link::id).toList();
        return Catalogue.of(
                catalogue.revision(),
                catalogue.sources().values(),
                catalogue.displays().values(),
                catalogue.converters().values().stream()
                        .filter(converter -> !converters.contains(converter.id()))
                        .toList(),
                catalogue.links().values().stream()
                        .filter(link -> !links.contains(link.id()))
                        .toList());
    }

    private static MatchRequest.Equipment equipment(Place at, @Nullable EquipmentBody body) {
        if (body == null) {
            return new MatchRequest.Equipment(true, List.of(), List.of());
        }
        Boolean fromCatalogue = body.fromCatalogue();
        return new MatchRequest.Equipment(
                fromCatalogue == null ? body.collectionId() == null : fromCatalogue,
                GearReader.inlineConverters(at.member("converters"), body.converters()),
                GearReader.inlineLinks(at.member("links"), body.links()));
    }

    private static int count(Place at, @Nullable BigDecimal written, int otherwise, Range range) {
        return written == null ? otherwise : at.count(written, range);
    }

    private static Map<Criterion, Double> weights(Place at, Intent intent, @Nullable WeightsBody body) {
        if (body == null) {
            return Map.of();
        }
        Map<Criterion, Double> weights = new EnumMap<>(Criterion.class);
        for (Weight weight : written(body)) {
            if (weight.value() != null) {
                double value = at.member(weight.criterion().id())
                        .number(weight.value(), WEIGHT)
                        .toDouble();
                weights.put(weight.criterion(), value);
            }
        }
        Map<Criterion, Double> all = new EnumMap<>(intent.weights());
        all.putAll(weights);
        if (at.isSound() && all.values().stream().allMatch(value -> value == 0)) {
            at.invalid("At least one criterion needs a weight above 0.");
        }
        return weights;
    }

    private record Weight(Criterion criterion, @Nullable BigDecimal value) {}

    private static List<Weight> written(WeightsBody body) {
        List<Weight> weights = new ArrayList<>();
        weights.add(new Weight(Criterion.DOT_UNIFORMITY, body.dotUniformity()));
        weights.add(new Weight(Criterion.ASPECT, body.aspect()));
        weights.add(new Weight(Criterion.COVERAGE, body.coverage()));
        weights.add(new Weight(Criterion.MOTION, body.motion()));
        weights.add(new Weight(Criterion.LATENCY, body.latency()));
        weights.add(new Weight(Criterion.ACCEPTANCE, body.acceptance()));
        weights.add(new Weight(Criterion.LINK_DETAIL, body.linkDetail()));
        weights.add(new Weight(Criterion.MODE_SWITCH_GAP, body.modeSwitchGap()));
        weights.add(new Weight(Criterion.EFFORT, body.effort()));
        weights.add(new Weight(Criterion.COST, body.cost()));
        return weights;
    }
}
