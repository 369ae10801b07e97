package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import rasterfit.match.Step;
import rasterfit.quantity.Rational;

/**
 * Where a measure tells how it came about. The same code computes with a silent log while tables are filled and with a
 * telling one for what is returned, so that an explanation is never a second implementation.
 */
public final class Steps {
    /** Tells nothing and costs nothing. */
    public static final Steps SILENT = new Steps(null, "");

    private final @Nullable List<Step> told;
    private final String mode;

    private Steps(@Nullable List<Step> told, String mode) {
        this.told = told;
        this.mode = mode;
    }

    public static Steps telling(String mode) {
        return new Steps(new ArrayList<>(), mode);
    }

    public List<Step> told() {
        return told == null ? List.of() : List.copyOf(told);
    }

    /** The writer is only called when somebody listens. */
    public void tell(String name, Consumer<Writer> writer) {
        if (told != null) {
            Writer step = new Writer();
            writer.accept(step);
            told.add(step.written(mode, name));
        }
    }

    /** Collects one step. */
    public static final class Writer {
        private final Map<String, String> inputs = new LinkedHashMap<>();
        private String formula = "";
        private String source = "";
        private String result = "";

        public Writer in(String name, Rational value, String unit) {
            return in(name, write(value, unit));
        }

        public Writer in(String name, long value, String unit) {
            return in(name, write(Rational.of(value), unit));
        }

        public Writer in(String name, String value) {
            inputs.put(name, value);
            return this;
        }

        /**
         * States what was computed.
         *
         * @param formula over the names of the inputs
         * @param source document and clause, {@code common practice}, {@code assumption} or {@code definition}
         */
        public Writer by(String formula, String source) {
            this.formula = formula;
            this.source = source;
            return this;
        }

        public void gives(Rational value, String unit) {
            result = write(value, unit);
        }

        public void gives(String value) {
            result = value;
        }

        Step written(String mode, String name) {
            return new Step(mode, name, Map.copyOf(inputs).isEmpty() ? Map.of() : ordered(), formula, source, result);
        }

        private Map<String, String> ordered() {
            return java.util.Collections.unmodifiableMap(new LinkedHashMap<>(inputs));
        }
    }

    /** Exact, and beside it as a decimal where the exact form is a fraction. */
    public static String write(Rational value, String unit) {
        String tail = unit.isEmpty() ? "" : " " + unit;
        if (value.isWhole()) {
            return value + tail;
        }
        return value + tail + " ≈ " + value.toSixDigits().toPlainString() + tail;
    }
}
