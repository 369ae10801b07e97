package rasterfit.remedy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Link;
import rasterfit.gear.PriceRange;
import rasterfit.gear.Variant;
import rasterfit.match.Intent;
import rasterfit.match.Limit;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.quantity.Rational;

/**
 * The single changes that are worth a run, in the order in which they are tried: what costs nothing before what has to be
 * bought, the cheaper before the dearer.
 */
final class Trials {
    private static final Comparator<Link> LINKS =
            Comparator.comparing((Link link) -> middle(link.price())).thenComparing(Link::id);
    private static final Comparator<Converter> CONVERTERS = Comparator.comparing(
                    (Converter converter) -> middle(converter.price()))
            .thenComparing(Converter::id);
    /** Behind everything that has a price. */
    private static final BigDecimal UNKNOWN = new BigDecimal("1e30");

    private final MatchRequest request;
    private final List<Trial> trials = new ArrayList<>();

    private Trials(MatchRequest request) {
        this.request = request;
    }

    /**
     * @param request answers with the best setup of every route
     * @param everyLimit whether limits that refused nothing are of interest too
     */
    static List<Trial> of(
            MatchRequest request, Others others, Catalogue catalogue, MatchResult result, boolean everyLimit) {
        Trials trials = new Trials(request);
        trials.limits(result, everyLimit);
        others.inputs().forEach(trials::input);
        others.variants().forEach(trials::variant);
        if (!request.equipment().fromCatalogue()) {
            trials.gear(catalogue);
        }
        return trials.trials;
    }

    private void limits(MatchResult result, boolean everyLimit) {
        for (RefusalGroup group : result.refused()) {
            for (Limit limit : limits()) {
                if (limit.ruleId().equals(group.rule().id())) {
                    MatchResult.Nearest nearest = group.nearest();
                    if (nearest != null && !limit.isKeptBy(nearest.value())) {
                        relaxed(limit, limit.relaxedTo(nearest.value()));
                    }
                    relaxed(limit, null);
                }
            }
        }
        if (everyLimit) {
            limits().forEach(limit -> relaxed(limit, null));
        }
    }

    /**
     * The limit of a dropped one moved so far that the best setup which breaks it keeps it.
     *
     * @param changed what was ranked without the limit
     */
    static Optional<Trial> asNeeded(MatchRequest request, Trial.RelaxedLimit dropped, MatchResult changed) {
        Limit limit = dropped.limit();
        for (RankedSetup setup : changed.ranked()) {
            Rational value = WorstValue.of(limit, setup).orElse(null);
            if (value != null && !limit.isKeptBy(value)) {
                Trials trials = new Trials(request);
                trials.relaxed(limit, limit.relaxedTo(value));
                return Optional.of(trials.trials.get(0));
            }
        }
        return Optional.empty();
    }

    private List<Limit> limits() {
        return Stream.concat(request.limits().stream(), request.intent().limits().stream())
                .toList();
    }

    /** A limit of the intent can only be changed where weights and limits stand in the request itself. */
    private void relaxed(Limit limit, @Nullable Limit to) {
        List<Limit> own = request.limits();
        MatchRequest changed = own.contains(limit)
                ? request.withJudgement(request.intent(), request.weights(), replaced(own, limit, to))
                : request.withJudgement(Intent.EVEN_WEIGHTS, request.allWeights(), replaced(limits(), limit, to));
        Trial trial = new Trial.RelaxedLimit(changed, limit, to);
        if (!trials.contains(trial)) {
            trials.add(trial);
        }
    }

    private static List<Limit> replaced(List<Limit> limits, Limit limit, @Nullable Limit to) {
        List<Limit> all = new ArrayList<>();
        for (Limit each : limits) {
            if (!each.equals(limit)) {
                all.add(each);
            } else if (to != null) {
                all.add(to);
            }
        }
        return all;
    }

    private void input(DisplayInput input) {
        trials.add(new Trial.OtherInput(request.withDisplay(request.display().with(List.of(input))), input));
    }

    private void variant(Variant variant) {
        trials.add(new Trial.OtherVariant(
                request.withSource(variant), variant, request.source().id()));
    }

    private void gear(Catalogue catalogue) {
        MatchRequest.Equipment equipment = request.equipment();
        Sockets sockets = Sockets.of(request);
        Set<String> links = equipment.links().stream().map(Link::id).collect(Collectors.toSet());
        catalogue.links().values().stream()
                .filter(link -> !links.contains(link.id()) && sockets.fits(link))
                .sorted(LINKS)
                .forEach(link -> trials.add(new Trial.AddedLink(
                        request.withEquipment(new MatchRequest.Equipment(
                                false, equipment.converters(), with(equipment.links(), link))),
                        link)));
        Set<String> converters =
                equipment.converters().stream().map(Converter::id).collect(Collectors.toSet());
        catalogue.converters().values().stream()
                .filter(converter -> !converters.contains(converter.id()) && sockets.fits(converter))
                .sorted(CONVERTERS)
                .forEach(converter -> trials.add(new Trial.AddedConverter(
                        request.withEquipment(new MatchRequest.Equipment(
                                false, with(equipment.converters(), converter), equipment.links())),
                        converter)));
    }

    private static <T> List<T> with(List<T> all, T more) {
        List<T> longer = new ArrayList<>(all);
        longer.add(more);
        return longer;
    }

    private static BigDecimal middle(@Nullable PriceRange price) {
        return price == null
                ? UNKNOWN
                : price.least().amount().add(price.greatest().amount());
    }
}
