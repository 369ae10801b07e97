package rasterfit.gear;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A format with the sync kinds that go with it, as a cable carries them or an input takes them.
 *
 * @param syncs empty where any will do or none applies
 */
public record Carried(Format format, Set<SyncKind> syncs) {
    public Carried {
        syncs = Set.copyOf(syncs);
    }

    public boolean takes(@Nullable SyncKind sync) {
        return syncs.isEmpty() || sync == null || syncs.contains(sync);
    }
}
