package rasterfit.quantity;

/** An exact frequency in hertz. */
public record Frequency(Rational hz) implements Comparable<Frequency> {
    public static Frequency ofHz(long hz) {
        return new Frequency(Rational.of(hz));
    }

    public static Frequency ofHz(long numerator, long denominator) {
        return new Frequency(Rational.of(numerator, denominator));
    }

    public static Frequency parseHz(String hz) {
        return new Frequency(Rational.parse(hz));
    }

    public Frequency times(Rational factor) {
        return new Frequency(hz.times(factor));
    }

    public Frequency times(long factor) {
        return new Frequency(hz.times(factor));
    }

    public Frequency dividedBy(Rational divisor) {
        return new Frequency(hz.dividedBy(divisor));
    }

    public Rational ratioTo(Frequency other) {
        return hz.dividedBy(other.hz);
    }

    /** The duration of one cycle. */
    public TimeSpan period() {
        return new TimeSpan(hz.reciprocal());
    }

    /** How far this frequency lies from a nominal one: 100 · (this / nominal − 1). */
    public Rational percentFrom(Frequency nominal) {
        return ratioTo(nominal).minus(Rational.ONE).times(100);
    }

    @Override
    public int compareTo(Frequency other) {
        return hz.compareTo(other.hz);
    }

    @Override
    public String toString() {
        return hz + " Hz";
    }
}
