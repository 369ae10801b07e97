package rasterfit.gear;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A format with the sync kinds that go with it, as a link carries them or an input takes them.
 *
 * @param syncs empty where any will do or none applies
 * @param encodings colour encodings that an input decodes; empty where not stated or where none applies
 * @param separation of luma and chroma in a composite decoder; absent where not stated
 */
public record Carried(
        Format format,
        Set<SyncKind> syncs,
        Set<ColourEncoding> encodings,
        @Nullable Separation separation) {
    public Carried {
        syncs = Set.copyOf(syncs);
        encodings = Set.copyOf(encodings);
    }

    public Carried(Format format, Set<SyncKind> syncs) {
        this(format, syncs, Set.of(), null);
    }

    public boolean takes(@Nullable SyncKind sync) {
        return syncs.isEmpty() || sync == null || syncs.contains(sync);
    }

    /** An input that does not state its encodings is taken to decode the two usual ones (assumption). */
    public boolean decodes(@Nullable ColourEncoding encoding) {
        return encoding == null
                || (encodings.isEmpty()
                        ? encoding.equals(ColourEncoding.C525_358) || encoding.equals(ColourEncoding.C625_443)
                        : encodings.contains(encoding));
    }
}
