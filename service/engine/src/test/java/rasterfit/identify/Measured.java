package rasterfit.identify;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Builds what was measured, value by value. */
final class Measured {
    private final Map<Measurand, Bounds> values = new EnumMap<>(Measurand.class);
    private @Nullable Scan scan;
    private Picture picture = Picture.UNKNOWN;

    static Measured nothing() {
        return new Measured();
    }

    Measured with(Measurand measurand, String value, long ppm) {
        return with(measurand, Bounds.within(Rational.parse(value), Rational.of(ppm)));
    }

    Measured count(Measurand measurand, String value) {
        return with(measurand, Bounds.exactly(Rational.parse(value)));
    }

    Measured with(Measurand measurand, Bounds bounds) {
        values.put(measurand, bounds);
        return this;
    }

    Measured scan(Scan known) {
        scan = known;
        return this;
    }

    Measured active(@Nullable Integer dots, @Nullable Integer lines) {
        return picture(new Picture(dots, lines, null, null));
    }

    Measured picture(Picture counted) {
        picture = counted;
        return this;
    }

    MeasuredTiming timing() {
        return new MeasuredTiming(values, scan, picture);
    }

    Identification identified() {
        return Identifier.identify(timing());
    }
}
