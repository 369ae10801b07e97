package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import rasterfit.gear.Mode;
import rasterfit.quantity.Rational;

/**
 * Groups the modes that an input cannot tell apart. An analog input sees sync, not dots: modes with the same scan and
 * lines per field whose line rates differ by no more than its resolution look alike, transitively in the order of the
 * modes. A digital input sees the whole raster.
 */
public final class ModeGroups {
    private static final Rational MILLION = Rational.of(1_000_000);

    private ModeGroups() {}

    public static List<List<Mode>> of(List<Mode> modes, boolean digital, Rational resolutionPpm) {
        List<List<Mode>> groups = new ArrayList<>();
        for (Mode mode : modes) {
            List<Mode> own = null;
            for (List<Mode> group : List.copyOf(groups)) {
                if (group.stream().anyMatch(other -> lookAlike(mode, other, digital, resolutionPpm))) {
                    if (own == null) {
                        own = group;
                    } else {
                        own.addAll(group);
                        groups.remove(group);
                    }
                }
            }
            if (own == null) {
                own = new ArrayList<>();
                groups.add(own);
            }
            own.add(mode);
        }
        return groups.stream().map(List::copyOf).toList();
    }

    private static boolean lookAlike(Mode a, Mode b, boolean digital, Rational resolutionPpm) {
        if (digital) {
            return a.raster().equals(b.raster());
        }
        if (a.scan() != b.scan() || !a.linesPerField().equals(b.linesPerField())) {
            return false;
        }
        Rational apart = a.lineRate().ratioTo(b.lineRate()).minus(Rational.ONE).abs();
        return !apart.times(MILLION).isGreaterThan(resolutionPpm);
    }
}
