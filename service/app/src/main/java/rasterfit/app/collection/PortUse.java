package rasterfit.app.collection;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.io.Serializable;

/**
 * A port that a connection holds.
 *
 * @param port empty for a cable or an adapter, which is held as a whole
 */
@Embeddable
record PortUse(
        @Column(name = "item") String item,
        @Column(name = "port") String port) implements Serializable {
    @Override
    public String toString() {
        return port.isEmpty() ? item : port + " of " + item;
    }
}
