package rasterfit.identify;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rasterfit.identify.Identification.Derived;

/**
 * What follows from measured values that do not contradict each other, by the three relations of a raster: line rate = dot
 * clock / dots per line, field rate = line rate / lines per field, and a frame has one field or two.
 *
 * @param lineRate absent if nothing leads to it, or if three values have nothing in common though any two have
 * @param linesPerField in the same way
 */
record Derivation(Optional<Bounds> lineRate, Optional<Bounds> linesPerField, List<Derived> told) {

    static Derivation of(MeasuredTiming measured) {
        List<Derived> told = new ArrayList<>();
        List<LineRate> ways = LineRate.allOf(measured);
        Optional<Bounds> lineRate = ways.stream()
                .map(way -> Optional.of(way.hz()))
                .reduce(Derivation::common)
                .flatMap(found -> found);
        Set<String> lineRateFrom = new LinkedHashSet<>();
        ways.forEach(way -> way.from().forEach(member -> lineRateFrom.add(member.id())));
        if (!measured.has(Measurand.LINE_RATE)) {
            lineRate.ifPresent(hz -> told.add(new Derived(Measurand.LINE_RATE, hz, List.copyOf(lineRateFrom))));
        }

        Optional<Bounds> lines = measured.linesPerField();
        List<String> linesFrom = List.of(LineRate.countedLines(measured).id());
        Optional<Bounds> fieldRate = measured.of(Measurand.FIELD_RATE);
        if (lines.isEmpty() && lineRate.isPresent() && fieldRate.isPresent()) {
            lines = Optional.of(lineRate.get().dividedBy(fieldRate.get()));
            linesFrom = joined(lineRateFrom, List.of(Measurand.FIELD_RATE.id()));
        }
        if (lines.isPresent() && !measured.has(Measurand.LINES_PER_FIELD)) {
            told.add(new Derived(Measurand.LINES_PER_FIELD, lines.get(), linesFrom));
        }
        if (lineRate.isPresent() && lines.isPresent() && fieldRate.isEmpty()) {
            Bounds rate = lineRate.get().dividedBy(lines.get());
            told.add(new Derived(Measurand.FIELD_RATE, rate, joined(lineRateFrom, linesFrom)));
        }

        Optional<Bounds> dots = measured.of(Measurand.DOTS_PER_LINE);
        Optional<Bounds> clock = measured.of(Measurand.DOT_CLOCK);
        if (lineRate.isPresent() && dots.isPresent() && clock.isEmpty()) {
            List<String> from = joined(lineRateFrom, List.of(Measurand.DOTS_PER_LINE.id()));
            told.add(new Derived(Measurand.DOT_CLOCK, lineRate.get().times(dots.get()), from));
        }
        if (lineRate.isPresent() && clock.isPresent() && dots.isEmpty()) {
            List<String> from = joined(lineRateFrom, List.of(Measurand.DOT_CLOCK.id()));
            told.add(new Derived(Measurand.DOTS_PER_LINE, clock.get().dividedBy(lineRate.get()), from));
        }
        return new Derivation(lineRate, lines, List.copyOf(told));
    }

    boolean leadsTo(Measurand measurand) {
        return told.stream().anyMatch(derived -> derived.measurand() == measurand);
    }

    private static Optional<Bounds> common(Optional<Bounds> first, Optional<Bounds> second) {
        return first.flatMap(bounds -> second.flatMap(bounds::and));
    }

    private static List<String> joined(Iterable<String> first, Iterable<String> second) {
        Set<String> all = new LinkedHashSet<>();
        Stream.of(first, second).forEach(part -> part.forEach(all::add));
        return List.copyOf(all);
    }
}
