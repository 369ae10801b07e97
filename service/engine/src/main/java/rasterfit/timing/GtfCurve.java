package rasterfit.timing;

import rasterfit.quantity.Rational;

/**
 * The blanking curve: the share of a line that is blanked, in %, is C' − M' · line period in ms, with C' = (C − J)·K/256 +
 * J and M' = M·K/256 (GTF 1.1 §4). A display may state its own (E-EDID A2 table 3.27).
 *
 * @param c offset in %, up to 127.5
 * @param m gradient in %/kHz, up to 65,535
 * @param k scaling factor, up to 255
 * @param j weighting of the scaling factor in %, up to 127.5
 */
public record GtfCurve(Rational c, Rational m, Rational k, Rational j) {
    public static final Rational MOST_PERCENT = Rational.of(255, 2);
    public static final Rational MOST_GRADIENT = Rational.of(65_535);
    public static final Rational MOST_SCALING = Rational.of(255);

    /** C = 40, M = 600, K = 128, J = 20. */
    public static final GtfCurve DEFAULT =
            new GtfCurve(Rational.of(40), Rational.of(600), Rational.of(128), Rational.of(20));

    public GtfCurve {
        check("C", c, MOST_PERCENT);
        check("M", m, MOST_GRADIENT);
        check("K", k, MOST_SCALING);
        check("J", j, MOST_PERCENT);
    }

    private static void check(String name, Rational value, Rational most) {
        if (value.signum() < 0 || value.isGreaterThan(most)) {
            throw new IllegalArgumentException(name + " of a blanking curve lies from 0 to " + most);
        }
    }

    Rational dutyPercent(Rational linePeriodUs) {
        Rational offset = c.minus(j).times(k).dividedBy(256).plus(j);
        Rational gradient = k.times(m).dividedBy(256);
        return offset.minus(gradient.times(linePeriodUs).dividedBy(1000));
    }
}
