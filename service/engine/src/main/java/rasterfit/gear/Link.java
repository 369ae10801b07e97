package rasterfit.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A passive cable: it changes the connector, never the format. */
public record Link(
        String id,
        String name,
        Kind kind,
        Plug from,
        Plug to,
        List<Carried> carries,
        @Nullable PriceRange price,
        Fact bandwidthHz) {

    /** Only cables are chained so far; the others are kept with the catalogue. */
    public enum Kind {
        CABLE,
        ADAPTER,
        SWITCH
    }

    public Link {
        carries = List.copyOf(carries);
    }

    /** The same with another bandwidth. */
    public Link withBandwidthHz(Fact other) {
        return new Link(id, name, kind, from, to, carries, price, other);
    }
}
