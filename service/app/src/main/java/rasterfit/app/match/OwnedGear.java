package rasterfit.app.match;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import rasterfit.app.belongings.Owned;
import rasterfit.gear.Converter;
import rasterfit.gear.Link;
import rasterfit.match.MatchRequest;
import rasterfit.rule.Finding;
import rasterfit.rule.OwnerRules;

/**
 * The converters and links of a collection as the engine takes them. Each gets an id of its own, made of its item's, that
 * no catalogued or described part can have: two pieces of one model stay two, and an owned one stands beside the
 * catalogued one of its kind.
 */
final class OwnedGear {
    /** In front of an item's id; a colon is in no id that is read. */
    private static final String MARK = "owned:";

    private OwnedGear() {}

    /** What is described in the request, and after it what is owned and not described under the same id. */
    static MatchRequest.Equipment beside(MatchRequest.Equipment described, Owned owned) {
        List<Converter> converters = new ArrayList<>(described.converters());
        Set<String> taken = ids(described.converters().stream().map(Converter::id));
        for (Map.Entry<String, Converter> item : owned.converters().entrySet()) {
            if (!taken.contains(item.getKey())) {
                converters.add(with(item.getValue(), MARK + item.getKey()));
            }
        }
        List<Link> links = new ArrayList<>(described.links());
        Set<String> takenByLinks = ids(described.links().stream().map(Link::id));
        for (Map.Entry<String, Link> item : owned.links().entrySet()) {
            if (!takenByLinks.contains(item.getKey())) {
                links.add(item.getValue().withId(MARK + item.getKey()));
            }
        }
        return new MatchRequest.Equipment(described.fromCatalogue(), converters, links);
    }

    private static Set<String> ids(Stream<String> ids) {
        return new HashSet<>(ids.toList());
    }

    /** The ids of all owned parts in {@link #beside}. */
    static Set<String> parts(Owned owned) {
        return ids(Stream.concat(owned.converters().keySet().stream(), owned.links().keySet().stream())
                .map(item -> MARK + item));
    }

    static List<Finding> missing(Owned owned) {
        return owned.missing().stream().map(OwnerRules::missing).toList();
    }

    /** The item's id of an owned part, any other id as it is. */
    static String written(String id) {
        return id.startsWith(MARK) ? id.substring(MARK.length()) : id;
    }

    private static Converter with(Converter converter, String id) {
        return new Converter(
                id,
                converter.name(),
                converter.price(),
                converter.inputs(),
                converter.processing(),
                converter.outputs(),
                converter.resyncMs(),
                converter.settingsToTune());
    }
}
