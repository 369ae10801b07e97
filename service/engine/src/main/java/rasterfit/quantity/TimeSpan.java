package rasterfit.quantity;

/** An exact, possibly negative span of time. ({@link java.time.Duration} stops at nanoseconds and rounds.) */
public record TimeSpan(Rational seconds) implements Comparable<TimeSpan> {
    public static final TimeSpan ZERO = new TimeSpan(Rational.ZERO);

    public static TimeSpan ofMillis(Rational millis) {
        return new TimeSpan(millis.dividedBy(1000));
    }

    public static TimeSpan ofMicros(Rational micros) {
        return new TimeSpan(micros.dividedBy(1_000_000));
    }

    public TimeSpan plus(TimeSpan other) {
        return new TimeSpan(seconds.plus(other.seconds));
    }

    public TimeSpan minus(TimeSpan other) {
        return new TimeSpan(seconds.minus(other.seconds));
    }

    public TimeSpan times(Rational factor) {
        return new TimeSpan(seconds.times(factor));
    }

    public TimeSpan times(long factor) {
        return new TimeSpan(seconds.times(factor));
    }

    public TimeSpan dividedBy(Rational divisor) {
        return new TimeSpan(seconds.dividedBy(divisor));
    }

    public TimeSpan min(TimeSpan other) {
        return new TimeSpan(seconds.min(other.seconds));
    }

    public TimeSpan max(TimeSpan other) {
        return new TimeSpan(seconds.max(other.seconds));
    }

    public Rational millis() {
        return seconds.times(1000);
    }

    @Override
    public int compareTo(TimeSpan other) {
        return seconds.compareTo(other.seconds);
    }

    @Override
    public String toString() {
        return seconds + " s";
    }
}
