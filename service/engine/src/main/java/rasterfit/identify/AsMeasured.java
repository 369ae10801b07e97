package rasterfit.identify;

import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** The timing that measured values make by themselves, without any clock that is known. */
final class AsMeasured {
    private AsMeasured() {}

    /** Null unless the values lead to a clock, to dots per line and to one number of lines. */
    static @Nullable SourceTiming timing(MeasuredTiming measured, Derivation derivation) {
        Optional<Bounds> dots = measured.of(Measurand.DOTS_PER_LINE).filter(Bounds::isExact);
        Optional<Rational> lines = derivation.linesPerField().flatMap(bounds -> onlyCount(bounds, measured.scan()));
        if (dots.isEmpty() || lines.isEmpty()) {
            return null;
        }
        Optional<Rational> clock = measured.of(Measurand.DOT_CLOCK)
                .or(() -> derivation.lineRate().map(hz -> hz.times(dots.get())))
                .map(Bounds::typical);
        return clock.map(hz -> new SourceTiming(new Frequency(hz), dots.get().least(), lines.get()))
                .orElse(null);
    }

    private static Optional<Rational> onlyCount(Bounds bounds, @Nullable Scan scan) {
        SortedSet<Rational> counts = new TreeSet<>(Composer.wholesAndHalves(bounds));
        if (scan != null) {
            counts.removeIf(count -> count.isWhole() != (scan == Scan.PROGRESSIVE));
        }
        return counts.size() == 1 ? Optional.of(counts.first()) : Optional.empty();
    }
}
