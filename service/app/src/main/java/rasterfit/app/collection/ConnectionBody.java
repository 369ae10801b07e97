package rasterfit.app.collection;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What is plugged in: from a port that gives a signal to one that takes it. Each port and each cable is in one connection.
 *
 * @param id that of the address, which may be repeated here
 * @param links ids of owned cables and adapters in signal order; a plain lead if absent
 */
record ConnectionBody(
        @Nullable String id,
        EndBody from,
        EndBody to,
        @Nullable List<String> links,
        @Nullable String note) implements NamesItems {

    /**
     * @param item id of an owned item
     * @param port id of an output or input of it; of a switch {@code out}, or {@code in-1} and on
     */
    record EndBody(String item, String port) {}

    @Override
    public Set<String> namedItems() {
        Set<String> named = new HashSet<>(links == null ? List.of() : links);
        named.add(from.item());
        named.add(to.item());
        return named;
    }
}
