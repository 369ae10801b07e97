package rasterfit.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** How the output's field rate relates to the source's. */
public sealed interface RateLock {
    /**
     * The output follows the source.
     *
     * @param pullPpm how far from the nominal rate it can be pulled, either way
     * @param nominal absent: the field rate of the output timing
     * @param bufferLines lines of memory; absent where not stated
     */
    record SourceLocked(
            Rational pullPpm,
            @Nullable Frequency nominal,
            @Nullable Integer bufferLines) implements RateLock {}

    /**
     * The output runs at its own rate.
     *
     * @param rates empty: the field rate of the output timing
     * @param fieldStores whole fields of memory; one makes the picture tear
     */
    record FreeRunning(List<Frequency> rates, int fieldStores) implements RateLock {
        public FreeRunning {
            rates = List.copyOf(rates);
            if (fieldStores < 1) {
                throw new IllegalArgumentException("a free-running output needs at least one field store");
            }
        }
    }

    /** The output follows the source and signals its varying rate to the display. */
    record VariableRefresh(@Nullable Integer bufferLines) implements RateLock {}
}
