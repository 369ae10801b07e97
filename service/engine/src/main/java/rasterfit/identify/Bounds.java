package rasterfit.identify;

import java.util.Optional;
import rasterfit.quantity.Rational;

/** A positive number that is known to lie between two bounds, both included. */
public record Bounds(Rational least, Rational typical, Rational greatest) {
    private static final Rational MILLION = Rational.of(1_000_000);

    public Bounds {
        if (least.signum() <= 0) {
            throw new IllegalArgumentException("a measured value is positive, not " + least);
        }
        if (typical.isLessThan(least) || typical.isGreaterThan(greatest)) {
            throw new IllegalArgumentException(typical + " does not lie from " + least + " to " + greatest);
        }
    }

    public static Bounds exactly(Rational value) {
        return new Bounds(value, value, value);
    }

    /** The middle counts as typical. */
    public static Bounds between(Rational least, Rational greatest) {
        return new Bounds(least, least.plus(greatest).dividedBy(2), greatest);
    }

    /** So many millionths of the value to either side. */
    public static Bounds within(Rational value, Rational tolerancePpm) {
        return around(value, value.times(tolerancePpm).dividedBy(MILLION));
    }

    public static Bounds around(Rational value, Rational halfWidth) {
        return new Bounds(value.minus(halfWidth), value, value.plus(halfWidth));
    }

    public boolean isExact() {
        return least.equals(greatest);
    }

    public boolean contains(Rational value) {
        return !value.isLessThan(least) && !value.isGreaterThan(greatest);
    }

    boolean meets(Bounds other) {
        return !least.isGreaterThan(other.greatest) && !other.least.isGreaterThan(greatest);
    }

    /** What lies in both; the narrower one's typical value, as far as it lies there. Empty if they do not meet. */
    Optional<Bounds> and(Bounds other) {
        if (!meets(other)) {
            return Optional.empty();
        }
        Rational from = least.max(other.least);
        Rational to = greatest.min(other.greatest);
        Rational wanted = width().isGreaterThan(other.width()) ? other.typical : typical;
        return Optional.of(new Bounds(from, wanted.max(from).min(to), to));
    }

    Bounds times(Bounds other) {
        return new Bounds(least.times(other.least), typical.times(other.typical), greatest.times(other.greatest));
    }

    Bounds dividedBy(Bounds other) {
        return new Bounds(
                least.dividedBy(other.greatest), typical.dividedBy(other.typical), greatest.dividedBy(other.least));
    }

    /** Half of the width in millionths of the middle. */
    public Rational tolerancePpm() {
        return width().dividedBy(least.plus(greatest)).times(MILLION);
    }

    private Rational width() {
        return greatest.minus(least);
    }

    /** How far a value lies from a nominal one, in millionths of the nominal one. */
    static Rational ppm(Rational value, Rational nominal) {
        return value.dividedBy(nominal).minus(Rational.ONE).times(MILLION);
    }
}
