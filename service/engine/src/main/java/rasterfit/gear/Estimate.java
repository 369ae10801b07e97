package rasterfit.gear;

import rasterfit.quantity.Rational;

/**
 * A number with the interval in which it lies.
 *
 * @param assumed whether it stands in for a fact that nobody gave
 */
public record Estimate(Rational least, Rational typical, Rational greatest, boolean assumed) {
    public static Estimate exactly(long value) {
        Rational exact = Rational.of(value);
        return new Estimate(exact, exact, exact, false);
    }

    /** A documented default in tenths, so that 0.5 can be written as 5. */
    public static Estimate assumedTenths(long least, long typical, long greatest) {
        return new Estimate(Rational.of(least, 10), Rational.of(typical, 10), Rational.of(greatest, 10), true);
    }

    public static Estimate assumed(long least, long typical, long greatest) {
        return new Estimate(Rational.of(least), Rational.of(typical), Rational.of(greatest), true);
    }

    public Estimate plus(Estimate other) {
        return new Estimate(
                least.plus(other.least),
                typical.plus(other.typical),
                greatest.plus(other.greatest),
                assumed || other.assumed);
    }

    public Estimate times(Rational factor) {
        return new Estimate(least.times(factor), typical.times(factor), greatest.times(factor), assumed);
    }
}
