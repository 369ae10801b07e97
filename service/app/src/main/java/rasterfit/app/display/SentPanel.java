package rasterfit.app.display;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.GearReader;
import rasterfit.edid.AcceptedTiming;
import rasterfit.gear.Panel;
import rasterfit.rule.Finding;
import rasterfit.rule.PortRules;

/**
 * The one panel behind all ports: the largest that a preferred timing fills.
 *
 * @param from the EDID that names it
 * @param size absent where no EDID states one
 * @param sizeFrom the EDID that states it
 */
record SentPanel(
        Panel.Grid grid,
        SentEdid from,
        Panel.@Nullable SizeMm size,
        @Nullable SentEdid sizeFrom,
        List<Finding> findings) {
    /** Sizes may be rounded to whole centimetres (E-EDID table 3.12). */
    private static final int ROUNDING_MM = 10;

    private record Named(SentEdid edid, Panel.Grid grid) {
        long pixels() {
            return (long) grid.columns() * grid.rows();
        }
    }

    /** Empty if no EDID names a raster that a panel can have. */
    static Optional<SentPanel> of(List<SentEdid> edids) {
        List<Named> named = new ArrayList<>();
        for (SentEdid edid : edids) {
            GearReader.assumedPanel(edid.reading()).ifPresent(grid -> named.add(new Named(edid, grid)));
        }
        // Of equal ones the first.
        return named.stream()
                .sorted(Comparator.comparing(Named::pixels).reversed())
                .findFirst()
                .map(largest -> of(named, largest));
    }

    private static SentPanel of(List<Named> named, Named largest) {
        List<Finding> findings = new ArrayList<>();
        Named sized = largest.grid().size() != null
                ? largest
                : named.stream()
                        .filter(one -> one.grid().size() != null)
                        .findFirst()
                        .orElse(null);
        for (Named other : named) {
            if (other.grid().columns() != largest.grid().columns()
                    || other.grid().rows() != largest.grid().rows()) {
                findings.add(PortRules.gridsDiffer(
                        other.edid().port(),
                        other.grid().columns(),
                        other.grid().rows(),
                        largest.edid().port(),
                        largest.grid().columns(),
                        largest.grid().rows()));
            }
        }
        Panel.SizeMm size = sized == null ? null : sized.grid().size();
        for (Named other : named) {
            Panel.SizeMm theirs = other.grid().size();
            if (sized != null && size != null && theirs != null && differ(size, theirs)) {
                findings.add(PortRules.sizesDiffer(
                        other.edid().port(),
                        theirs.width(),
                        theirs.height(),
                        sized.edid().port(),
                        size.width(),
                        size.height()));
            }
        }
        return new SentPanel(
                largest.grid(), largest.edid(), size, sized == null ? null : sized.edid(), List.copyOf(findings));
    }

    private static boolean differ(Panel.SizeMm one, Panel.SizeMm other) {
        return Math.abs(one.width() - other.width()) > ROUNDING_MM
                || Math.abs(one.height() - other.height()) > ROUNDING_MM;
    }

    /** Whether the EDID says itself that the timing is that of the panel. */
    boolean isDeclaredNative() {
        return from.reading()
                .preferredTiming()
                .map(AcceptedTiming::nativeFormat)
                .orElse(false);
    }
}
