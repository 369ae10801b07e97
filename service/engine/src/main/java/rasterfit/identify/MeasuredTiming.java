package rasterfit.identify;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/**
 * What was read off instruments or counted, and nothing else.
 *
 * @param values at least one; each in its measurand's unit
 * @param scan if known
 * @param picture what was counted of it
 */
public record MeasuredTiming(
        Map<Measurand, Bounds> values, @Nullable Scan scan, Picture picture) {

    public MeasuredTiming {
        if (values.isEmpty()) {
            throw new IllegalArgumentException("at least one rate, period or count has to be measured");
        }
        values = Collections.unmodifiableMap(new EnumMap<>(values));
    }

    public boolean has(Measurand measurand) {
        return values.containsKey(measurand);
    }

    Optional<Bounds> of(Measurand measurand) {
        return Optional.ofNullable(values.get(measurand));
    }

    /** Lines per field, if counted, or if the lines of a frame were and the scan is known. */
    Optional<Bounds> linesPerField() {
        Optional<Bounds> counted = of(Measurand.LINES_PER_FIELD);
        return counted.isPresent() || scan == null
                ? counted
                : of(Measurand.LINES_PER_FRAME).map(lines -> lines.dividedBy(fields(scan)));
    }

    static Bounds fields(Scan scan) {
        return Bounds.exactly(Rational.of(scan.fieldsPerFrame()));
    }
}
