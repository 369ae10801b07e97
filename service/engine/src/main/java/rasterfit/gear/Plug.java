package rasterfit.gear;

import org.jspecify.annotations.Nullable;

/**
 * One side of a joint: the connector and, where stated, how its pins are wired. Two plugs mate when the connectors are
 * equal; a wiring that is not stated fits any.
 */
public record Plug(Connector connector, @Nullable String wiring) {
    public boolean mates(Plug other) {
        return connector.equals(other.connector);
    }

    public boolean isWiredLike(Plug other) {
        return wiring == null || other.wiring == null || wiring.equals(other.wiring);
    }
}
