package rasterfit.app.collection;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.app.collection.ConnectionBody.EndBody;
import rasterfit.app.collection.OwnItem.Port;
import rasterfit.app.gear.Place;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;

/** Reads what is plugged in where: ports that are there, plugs that mate. */
final class ConnectionReader {
    private static final int MOST_LINKS = 16;

    private final Contents contents;

    ConnectionReader(Contents contents) {
        this.contents = contents;
    }

    /** The ports and cables that the connection holds. */
    Set<PortUse> read(Place at, ConnectionBody body) {
        at.member("note").optionalText(body.note());
        Set<PortUse> held = new LinkedHashSet<>();
        Port from = end(at.member("from"), body.from(), true, held);
        Port to = end(at.member("to"), body.to(), false, held);
        if (body.from().item().equals(body.to().item())) {
            at.member("to").member("item").invalid("An item is not connected to itself.");
        }
        List<Link> links = new ArrayList<>();
        at.member("links").each(body.links(), 0, MOST_LINKS, (place, id) -> {
            Link link = laid(place, id);
            if (link != null) {
                links.add(link);
                if (!held.add(new PortUse(id, ""))) {
                    place.invalid("It is named twice.");
                }
            }
            return id;
        });
        if (at.isSound()) {
            mate(at, Objects.requireNonNull(from), links, Objects.requireNonNull(to));
        }
        return held;
    }

    private @Nullable Port end(Place at, EndBody end, boolean gives, Set<PortUse> held) {
        OwnItem item = contents.items().get(end.item());
        if (item == null) {
            at.member("item").invalid("The collection has no item with this id.");
            return null;
        }
        Optional<Port> port = item.port(end.port(), gives);
        if (port.isEmpty()) {
            List<String> known = item.portNames(gives);
            at.member("port")
                    .invalid((gives ? "It gives no signal there" : "It takes no signal there")
                            + (known.isEmpty() ? "." : "; known are " + String.join(", ", known) + "."));
            return null;
        }
        held.add(new PortUse(end.item(), port.get().key()));
        return port.get();
    }

    private @Nullable Link laid(Place at, String id) {
        OwnItem item = contents.items().get(id);
        if (item == null || !item.isLaid()) {
            at.invalid("The collection has no cable or adapter with this id.");
            return null;
        }
        return item.link();
    }

    private static void mate(Place at, Port from, List<Link> links, Port to) {
        Plug end = from.plug();
        for (int i = 0; i < links.size(); i++) {
            Plug next = links.get(i).from();
            if (end != null && !next.mates(end)) {
                at.member("links")
                        .element(i)
                        .invalid(next.connector() + " does not mate with " + end.connector() + ".");
            }
            end = links.get(i).to();
        }
        Plug last = to.plug();
        if (end != null && last != null && !end.mates(last)) {
            at.member("to")
                    .member("port")
                    .invalid(last.connector() + " does not mate with " + end.connector()
                            + "; a cable between them is to be named in links.");
        }
    }
}
