package rasterfit.app.timing;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.Range;
import rasterfit.app.gear.RequiredMembers;
import rasterfit.app.timing.MeasuredBody.CountedPictureBody;
import rasterfit.app.timing.MeasuredNumber.NumberReading;
import rasterfit.app.timing.MeasuredQuantity.QuantityReading;
import rasterfit.identify.Bounds;
import rasterfit.identify.Contradiction;
import rasterfit.identify.Identification;
import rasterfit.identify.Identifier;
import rasterfit.identify.Measurand;
import rasterfit.identify.MeasuredTiming;
import rasterfit.identify.Picture;
import rasterfit.quantity.Rational;

/** Reads what was measured, with all faults told at once, and lets the engine find the timings. */
final class MeasuredReader {
    /** Of a rate or a period that states none: crystal and meter together (assumption). */
    private static final Rational USUAL_TOLERANCE_PPM = Rational.of(100);

    private static final int USUAL_TOP = 10;

    private static final Range TOP = Range.of("1", "100", "timings");
    private static final Range TOLERANCE_PPM = Range.of("0", "20000", "ppm");
    private static final Range PERIOD_US = Range.of("0.1", "10000", "us");

    /** Wider, a range says no more than the eye does, and the search would grow (assumption). */
    private static final Rational WIDEST = Rational.of(105, 100);

    private final Faults faults = new Faults();
    private final Place root = Place.root(faults);
    private final Map<Measurand, Bounds> values = new EnumMap<>(Measurand.class);
    private final Set<Measurand> assumed = EnumSet.noneOf(Measurand.class);

    private MeasuredReader() {}

    /**
     * Finds the timings.
     *
     * @throws rasterfit.app.problem.ProblemException with every fault of the body, or with the values that contradict
     *     each other, at each of their places
     */
    static IdentifiedTiming identify(String engineVersion, MeasuredBody body) {
        RequiredMembers.check(body);
        return new MeasuredReader().read(engineVersion, body);
    }

    private IdentifiedTiming read(String engineVersion, MeasuredBody body) {
        exact(Measurand.LINE_RATE, body.lineRateHz(), Range.LINE_RATE);
        plain(Measurand.LINE_PERIOD, body.linePeriodUs(), PERIOD_US);
        exact(Measurand.FIELD_RATE, body.fieldRateHz(), Range.FIELD_RATE);
        exact(Measurand.LINES_PER_FIELD, body.linesPerField(), Range.LINES);
        exact(Measurand.LINES_PER_FRAME, body.linesPerFrame(), Range.LINES);
        exact(Measurand.DOTS_PER_LINE, body.dotsPerLine(), Range.DOTS);
        exact(Measurand.DOT_CLOCK, body.dotClockHz(), Range.CLOCK);
        wholeSteps(Measurand.LINES_PER_FIELD, 2, "A field has a whole number of lines or ends on a half line.");
        wholeSteps(Measurand.LINES_PER_FRAME, 1, "A frame has a whole number of lines.");
        Picture picture = picture(root.member("active"), body.active());
        Integer top = root.member("top").optionalCount(body.top(), TOP);
        MeasuredTiming measured = root.make(() -> new MeasuredTiming(values, body.scan(), picture));
        faults.throwIfAny();
        Identification found = Identifier.identify(Objects.requireNonNull(measured));
        found.contradictions().forEach(this::note);
        faults.throwIfAny();
        return IdentifiedTiming.of(engineVersion, measured, assumed, found, top == null ? USUAL_TOP : top);
    }

    private void exact(Measurand measurand, @Nullable MeasuredQuantity body, Range range) {
        if (body == null) {
            return;
        }
        Place at = root.member(measurand.id());
        QuantityReading reading = body.reading();
        if (reading == null) {
            String written = Objects.requireNonNull(body.plain());
            Rational value = at.exact(written, range);
            keep(at, measurand, () -> withUsualTolerance(measurand, value, decimals(written)));
            return;
        }
        keep(
                at,
                measurand,
                bounds(
                        at,
                        new Reading<>(reading.value(), reading.tolerancePpm(), reading.least(), reading.greatest()),
                        (place, written) -> place.exact(written, range)));
    }

    private void plain(Measurand measurand, @Nullable MeasuredNumber body, Range range) {
        if (body == null) {
            return;
        }
        Place at = root.member(measurand.id());
        NumberReading reading = body.reading();
        if (reading == null) {
            BigDecimal written = Objects.requireNonNull(body.plain());
            Rational value = at.number(written, range);
            keep(at, measurand, () -> withUsualTolerance(measurand, value, Math.max(0, written.scale())));
            return;
        }
        keep(
                at,
                measurand,
                bounds(
                        at,
                        new Reading<>(reading.value(), reading.tolerancePpm(), reading.least(), reading.greatest()),
                        (place, written) -> place.number(written, range)));
    }

    /** A reading in either way of writing numbers. */
    private record Reading<T>(
            @Nullable T value,
            @Nullable BigDecimal tolerancePpm,
            @Nullable T least,
            @Nullable T greatest) {}

    /** The bounds, to be built only if everything is sound. */
    private static <T> Supplier<Bounds> bounds(Place at, Reading<T> reading, BiFunction<Place, T, Rational> number) {
        boolean isRange = reading.least() != null || reading.greatest() != null;
        if (isRange && (reading.value() != null || reading.tolerancePpm() != null)) {
            at.invalid("Give value and tolerancePpm, or least and greatest, not both.");
            return () -> Bounds.exactly(Rational.ONE);
        }
        if (isRange) {
            Rational least = present(at.member("least"), reading.least(), number);
            Rational greatest = present(at.member("greatest"), reading.greatest(), number);
            if (at.isSound() && least.isGreaterThan(greatest)) {
                at.member("greatest").invalid("It is at least as great as least, " + least + ".");
            } else if (at.isSound() && greatest.isGreaterThan(least.times(WIDEST))) {
                at.member("greatest")
                        .outOfRange(
                                "A range spans at most 5 %.",
                                least.times(WIDEST).toString());
            }
            return () -> Bounds.between(least, greatest);
        }
        Rational value = present(at.member("value"), reading.value(), number);
        Rational tolerance = present(
                at.member("tolerancePpm"),
                reading.tolerancePpm(),
                (place, written) -> place.number(written, TOLERANCE_PPM));
        return () -> Bounds.within(value, tolerance);
    }

    private static <T> Rational present(Place at, @Nullable T written, BiFunction<Place, T, Rational> number) {
        if (written == null) {
            at.missing("Give value and tolerancePpm, or least and greatest.");
            return Rational.ONE;
        }
        return number.apply(at, written);
    }

    private void keep(Place at, Measurand measurand, Supplier<Bounds> bounds) {
        Bounds built = at.make(bounds);
        if (built != null) {
            values.put(measurand, built);
        }
    }

    /** Counts are exact. A rate is as certain as its last written decimal, and at best as certain as crystals are. */
    private Bounds withUsualTolerance(Measurand measurand, Rational value, int decimals) {
        if (measurand.isCount()) {
            return Bounds.exactly(value);
        }
        assumed.add(measurand);
        Rational halfUnit = decimals == 0
                ? Rational.ZERO
                : Rational.of(BigDecimal.ONE.movePointLeft(decimals)).dividedBy(2);
        Rational usual = value.times(USUAL_TOLERANCE_PPM).dividedBy(1_000_000);
        return Bounds.around(value, usual.max(halfUnit));
    }

    private static int decimals(String written) {
        int point = written.indexOf('.');
        return point < 0 ? 0 : written.length() - point - 1;
    }

    private void wholeSteps(Measurand counted, int stepsPerLine, String message) {
        Bounds bounds = values.get(counted);
        if (bounds != null
                && bounds.isExact()
                && !bounds.least().times(stepsPerLine).isWhole()) {
            root.member(counted.id()).invalid(message);
        }
    }

    private static Picture picture(Place at, @Nullable CountedPictureBody body) {
        return body == null
                ? Picture.UNKNOWN
                : new Picture(
                        at.member("dots").optionalCount(body.dots(), Range.DOTS),
                        at.member("lines").optionalCount(body.lines(), Range.LINES),
                        at.member("firstDot").optionalCount(body.firstDot(), Range.FIRST_DOT),
                        at.member("firstLine").optionalCount(body.firstLine(), Range.FIRST_LINE));
    }

    private void note(Contradiction contradiction) {
        for (String member : contradiction.members()) {
            Place at = root;
            for (String name : member.split("/", -1)) {
                at = at.member(name);
            }
            at.invalid(contradiction.message());
        }
    }
}
