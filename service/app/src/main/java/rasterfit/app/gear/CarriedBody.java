package rasterfit.app.gear;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Format;
import rasterfit.gear.Separation;
import rasterfit.gear.SyncKind;

/**
 * A format as a cable carries it or an input takes it.
 *
 * @param syncs any if absent
 * @param encodings of the composite kinds, by line count and subcarrier; the two usual ones if absent
 * @param separation of luma and chroma; a notch if absent
 * @param seriesCapacitorsUf of a cable; kept, not yet used
 */
public record CarriedBody(
        Format format,
        @Nullable Set<SyncKind> syncs,
        @Nullable List<String> encodings,
        @Nullable Separation separation,
        @Nullable NumberFact seriesCapacitorsUf) {}
