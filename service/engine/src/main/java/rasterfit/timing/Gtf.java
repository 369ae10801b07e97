package rasterfit.timing;

import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** The generalised timing formula, VESA GTF 1.1, for a wanted frame rate, progressive and without margins. */
public final class Gtf {
    private static final Rational MICROS = Rational.of(1_000_000);
    private static final Rational LEAST_SYNC_AND_BACK_PORCH_US = Rational.of(550);
    private static final int CELL = 8;
    private static final int FRONT_PORCH = 1;
    private static final int SYNC = 3;

    private Gtf() {}

    /**
     * The blanking curve: M in %/kHz, C and J in %, K without unit (GTF 1.1 §4; a display may state its own, E-EDID A2 table
     * 3.27).
     */
    public record Curve(Rational c, Rational m, Rational k, Rational j) {
        /** C = 40, M = 600, K = 128, J = 20. */
        public static final Curve DEFAULT =
                new Curve(Rational.of(40), Rational.of(600), Rational.of(128), Rational.of(20));

        private Rational offset() {
            return c.minus(j).times(k).dividedBy(256).plus(j);
        }

        private Rational gradient() {
            return k.times(m).dividedBy(256);
        }
    }

    /**
     * The timing for an active size at a rate; the pixel clock is exact and usually a fraction.
     *
     * @param horizontalActive rounded to the nearest character cell of 8
     * @throws IllegalArgumentException if the size or rate leaves no room for blanking
     */
    public static RasterTiming timing(int horizontalActive, int verticalActive, Frequency frameRate, Curve curve) {
        if (horizontalActive < CELL || verticalActive < 1 || frameRate.hz().signum() <= 0) {
            throw new IllegalArgumentException("a timing needs at least one cell of 8 pixels, one line and a rate");
        }
        int active = (int) Rational.of(horizontalActive, CELL).round() * CELL;
        Rational left = MICROS.dividedBy(frameRate.hz()).minus(LEAST_SYNC_AND_BACK_PORCH_US);
        if (left.signum() <= 0) {
            throw new IllegalArgumentException("at " + frameRate + " a frame is no longer than its blanking");
        }
        Rational estimateUs = left.dividedBy((long) verticalActive + FRONT_PORCH);
        int syncAndBack =
                (int) LEAST_SYNC_AND_BACK_PORCH_US.dividedBy(estimateUs).round();
        int frameLines = verticalActive + syncAndBack + FRONT_PORCH;
        // The line period that gives exactly the rate asked for.
        Rational linePeriodUs = MICROS.dividedBy(frameRate.hz()).dividedBy(frameLines);
        Rational duty =
                curve.offset().minus(curve.gradient().times(linePeriodUs).dividedBy(1000));
        if (duty.signum() <= 0 || syncAndBack < SYNC) {
            throw new IllegalArgumentException("the blanking curve leaves no blanking for this size and rate");
        }
        int cellPair = 2 * CELL;
        int blank = (int) duty.times(active)
                        .dividedBy(Rational.of(100).minus(duty))
                        .dividedBy(cellPair)
                        .round()
                * cellPair;
        int total = active + blank;
        int sync = (int) Rational.of(8L * total, 100L * CELL).round() * CELL;
        return new RasterTiming(
                new Frequency(Rational.of(total).times(MICROS).dividedBy(linePeriodUs)),
                active,
                blank / 2 - sync,
                sync,
                blank / 2,
                verticalActive,
                FRONT_PORCH,
                SYNC,
                syncAndBack - SYNC,
                frameLines,
                Scan.PROGRESSIVE,
                Polarity.NEGATIVE,
                Polarity.POSITIVE);
    }
}
