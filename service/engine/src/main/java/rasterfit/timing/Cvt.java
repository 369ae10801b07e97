package rasterfit.timing;

import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * Coordinated video timings, VESA CVT 1.2, with reduced blanking v1 and v2 (CVT 1.2) and v3 (DisplayID 2.1a §4). Exact
 * rationals throughout; the standard rounds where it says so and nowhere else.
 */
public final class Cvt {
    private static final Rational MICROS = Rational.of(1_000_000);
    /** Least vertical sync and back porch of the ordinary blanking: 550 µs. */
    private static final Rational LEAST_SYNC_AND_BACK_PORCH_US = Rational.of(550);
    /** Least vertical blanking of every reduced one: 460 µs. */
    private static final Rational LEAST_REDUCED_BLANKING_US = Rational.of(460);

    private static final int CELL = 8;
    private static final int FRONT_PORCH = 3;
    private static final int LEAST_BACK_PORCH = 7;
    /** Duty cycle of the horizontal blanking: C' = 30 %, M' = 300 %/ms, never below 20 %. */
    private static final Rational DUTY_OFFSET = Rational.of(30);

    private static final Rational DUTY_GRADIENT = Rational.of(300);
    private static final Rational LEAST_DUTY = Rational.of(20);
    private static final long COARSE_CLOCK_HZ = 250_000;
    private static final long FINE_CLOCK_HZ = 1000;
    /** Reduced blanking v3 asks for 350 ppm more, so that a source never runs too slow. */
    private static final Rational V3_HEADROOM = Rational.of(100_035, 100_000);

    private Cvt() {}

    /** How much blanking. */
    public enum Blanking {
        ORDINARY,
        REDUCED_V1,
        REDUCED_V2,
        /** Reduced blanking v2 at 1000/1001 of the rate. */
        REDUCED_V2_VIDEO,
        REDUCED_V3
    }

    /**
     * The timing for an active size at about a rate.
     *
     * @param horizontalActive rounded down to character cells of 8 where the standard does so
     * @param verticalActive lines per frame
     * @param fieldRate fields per second that are asked for; the timing's own rate may differ
     * @param scan interlaced only with ordinary blanking
     * @throws IllegalArgumentException if the size or rate leaves no room for blanking, or the scan is not defined
     */
    public static RasterTiming timing(
            int horizontalActive, int verticalActive, Frequency fieldRate, Scan scan, Blanking blanking) {
        if (horizontalActive < CELL || verticalActive < 1 || fieldRate.hz().signum() <= 0) {
            throw new IllegalArgumentException("a timing needs at least one cell of 8 pixels, one line and a rate");
        }
        if (scan == Scan.INTERLACED && blanking != Blanking.ORDINARY) {
            throw new IllegalArgumentException("reduced blanking is progressive");
        }
        return switch (blanking) {
            case ORDINARY -> ordinary(horizontalActive, verticalActive, fieldRate, scan);
            case REDUCED_V1 -> reducedV1(horizontalActive, verticalActive, fieldRate);
            case REDUCED_V2 -> reducedLater(horizontalActive, verticalActive, fieldRate, fieldRate);
            case REDUCED_V2_VIDEO ->
                reducedLater(
                        horizontalActive, verticalActive, fieldRate, fieldRate.dividedBy(Broadcast.THOUSAND_AND_ONE));
            case REDUCED_V3 -> reducedV3(horizontalActive, verticalActive, fieldRate.times(V3_HEADROOM));
        };
    }

    private static RasterTiming ordinary(int width, int height, Frequency rate, Scan scan) {
        boolean interlaced = scan == Scan.INTERLACED;
        int active = width / CELL * CELL;
        int lines = interlaced ? height / 2 : height;
        Rational half = interlaced ? Rational.HALF : Rational.ZERO;
        int sync = verticalSync(width, height);
        Rational linePeriodUs = linePeriodUs(
                rate,
                LEAST_SYNC_AND_BACK_PORCH_US,
                Rational.of(lines + FRONT_PORCH).plus(half));
        int syncAndBack = (int)
                Math.max(LEAST_SYNC_AND_BACK_PORCH_US.dividedBy(linePeriodUs).floor() + 1, sync + LEAST_BACK_PORCH);
        Rational duty = DUTY_OFFSET
                .minus(DUTY_GRADIENT.times(linePeriodUs).dividedBy(1000))
                .max(LEAST_DUTY);
        int cellPair = 2 * CELL;
        int blank = (int) duty.times(active)
                        .dividedBy(Rational.of(100).minus(duty))
                        .dividedBy(cellPair)
                        .floor()
                * cellPair;
        int total = active + blank;
        int horizontalSync = (int) Rational.of(8L * total, 100L * CELL).floor() * CELL;
        long clock = Rational.of(total)
                        .times(MICROS)
                        .dividedBy(linePeriodUs)
                        .dividedBy(COARSE_CLOCK_HZ)
                        .floor()
                * COARSE_CLOCK_HZ;
        int frameLines = interlaced ? 2 * (lines + FRONT_PORCH + syncAndBack) + 1 : lines + FRONT_PORCH + syncAndBack;
        return new RasterTiming(
                Frequency.ofHz(clock),
                active,
                blank / 2 - horizontalSync,
                horizontalSync,
                blank / 2,
                interlaced ? lines * 2 : lines,
                FRONT_PORCH,
                sync,
                syncAndBack - sync,
                frameLines,
                scan,
                Polarity.NEGATIVE,
                Polarity.POSITIVE);
    }

    private static RasterTiming reducedV1(int width, int height, Frequency rate) {
        int active = width / CELL * CELL;
        int sync = verticalSync(width, height);
        int blank = (int) Math.max(reducedBlanking(rate, height), FRONT_PORCH + sync + LEAST_BACK_PORCH);
        int total = active + 160;
        long clock = rate.hz()
                        .times((long) (height + blank) * total)
                        .dividedBy(COARSE_CLOCK_HZ)
                        .floor()
                * COARSE_CLOCK_HZ;
        return reduced(clock, active, 48, 80, height, FRONT_PORCH, sync, blank - FRONT_PORCH - sync);
    }

    /** @param clockRate the rate at which the clock is reckoned */
    private static RasterTiming reducedLater(int width, int height, Frequency rate, Frequency clockRate) {
        int blank = laterBlanking(rate, height);
        long clock = clockRate
                        .hz()
                        .times((long) (height + blank) * (width + 80))
                        .dividedBy(FINE_CLOCK_HZ)
                        .floor()
                * FINE_CLOCK_HZ;
        return reduced(clock, width, 8, 40, height, blank - 14, 8, 6);
    }

    private static RasterTiming reducedV3(int width, int height, Frequency rate) {
        int active = width / CELL * CELL;
        int blank = laterBlanking(rate, height);
        long clock = rate.hz()
                        .times((long) (height + blank) * (active + 80))
                        .dividedBy(FINE_CLOCK_HZ)
                        .ceil()
                * FINE_CLOCK_HZ;
        return reduced(clock, active, 8, 40, height, blank - 14, 8, 6);
    }

    private static RasterTiming reduced(
            long clock, int active, int frontPorch, int backPorch, int height, int top, int sync, int bottom) {
        return new RasterTiming(
                Frequency.ofHz(clock),
                active,
                frontPorch,
                32,
                backPorch,
                height,
                top,
                sync,
                bottom,
                height + top + sync + bottom,
                Scan.PROGRESSIVE,
                Polarity.POSITIVE,
                Polarity.NEGATIVE);
    }

    /** Sync of 8 lines, back porch of 6, and a front porch of at least 1. */
    private static int laterBlanking(Frequency rate, int height) {
        return (int) Math.max(reducedBlanking(rate, height), 15);
    }

    private static long reducedBlanking(Frequency rate, int height) {
        Rational linePeriodUs = linePeriodUs(rate, LEAST_REDUCED_BLANKING_US, Rational.of(height));
        return LEAST_REDUCED_BLANKING_US.dividedBy(linePeriodUs).floor() + 1;
    }

    /** The estimate from which the standard sets out: what is left of a field after the blanking, over its lines. */
    private static Rational linePeriodUs(Frequency rate, Rational blankingUs, Rational lines) {
        Rational left = MICROS.dividedBy(rate.hz()).minus(blankingUs);
        if (left.signum() <= 0) {
            throw new IllegalArgumentException("at " + rate + " a field is no longer than its blanking");
        }
        return left.dividedBy(lines);
    }

    /** Lines of vertical sync tell the aspect: CVT 1.2 table 3. */
    private static int verticalSync(int width, int height) {
        return isAspect(width, height, 4, 3)
                ? 4
                : isAspect(width, height, 16, 9)
                        ? 5
                        : isAspect(width, height, 16, 10)
                                ? 6
                                : isAspect(width, height, 5, 4) || isAspect(width, height, 15, 9) ? 7 : 10;
    }

    private static boolean isAspect(int width, int height, int across, int down) {
        return (long) width * down == (long) height * across;
    }
}
