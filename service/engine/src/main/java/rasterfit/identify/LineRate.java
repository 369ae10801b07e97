package rasterfit.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rasterfit.quantity.Rational;

/**
 * A line rate as it follows from some of the measured values, in Hz.
 *
 * @param from the values
 */
record LineRate(List<Measurand> from, Bounds hz) {
    private static final Bounds MICROSECONDS = Bounds.exactly(Rational.of(1_000_000));

    /** Every way to it that the values allow. Line rate = 1 / line period = dot clock / dots = field rate · lines. */
    static List<LineRate> allOf(MeasuredTiming measured) {
        List<LineRate> all = new ArrayList<>(withoutFieldRate(measured));
        Optional<Bounds> fieldRate = measured.of(Measurand.FIELD_RATE);
        Optional<Bounds> lines = measured.linesPerField();
        if (fieldRate.isPresent() && lines.isPresent()) {
            all.add(new LineRate(
                    List.of(Measurand.FIELD_RATE, countedLines(measured)),
                    fieldRate.get().times(lines.get())));
        }
        return all;
    }

    static List<LineRate> withoutFieldRate(MeasuredTiming measured) {
        List<LineRate> all = new ArrayList<>();
        measured.of(Measurand.LINE_RATE).ifPresent(hz -> all.add(new LineRate(List.of(Measurand.LINE_RATE), hz)));
        measured.of(Measurand.LINE_PERIOD)
                .ifPresent(us -> all.add(new LineRate(List.of(Measurand.LINE_PERIOD), MICROSECONDS.dividedBy(us))));
        Optional<Bounds> clock = measured.of(Measurand.DOT_CLOCK);
        Optional<Bounds> dots = measured.of(Measurand.DOTS_PER_LINE);
        if (clock.isPresent() && dots.isPresent()) {
            all.add(new LineRate(
                    List.of(Measurand.DOT_CLOCK, Measurand.DOTS_PER_LINE),
                    clock.get().dividedBy(dots.get())));
        }
        return all;
    }

    /** The one that lines per field were taken from. */
    static Measurand countedLines(MeasuredTiming measured) {
        return measured.has(Measurand.LINES_PER_FIELD) ? Measurand.LINES_PER_FIELD : Measurand.LINES_PER_FRAME;
    }
}
