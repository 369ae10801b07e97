package rasterfit.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.identify.Identification.Open;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** What timings that all fit differ in. */
final class Openness {
    private static final List<Measurand> PARTS = List.of(
            Measurand.LINE_RATE,
            Measurand.FIELD_RATE,
            Measurand.LINES_PER_FIELD,
            Measurand.DOT_CLOCK,
            Measurand.DOTS_PER_LINE);

    private Openness() {}

    static List<Open> of(List<Candidate> fitting) {
        List<SourceTiming> timings = fitting.stream().map(Candidate::timing).toList();
        List<Open> open = new ArrayList<>();
        for (Measurand part : PARTS) {
            SortedMap<Rational, Integer> values = counted(timings, part::of);
            if (values.size() > 1) {
                open.add(new Open(part.id(), names(values), closest(values), most(values)));
            }
        }
        SortedMap<Scan, Integer> scans = counted(timings, SourceTiming::scan);
        if (scans.size() > 1) {
            open.add(new Open("scan", names(scans), null, most(scans)));
        }
        open.sort(Comparator.comparingInt(Open::mostLeft));
        return open;
    }

    private static <T extends Comparable<T>> SortedMap<T, Integer> counted(
            List<SourceTiming> timings, Function<SourceTiming, T> part) {
        return timings.stream().collect(Collectors.toMap(part, timing -> 1, Integer::sum, TreeMap::new));
    }

    private static List<String> names(Map<?, Integer> values) {
        return values.keySet().stream().map(Object::toString).toList();
    }

    private static int most(Map<?, Integer> values) {
        return values.values().stream().mapToInt(Integer::intValue).max().orElseThrow();
    }

    private static @Nullable Rational closest(SortedMap<Rational, Integer> values) {
        Rational closest = null;
        Rational before = null;
        for (Rational value : values.keySet()) {
            if (before != null) {
                Rational apart = Bounds.ppm(value, before);
                closest = closest == null ? apart : closest.min(apart);
            }
            before = value;
        }
        return closest;
    }
}
