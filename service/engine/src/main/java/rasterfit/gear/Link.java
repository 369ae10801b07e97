package rasterfit.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A part that joins two others without setting anything: a passive cable, which changes the connector and never the
 * format; an adapter, which may make another signal of it; a switch, which joins several sources to one input.
 *
 * @param carries what passes unchanged
 * @param conversions of an adapter; the first that takes a signal counts
 * @param delayUs of an adapter or a switch
 * @param ports of a switch: how many sources it joins; absent where not stated
 */
public record Link(
        String id,
        String name,
        Kind kind,
        Plug from,
        Plug to,
        List<Carried> carries,
        List<Conversion> conversions,
        @Nullable PriceRange price,
        Fact bandwidthHz,
        Fact delayUs,
        @Nullable Integer ports) {

    /** What it does with a signal. */
    public enum Kind {
        CABLE,
        ADAPTER,
        SWITCH
    }

    public Link {
        carries = List.copyOf(carries);
        conversions = List.copyOf(conversions);
    }

    /** A passive cable. */
    public static Link cable(
            String id,
            String name,
            Plug from,
            Plug to,
            List<Carried> carries,
            @Nullable PriceRange price,
            Fact bandwidthHz) {
        return new Link(id, name, Kind.CABLE, from, to, carries, List.of(), price, bandwidthHz, Fact.unknown(), null);
    }

    /** The same under another id. */
    public Link withId(String other) {
        return new Link(other, name, kind, from, to, carries, conversions, price, bandwidthHz, delayUs, ports);
    }

    /** The same with another bandwidth. */
    public Link withBandwidthHz(Fact other) {
        return new Link(id, name, kind, from, to, carries, conversions, price, other, delayUs, ports);
    }

    /** The same with another delay. */
    public Link withDelayUs(Fact other) {
        return new Link(id, name, kind, from, to, carries, conversions, price, bandwidthHz, other, ports);
    }
}
