package rasterfit.edid.oracle;

import java.util.Optional;
import java.util.stream.Stream;
import rasterfit.edid.oracle.Comparison.Case;
import rasterfit.edid.oracle.Facts.Difference;

enum KnownDifference {
    NONE {
        @Override
        boolean explains(Difference difference, Case edid) {
            return false;
        }
    };

    abstract boolean explains(Difference difference, Case edid);

    static Optional<KnownDifference> of(Difference difference, Case edid) {
        return Stream.of(values())
                .filter(known -> known.explains(difference, edid))
                .findFirst();
    }
}
