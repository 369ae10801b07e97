package rasterfit.app.gear;

import java.math.BigDecimal;
import rasterfit.quantity.Rational;

/**
 * What is physically sensible for a value, both ends included. Wide enough for any device of the trade; what lies
 * outside is a slip of the pen, or would only burn computing time (assumption throughout).
 */
public record Range(BigDecimal least, BigDecimal greatest, String unit) {
    public static final Range CLOCK = of("1000", "10000000000", "Hz");
    public static final Range LINE_RATE = of("100", "10000000", "Hz");
    public static final Range FIELD_RATE = of("1", "1000", "Hz");
    static final Range BANDWIDTH = of("1000", "10000000000", "Hz");
    public static final Range DOTS = of("1", "32768", "dots");
    public static final Range LINES = of("1", "32768", "lines");
    public static final Range FIRST_DOT = of("0", "32768", "dots");
    public static final Range FIRST_LINE = of("0", "32768", "lines");
    static final Range SAMPLES = of("2", "32768", "samples");
    public static final Range PIXELS = of("64", "32768", "pixels");
    static final Range SHARE = of("0.000001", "1000", "");
    static final Range TAPS = of("1", "64", "taps");
    static final Range CROP = of("0", "32768", "lines or dots");
    static final Range BUFFER_LINES = of("1", "32768", "lines");
    static final Range START_LINES = of("0", "32768", "lines");
    static final Range FIELD_STORES = of("1", "16", "fields");
    static final Range FIELDS = of("0", "16", "fields");
    static final Range PULL_PPM = of("0", "500000", "ppm");
    static final Range RESOLUTION_PPM = of("0", "500000", "ppm");
    static final Range PHASE_STEPS = of("1", "4096", "steps");
    static final Range JITTER_NS = of("0", "1000", "ns");
    static final Range MICROSECONDS = of("0", "10000000", "us");
    static final Range MILLISECONDS = of("0", "60000", "ms");
    static final Range OVERSCAN_PERCENT = of("0", "25", "%");
    static final Range SETTINGS = of("0", "1000", "settings");
    static final Range SIZE_MM = of("1", "20000", "mm");
    static final Range LENGTH_MM = of("1", "100000", "mm");
    static final Range CAPACITANCE_UF = of("0", "100000", "uF");
    static final Range VOLTS = of("0.1", "1000", "V");
    static final Range MILLIAMPS = of("1", "100000", "mA");
    static final Range PORTS = of("1", "64", "ports");
    static final Range AMOUNT = of("0", "1000000000", "");

    public static Range of(String least, String greatest, String unit) {
        return new Range(new BigDecimal(least), new BigDecimal(greatest), unit);
    }

    boolean contains(BigDecimal value) {
        return value.compareTo(least) >= 0 && value.compareTo(greatest) <= 0;
    }

    boolean contains(Rational value) {
        return !value.isLessThan(Rational.of(least)) && !value.isGreaterThan(Rational.of(greatest));
    }

    /** {@code 1..64}, for programs. */
    String limit() {
        return least.toPlainString() + ".." + greatest.toPlainString();
    }

    /** {@code from 1 to 64 taps}, for people. */
    String words() {
        return "from " + least.toPlainString() + " to " + greatest.toPlainString() + (unit.isEmpty() ? "" : " " + unit);
    }
}
