package rasterfit.timing;

import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * The generalised timing formula, VESA GTF 1.1, for a wanted field rate. The pixel clock that comes out is exact and usually
 * a fraction. Constants: GTF 1.1 §4 (the number of the clause from memory), checked against two independent tools.
 */
public final class Gtf {
    private static final Rational MICROS = Rational.of(1_000_000);
    /** Vertical sync and back porch together: 550 µs. */
    private static final Rational SYNC_AND_BACK_PORCH_US = Rational.of(550);

    private static final int CELL = 8;
    private static final int FRONT_PORCH = 1;
    private static final int SYNC = 3;
    /** Horizontal sync is 8 % of a line. */
    private static final Rational SYNC_SHARE = Rational.of(8, 100);
    /** Margins are 1.8 % of the active size. */
    private static final Rational MARGIN_SHARE = Rational.of(18, 1000);

    private static final Rational HUNDRED = Rational.of(100);

    private Gtf() {}

    /** The margins that the request asks for. */
    public static Border border(GtfRequest request) {
        if (!request.margins()) {
            return Border.NONE;
        }
        long cells = MARGIN_SHARE.times(activePixels(request)).dividedBy(CELL).round();
        return new Border((int) cells * CELL, (int)
                MARGIN_SHARE.times(linesOfField(request)).round());
    }

    /**
     * The timing; margins are counted to the porches.
     *
     * @throws IllegalArgumentException if the curve leaves no room for sync and porches at this size and rate
     */
    public static RasterTiming timing(GtfRequest request) {
        boolean interlaced = request.scan() == Scan.INTERLACED;
        Border border = border(request);
        int pixels = activePixels(request) + 2 * border.horizontalPixels();
        int lines = linesOfField(request) + 2 * border.verticalLines();
        Rational halfLine = interlaced ? Rational.HALF : Rational.ZERO;
        Rational fieldUs = MICROS.dividedBy(request.fieldRate().hz());
        Rational estimateUs = fieldUs.minus(SYNC_AND_BACK_PORCH_US)
                .dividedBy(Rational.of(lines + FRONT_PORCH).plus(halfLine));
        int syncAndBack = (int) SYNC_AND_BACK_PORCH_US.dividedBy(estimateUs).round();
        if (syncAndBack < SYNC) {
            throw new IllegalArgumentException("lines this long leave no vertical back porch");
        }
        int wholeLines = lines + syncAndBack + FRONT_PORCH;
        // Not the estimate, but the period that gives exactly the rate asked for.
        Rational linePeriodUs = fieldUs.dividedBy(Rational.of(wholeLines).plus(halfLine));
        int blank = blankPixels(request, pixels, linePeriodUs);
        int total = pixels + blank;
        int sync = (int) SYNC_SHARE.times(total).dividedBy(CELL).round() * CELL;
        if (sync == 0 || blank / 2 < sync) {
            throw new IllegalArgumentException(
                    "the blanking curve leaves no room for horizontal sync at this size and rate");
        }
        boolean secondary = request.secondaryCurve() != null;
        int fields = request.scan().fieldsPerFrame();
        return new RasterTiming(
                new Frequency(Rational.of(total).times(MICROS).dividedBy(linePeriodUs)),
                activePixels(request),
                blank / 2 - sync + border.horizontalPixels(),
                sync,
                blank / 2 + border.horizontalPixels(),
                fields * linesOfField(request),
                FRONT_PORCH + border.verticalLines(),
                SYNC,
                syncAndBack - SYNC + border.verticalLines(),
                fields * wholeLines + (interlaced ? 1 : 0),
                request.scan(),
                secondary ? Polarity.POSITIVE : Polarity.NEGATIVE,
                secondary ? Polarity.NEGATIVE : Polarity.POSITIVE);
    }

    private static int blankPixels(GtfRequest request, int pixels, Rational linePeriodUs) {
        GtfCurve curve = request.secondaryCurve() == null ? GtfCurve.DEFAULT : request.secondaryCurve();
        Rational duty = curve.dutyPercent(linePeriodUs);
        if (duty.signum() <= 0) {
            throw new IllegalArgumentException("the blanking curve leaves no blanking at this size and rate");
        }
        boolean leavesPicture = duty.isLessThan(HUNDRED);
        Rational exact = leavesPicture ? duty.times(pixels).dividedBy(HUNDRED.minus(duty)) : Rational.ZERO;
        if (!leavesPicture || exact.isGreaterThan(Rational.of(FormulaLimits.MOST_PIXELS))) {
            throw new IllegalArgumentException(
                    "the blanking curve leaves no time for the picture at this size and rate");
        }
        int cellPair = 2 * CELL;
        return (int) exact.dividedBy(cellPair).round() * cellPair;
    }

    private static int activePixels(GtfRequest request) {
        return (int) Rational.of(request.horizontalActive(), CELL).round() * CELL;
    }

    private static int linesOfField(GtfRequest request) {
        return (int) Rational.of(request.verticalActive(), request.scan().fieldsPerFrame())
                .round();
    }
}
