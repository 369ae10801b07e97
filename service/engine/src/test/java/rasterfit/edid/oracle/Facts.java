package rasterfit.edid.oracle;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.timing.Polarity;
import rasterfit.timing.PrintedTiming;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * What one decoder reads from an EDID, as named values: numbers, marks and lists of numbers. Two decoders are compared name by
 * name; a name that only one of them has is a difference.
 */
final class Facts {
    private static final long KILO = 1000;

    /** Of a timing, borders counted to the porches. */
    private static final List<String> COUNTS = List.of(
            "horizontal active",
            "horizontal front porch",
            "horizontal sync",
            "horizontal back porch",
            "vertical active",
            "vertical front porch",
            "vertical sync",
            "vertical back porch",
            "vertical total");

    private final Map<String, Object> values = new LinkedHashMap<>();

    /** One value in which the decoders differ; absent where a decoder does not give it at all. */
    record Difference(
            String name, @Nullable Object ours, @Nullable Object theirs) {}

    void put(String name, Object value) {
        Object before = values.put(name, value);
        if (before != null) {
            throw new IllegalStateException("told twice: " + name);
        }
    }

    void putIfPresent(String name, @Nullable Object value) {
        if (value != null) {
            put(name, value);
        }
    }

    /** @param fromFormula the clock comes from a formula that leaves it a fraction; the tool rounds it to 1 kHz */
    void putOurs(String name, RasterTiming timing, boolean fromFormula) {
        Rational clock = timing.pixelClock().hz();
        put(name + " pixel clock", fromFormula ? toKilohertz(clock) : clock);
        putCounts(
                name,
                timing.horizontalActive(),
                timing.horizontalFrontPorch(),
                timing.horizontalSync(),
                timing.horizontalBackPorch(),
                timing.verticalActive(),
                timing.verticalFrontPorch(),
                timing.verticalSync(),
                timing.verticalBackPorch(),
                timing.verticalTotal());
        putKind(name, timing.scan(), timing.horizontalPolarity(), timing.verticalPolarity());
    }

    void putTheirs(String name, PrintedTiming timing) {
        int across = timing.horizontalBorder();
        int down = timing.verticalBorder();
        put(name + " pixel clock", timing.pixelClockHz());
        putCounts(
                name,
                timing.horizontalActive(),
                timing.horizontalFrontPorch() + across,
                timing.horizontalSync(),
                timing.horizontalBackPorch() + across,
                timing.verticalActive(),
                timing.verticalFrontPorch() + down,
                timing.verticalSync(),
                timing.verticalBackPorch() + down,
                timing.verticalTotal());
        putKind(
                name,
                timing.interlaced() ? Scan.INTERLACED : Scan.PROGRESSIVE,
                timing.horizontalPolarity(),
                // Composite sync has one polarity for both.
                timing.composite() ? timing.horizontalPolarity() : timing.verticalPolarity());
    }

    private void putCounts(String name, int... counts) {
        for (int i = 0; i < counts.length; i++) {
            put(name + " " + COUNTS.get(i), counts[i]);
        }
    }

    private void putKind(String name, Scan scan, Polarity horizontal, Polarity vertical) {
        put(name + " scan", scan);
        put(name + " horizontal polarity", horizontal);
        put(name + " vertical polarity", vertical);
    }

    private static Rational toKilohertz(Rational hz) {
        return Rational.of(hz.dividedBy(KILO).round() * KILO);
    }

    @Nullable
    Object get(String name) {
        return values.get(name);
    }

    int size() {
        return values.size();
    }

    /** In the order of these facts, then of those. */
    List<Difference> differencesFrom(Facts theirs) {
        Set<String> names = new LinkedHashSet<>(values.keySet());
        names.addAll(theirs.values.keySet());
        return names.stream()
                .map(name -> new Difference(name, values.get(name), theirs.values.get(name)))
                .filter(each -> each.ours() == null || !each.ours().equals(each.theirs()))
                .toList();
    }
}
