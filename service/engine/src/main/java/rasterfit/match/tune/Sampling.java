package rasterfit.match.tune;

import rasterfit.gear.Digitiser;
import rasterfit.gear.Mode;
import rasterfit.match.Measures;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** What N samples per line do to the dots of a mode. */
public final class Sampling {
    private Sampling() {}

    public static Rational samplesPerDot(Mode mode, int samplesPerLine) {
        return Rational.of(samplesPerLine).dividedBy(mode.dotsPerLine());
    }

    /** The edge of a dot as a share of the dot: min(1, dot clock · (rise time + jitter)); the same for every N. */
    public static double edgeSoftness(Mode mode, SignalChain chain) {
        double unsharp = chain.riseTimeSeconds(mode) + chain.jitterSeconds();
        return Math.min(1, mode.dotClock().hz().toDouble() * unsharp);
    }

    /**
     * All about one sample count.
     *
     * @param considered how many sample counts were considered
     */
    public static Measures.Sampling measure(
            Mode mode, int samplesPerLine, SignalChain chain, int considered, Steps steps) {
        Rational perDot = samplesPerDot(mode, samplesPerLine);
        Frequency rate = mode.lineRate().times(samplesPerLine);
        boolean whole = perDot.isWhole();
        long least = perDot.floor();
        Rational greatestShare = perDot.minus(Rational.of(least));
        Frequency alias = perDot.isLessThan(Rational.ONE) ? alias(mode, rate) : null;
        double softness = edgeSoftness(mode, chain);
        Digitiser digitiser = chain.digitiser();
        boolean single = whole && perDot.equals(Rational.ONE);
        Integer phaseSteps = digitiser == null ? null : digitiser.phaseSteps();
        steps.tell(
                "samplesPerDot",
                step -> step.in("samples per line", samplesPerLine, "")
                        .in("dots per line", mode.dotsPerLine(), "")
                        .by("samples per line / dots per line", "definition")
                        .gives(perDot, ""));
        steps.tell(
                "sampleRate",
                step -> step.in("samples per line", samplesPerLine, "")
                        .in("line rate", mode.lineRate().hz(), "Hz")
                        .by("samples per line · line rate", "definition")
                        .gives(rate.hz(), "Hz"));
        steps.tell(
                "edgeSoftness",
                step -> step.in("dot clock", mode.dotClock().hz(), "Hz")
                        .in("rise time", nanos(chain.riseTimeSeconds(mode)))
                        .in("jitter", nanos(chain.jitterSeconds()))
                        .by("min(1, dot clock · (rise time + jitter)), rise time = √Σ(0.35/B)²", "common practice")
                        .gives(String.valueOf(sixDigits(softness))));
        return new Measures.Sampling(
                samplesPerLine,
                perDot,
                rate,
                whole,
                (int) least,
                (int) perDot.ceil(),
                Rational.ONE.minus(greatestShare),
                whole ? null : Rational.of(perDot.denominator().longValueExact()),
                alias,
                softness,
                single ? 1 - softness : null,
                single && phaseSteps != null ? (int) Math.floor(phaseSteps * (1 - softness)) : null,
                whole && !single ? Math.min((int) least, softSamples(rate, chain, mode)) : null,
                considered);
    }

    /** Where the finest detail, at half the dot clock, lands: its distance from the nearest multiple of the sample rate. */
    private static Frequency alias(Mode mode, Frequency rate) {
        Rational finest = mode.dotClock().hz().dividedBy(2);
        long nearest = finest.dividedBy(rate.hz()).round();
        return new Frequency(finest.minus(rate.hz().times(nearest)).abs());
    }

    private static int softSamples(Frequency rate, SignalChain chain, Mode mode) {
        return (int) Math.ceil(rate.hz().toDouble() * (chain.riseTimeSeconds(mode) + chain.jitterSeconds()));
    }

    private static String nanos(double seconds) {
        return sixDigits(seconds * 1e9) + " ns";
    }

    private static double sixDigits(double value) {
        return Rational.of(new java.math.BigDecimal(value)).toSixDigits().doubleValue();
    }
}
