package rasterfit.timing;

import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * Coordinated video timings, VESA CVT 1.2, with its reduced blanking v1 and v2, and v3 of CVT 2.0 as DisplayID 2.1a §4 uses
 * it. Exact rationals throughout; the standard rounds where it says so and nowhere else. The constants of CVT 1.2 reproduce
 * 21 ordinary timings, 22 of reduced blanking v1 and 2 of v2 that VESA DMT publishes. The numbers of clauses and tables are
 * given from memory.
 */
public final class Cvt {
    private static final Rational MICROS = Rational.of(1_000_000);
    private static final int CELL = 8;
    /** Margins are 1.8 % of the active size (CVT 1.2 table 3-2). */
    private static final Rational MARGIN_SHARE = Rational.of(18, 1000);

    private static final int FRONT_PORCH = 3;
    private static final int LEAST_BACK_PORCH = 7;
    private static final long COARSE_CLOCK_HZ = 250_000;

    /** Ordinary blanking (CVT 1.2 §5.2): least vertical sync and back porch, 550 µs. */
    private static final Rational LEAST_SYNC_AND_BACK_PORCH_US = Rational.of(550);
    /** The blanked share of a line in %: C' − M' · line period in ms, C' = 30, M' = 300, never below 20. */
    private static final Rational DUTY_OFFSET = Rational.of(30);

    private static final Rational DUTY_GRADIENT = Rational.of(300);
    private static final Rational LEAST_DUTY = Rational.of(20);
    /** Horizontal sync is 8 % of a line. */
    private static final Rational SYNC_SHARE = Rational.of(8, 100);

    /** Least vertical blanking of versions 1 and 2 (CVT 1.2 §5.3, §5.4): 460 µs. */
    private static final int LEAST_REDUCED_US = 460;

    private static final int REDUCED_HORIZONTAL_SYNC = 32;
    private static final int V1_FRONT_PORCH = 48;
    private static final int V1_BACK_PORCH = 80;

    /** Versions 2 and 3: 8 pixels before sync; 8 lines of sync, 6 behind it, at least 1 before it. */
    private static final int LATER_FRONT_PORCH = 8;

    private static final int LATER_VERTICAL_SYNC = 8;
    private static final int LATER_VERTICAL_BACK_PORCH = 6;
    private static final int LATER_LEAST_VERTICAL_FRONT_PORCH = 1;
    private static final int V2_BACK_PORCH = 40;
    private static final long FINE_CLOCK_HZ = 1000;
    /** Version 3 asks for 350 ppm more (DisplayID 2.1a tables 4-23 and 4-52), so that a source never runs too slow. */
    private static final Rational V3_HEADROOM = Rational.of(100_035, 100_000);

    private Cvt() {}

    /** The margins that the request asks for. */
    public static Border border(CvtRequest request) {
        if (!request.margins()) {
            return Border.NONE;
        }
        long cells = MARGIN_SHARE
                .times(wholeCells(request.horizontalActive()))
                .dividedBy(CELL)
                .floor();
        return new Border((int) cells * CELL, (int)
                MARGIN_SHARE.times(linesOfField(request)).floor());
    }

    /**
     * The timing; margins are counted to the porches.
     *
     * @throws IllegalArgumentException if so few pixels leave no room for horizontal sync, or no clock once it is rounded
     */
    public static RasterTiming timing(CvtRequest request) {
        CvtBlanking blanking = request.blanking();
        if (blanking instanceof CvtBlanking.Ordinary) {
            return ordinary(request);
        } else if (blanking instanceof CvtBlanking.ReducedV1) {
            return reducedV1(request);
        } else if (blanking instanceof CvtBlanking.ReducedV2 v2) {
            return reducedV2(request, v2.videoOptimised());
        }
        return reducedV3(request, (CvtBlanking.ReducedV3) blanking);
    }

    private static RasterTiming ordinary(CvtRequest request) {
        boolean interlaced = request.scan() == Scan.INTERLACED;
        Border border = border(request);
        int pixels = wholeCells(request.horizontalActive()) + 2 * border.horizontalPixels();
        int lines = linesOfField(request) + 2 * border.verticalLines();
        Rational halfLine = interlaced ? Rational.HALF : Rational.ZERO;
        int sync = verticalSync(request);
        Rational linePeriodUs = linePeriodUs(
                request.fieldRate(),
                LEAST_SYNC_AND_BACK_PORCH_US,
                Rational.of(lines + FRONT_PORCH).plus(halfLine));
        int syncAndBack = (int)
                Math.max(LEAST_SYNC_AND_BACK_PORCH_US.dividedBy(linePeriodUs).floor() + 1, sync + LEAST_BACK_PORCH);
        Rational duty = DUTY_OFFSET
                .minus(DUTY_GRADIENT.times(linePeriodUs).dividedBy(1000))
                .max(LEAST_DUTY);
        int cellPair = 2 * CELL;
        int blank = (int) duty.times(pixels)
                        .dividedBy(Rational.of(100).minus(duty))
                        .dividedBy(cellPair)
                        .floor()
                * cellPair;
        int total = pixels + blank;
        int horizontalSync = (int) SYNC_SHARE.times(total).dividedBy(CELL).floor() * CELL;
        // Sync never outgrows its half of the blanking, which is at least a fifth of the line but for one cell.
        if (horizontalSync == 0) {
            throw new IllegalArgumentException("so few pixels leave no room for horizontal sync");
        }
        Frequency clock = roundedDown(Rational.of(total).times(MICROS).dividedBy(linePeriodUs), COARSE_CLOCK_HZ);
        return new RasterTiming(
                clock,
                wholeCells(request.horizontalActive()),
                blank / 2 - horizontalSync + border.horizontalPixels(),
                horizontalSync,
                blank / 2 + border.horizontalPixels(),
                activeLines(request),
                FRONT_PORCH + border.verticalLines(),
                sync,
                syncAndBack - sync + border.verticalLines(),
                frameLines(request, lines + FRONT_PORCH + syncAndBack),
                request.scan(),
                Polarity.NEGATIVE,
                Polarity.POSITIVE);
    }

    private static RasterTiming reducedV1(CvtRequest request) {
        Border border = border(request);
        int active = wholeCells(request.horizontalActive());
        int lines = linesOfField(request) + 2 * border.verticalLines();
        int sync = verticalSync(request);
        int blank = Math.max(
                reducedBlanking(request.fieldRate(), LEAST_REDUCED_US, lines), FRONT_PORCH + sync + LEAST_BACK_PORCH);
        int total = active + 2 * border.horizontalPixels() + V1_FRONT_PORCH + REDUCED_HORIZONTAL_SYNC + V1_BACK_PORCH;
        int frameLines = frameLines(request, lines + blank);
        Rational linesOfField = Rational.of(frameLines, request.scan().fieldsPerFrame());
        return reduced(
                request,
                roundedDown(request.fieldRate().hz().times(linesOfField).times(total), COARSE_CLOCK_HZ),
                active,
                V1_FRONT_PORCH + border.horizontalPixels(),
                V1_BACK_PORCH + border.horizontalPixels(),
                FRONT_PORCH + border.verticalLines(),
                sync,
                blank - FRONT_PORCH - sync + border.verticalLines(),
                frameLines);
    }

    private static RasterTiming reducedV2(CvtRequest request, boolean videoOptimised) {
        int blank = laterBlanking(request.fieldRate(), LEAST_REDUCED_US, request.verticalActive());
        int active = request.horizontalActive();
        int total = active + LATER_FRONT_PORCH + REDUCED_HORIZONTAL_SYNC + V2_BACK_PORCH;
        int frameLines = request.verticalActive() + blank;
        // The blanking follows from the rate asked for, only the clock from the slower one.
        Frequency rate =
                videoOptimised ? request.fieldRate().dividedBy(Broadcast.THOUSAND_AND_ONE) : request.fieldRate();
        return reduced(
                request,
                roundedDown(rate.hz().times((long) total * frameLines), FINE_CLOCK_HZ),
                active,
                LATER_FRONT_PORCH,
                V2_BACK_PORCH,
                blank - LATER_VERTICAL_SYNC - LATER_VERTICAL_BACK_PORCH,
                LATER_VERTICAL_SYNC,
                LATER_VERTICAL_BACK_PORCH,
                frameLines);
    }

    private static RasterTiming reducedV3(CvtRequest request, CvtBlanking.ReducedV3 v3) {
        Frequency rate = request.fieldRate().times(V3_HEADROOM);
        int wanted = reducedBlanking(rate, v3.leastVerticalMicroseconds(), request.verticalActive());
        int blank = laterBlanking(rate, v3.leastVerticalMicroseconds(), request.verticalActive());
        int mostBehindSync = blank - LATER_VERTICAL_SYNC - LATER_LEAST_VERTICAL_FRONT_PORCH;
        int behindSync = v3.earlySync() ? Math.min(wanted / 2, mostBehindSync) : LATER_VERTICAL_BACK_PORCH;
        int active = wholeCells(request.horizontalActive());
        int total = active + v3.horizontalPixels();
        int frameLines = request.verticalActive() + blank;
        return reduced(
                request,
                roundedUp(rate.hz().times((long) total * frameLines), FINE_CLOCK_HZ),
                active,
                LATER_FRONT_PORCH,
                v3.horizontalPixels() - LATER_FRONT_PORCH - REDUCED_HORIZONTAL_SYNC,
                blank - LATER_VERTICAL_SYNC - behindSync,
                LATER_VERTICAL_SYNC,
                behindSync,
                frameLines);
    }

    private static RasterTiming reduced(
            CvtRequest request,
            Frequency clock,
            int active,
            int frontPorch,
            int backPorch,
            int verticalFrontPorch,
            int verticalSync,
            int verticalBackPorch,
            int frameLines) {
        return new RasterTiming(
                clock,
                active,
                frontPorch,
                REDUCED_HORIZONTAL_SYNC,
                backPorch,
                activeLines(request),
                verticalFrontPorch,
                verticalSync,
                verticalBackPorch,
                frameLines,
                request.scan(),
                Polarity.POSITIVE,
                Polarity.NEGATIVE);
    }

    private static int laterBlanking(Frequency rate, int leastUs, int lines) {
        return Math.max(
                reducedBlanking(rate, leastUs, lines),
                LATER_LEAST_VERTICAL_FRONT_PORCH + LATER_VERTICAL_SYNC + LATER_VERTICAL_BACK_PORCH);
    }

    private static int reducedBlanking(Frequency rate, int leastUs, int lines) {
        Rational least = Rational.of(leastUs);
        return (int) least.dividedBy(linePeriodUs(rate, least, Rational.of(lines)))
                        .floor()
                + 1;
    }

    /** The estimate from which the standard sets out: what is left of a field after the blanking, over its lines. */
    private static Rational linePeriodUs(Frequency rate, Rational blankingUs, Rational lines) {
        return MICROS.dividedBy(rate.hz()).minus(blankingUs).dividedBy(lines);
    }

    private static Frequency roundedDown(Rational hz, long stepHz) {
        long steps = hz.dividedBy(stepHz).floor();
        if (steps == 0) {
            throw new IllegalArgumentException(
                    "so few pixels and lines need a clock below one step of " + Frequency.ofHz(stepHz));
        }
        return Frequency.ofHz(steps * stepHz);
    }

    private static Frequency roundedUp(Rational hz, long stepHz) {
        return Frequency.ofHz(hz.dividedBy(stepHz).ceil() * stepHz);
    }

    private static int wholeCells(int pixels) {
        return pixels / CELL * CELL;
    }

    private static int linesOfField(CvtRequest request) {
        return request.verticalActive() / request.scan().fieldsPerFrame();
    }

    private static int activeLines(CvtRequest request) {
        return linesOfField(request) * request.scan().fieldsPerFrame();
    }

    /** Interlaced fields end on half a line. */
    private static int frameLines(CvtRequest request, int wholeLinesOfField) {
        return request.scan() == Scan.INTERLACED ? 2 * wholeLinesOfField + 1 : wholeLinesOfField;
    }

    /** The number of lines of vertical sync tells the aspect, 10 any other (CVT 1.2 table 3-2). */
    private static int verticalSync(CvtRequest request) {
        if (hasAspect(request, 4, 3)) {
            return 4;
        } else if (hasAspect(request, 16, 9)) {
            return 5;
        } else if (hasAspect(request, 16, 10)) {
            return 6;
        } else if (hasAspect(request, 5, 4) || hasAspect(request, 15, 9)) {
            return 7;
        }
        return 10;
    }

    private static boolean hasAspect(CvtRequest request, int across, int down) {
        return (long) request.horizontalActive() * down == (long) request.verticalActive() * across;
    }
}
