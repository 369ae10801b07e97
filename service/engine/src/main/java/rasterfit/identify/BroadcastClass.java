package rasterfit.identify;

import java.util.List;
import java.util.Locale;
import rasterfit.gear.LineStandard;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/**
 * A timing that derives from broadcast clocks, in use by equipment of many kinds.
 *
 * @param sources where clock, line rate and line count are defined, or {@code common practice}
 */
public record BroadcastClass(
        DotClock clock, Rational dotsPerLine, Rational linesPerField, LineStandard lineStandard, List<String> sources) {

    public BroadcastClass {
        sources = List.copyOf(sources);
    }

    public SourceTiming timing() {
        return new SourceTiming(clock.rate(), dotsPerLine, linesPerField);
    }

    /**
     * A slug of system, scan and lines per frame, clock, and dots per line: {@code l525-p262-sc3over2-d341} has 525-line
     * kinship, 262 progressive lines, and 341 dots of 3/2 times the subcarrier. {@code luma} and {@code square} stand for
     * the sampling rates.
     */
    public String id() {
        SourceTiming timing = timing();
        return String.format(
                Locale.ROOT,
                "%s-%s%s-%s-d%s",
                lineStandard == LineStandard.L525_60 ? "l525" : "l625",
                timing.scan() == Scan.PROGRESSIVE ? "p" : "i",
                timing.linesPerFrame(),
                clock.slug(),
                DotClock.slug(dotsPerLine));
    }

    /** Cycles of the system's subcarrier in a line: 455/2 on the standard 525-line system's. */
    public Rational subcarrierCyclesPerLine() {
        DotClock.Reference subcarrier = lineStandard == LineStandard.L525_60
                ? DotClock.Reference.SUBCARRIER_525
                : DotClock.Reference.SUBCARRIER_625;
        return subcarrier.rate().ratioTo(timing().lineRate());
    }
}
