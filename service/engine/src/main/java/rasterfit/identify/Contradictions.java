package rasterfit.identify;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Finds measured values that exclude each other. */
final class Contradictions {
    /** Enough to tell two neighbouring rates apart that six digits would print alike. */
    private static final MathContext EIGHT_DIGITS = new MathContext(8, RoundingMode.HALF_EVEN);

    private final MeasuredTiming measured;
    private final List<Contradiction> found = new ArrayList<>();

    private Contradictions(MeasuredTiming measured) {
        this.measured = measured;
    }

    static List<Contradiction> of(MeasuredTiming measured) {
        Contradictions search = new Contradictions(measured);
        search.rates();
        search.counts();
        search.picture();
        return List.copyOf(search.found);
    }

    private void rates() {
        List<LineRate> lineRates = LineRate.withoutFieldRate(measured);
        for (int i = 0; i < lineRates.size(); i++) {
            for (LineRate other : lineRates.subList(i + 1, lineRates.size())) {
                compare("a line rate", lineRates.get(i).from(), lineRates.get(i).hz(), other.from(), other.hz());
            }
        }
        Optional<Bounds> fieldRate = measured.of(Measurand.FIELD_RATE);
        Optional<Bounds> lines = measured.linesPerField();
        if (fieldRate.isPresent() && lines.isPresent()) {
            for (LineRate lineRate : lineRates) {
                List<Measurand> from = new ArrayList<>(lineRate.from());
                from.add(LineRate.countedLines(measured));
                compare(
                        "a field rate",
                        from,
                        lineRate.hz().dividedBy(lines.get()),
                        List.of(Measurand.FIELD_RATE),
                        fieldRate.get());
            }
        }
    }

    private void compare(String what, List<Measurand> first, Bounds firstHz, List<Measurand> second, Bounds secondHz) {
        if (firstHz.meets(secondHz)) {
            return;
        }
        Rational apart = Bounds.ppm(secondHz.typical(), firstHz.typical());
        add(
                Stream.concat(first.stream(), second.stream()),
                names(first) + " " + verb(first) + " " + what + " of " + hz(firstHz) + ", but " + names(second) + " "
                        + verb(second) + " one of " + hz(secondHz) + ": " + digits(apart.abs())
                        + " ppm apart, more than the tolerances allow.");
    }

    private void counts() {
        Optional<Bounds> field = measured.of(Measurand.LINES_PER_FIELD);
        Optional<Bounds> frame = measured.of(Measurand.LINES_PER_FRAME);
        Scan scan = measured.scan();
        if (field.isPresent() && frame.isPresent()) {
            boolean fits = Stream.of(Scan.values())
                    .filter(one -> scan == null || one == scan)
                    .anyMatch(
                            one -> field.get().times(MeasuredTiming.fields(one)).meets(frame.get()));
            if (!fits) {
                add(
                        Stream.of(Measurand.LINES_PER_FIELD, Measurand.LINES_PER_FRAME),
                        "linesPerField is " + range(field.get()) + ", but linesPerFrame is " + range(frame.get())
                                + ": a frame has the lines of one field if progressive, of two if interlaced.");
            }
        }
        if (scan != null) {
            field.ifPresent(lines -> parity(Measurand.LINES_PER_FIELD, lines, scan));
            frame.ifPresent(
                    lines -> parity(Measurand.LINES_PER_FRAME, lines.dividedBy(MeasuredTiming.fields(scan)), scan));
        }
    }

    /** Whether a field of one of so many lines can have this scan. */
    private void parity(Measurand counted, Bounds linesPerField, Scan scan) {
        Rational offset = scan == Scan.INTERLACED ? Rational.HALF : Rational.ZERO;
        Rational nearest =
                Rational.of(linesPerField.least().minus(offset).ceil()).plus(offset);
        if (nearest.isGreaterThan(linesPerField.greatest())) {
            found.add(new Contradiction(
                    List.of(counted.id(), "scan"),
                    "scan is " + scan + ", but " + counted.id() + " makes a field of " + range(linesPerField)
                            + " lines: an interlaced field ends on a half line, a progressive one on a whole line."));
        }
    }

    private void picture() {
        Optional<Bounds> dots = measured.of(Measurand.DOTS_PER_LINE);
        Optional<Bounds> lines = measured.linesPerField();
        for (Picture.Excess excess :
                measured.picture().beyond(dots.map(Bounds::greatest), lines.map(Bounds::greatest))) {
            boolean across = excess.total() == Measurand.DOTS_PER_LINE;
            Measurand counted = across ? Measurand.DOTS_PER_LINE : LineRate.countedLines(measured);
            Bounds total = (across ? dots : lines).orElseThrow();
            found.add(new Contradiction(
                    List.of(excess.member(), counted.id()),
                    "By " + excess.member() + " the picture takes or reaches " + excess.end() + " "
                            + counted.unit() + ", but by " + counted.id() + " there are " + range(total)
                            + " in all, sync among them."));
        }
    }

    private void add(Stream<Measurand> members, String message) {
        found.add(new Contradiction(members.map(Measurand::id).distinct().toList(), message));
    }

    private static String names(List<Measurand> measurands) {
        return measurands.stream().map(Measurand::id).collect(Collectors.joining(" and "));
    }

    private static String verb(List<Measurand> measurands) {
        return measurands.size() == 1 ? "gives" : "give";
    }

    private static String hz(Bounds bounds) {
        return digits(bounds.typical()) + " Hz"
                + (bounds.isExact() ? "" : " (" + digits(bounds.least()) + " to " + digits(bounds.greatest()) + ")");
    }

    private static String range(Bounds counted) {
        return counted.isExact() ? counted.least().toString() : counted.least() + " to " + counted.greatest();
    }

    private static String digits(Rational number) {
        return new BigDecimal(number.numerator())
                .divide(new BigDecimal(number.denominator()), EIGHT_DIGITS)
                .stripTrailingZeros()
                .toPlainString();
    }
}
