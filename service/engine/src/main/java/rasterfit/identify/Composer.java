package rasterfit.identify;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import rasterfit.gear.LineStandard;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Broadcast;

/**
 * Puts timings together from broadcast clocks and counts. The search is bounded by what was measured: counts that are not
 * those of a class are tried only where something measured leads to them.
 */
final class Composer {
    /** Between the half-height rasters (about 15 700 lines a second) and the full-height ones (twice as many). */
    private static final Frequency MIDDLE_LINE_RATE = Frequency.ofHz(22_500);

    private static final Rational TWO = Rational.of(2);

    /** How far a line rate of broadcast kinship lies from a standard's or from twice it (assumption; known: 0.6 %). */
    private static final Rational MOST_PERCENT = Rational.of(5);

    /** A line rate known worse than this fits too many numbers of dots to mean any of them (assumption). */
    private static final Rational MOST_TOLERANCE_PPM = Rational.of(200);

    private final MeasuredTiming measured;
    private final Derivation derivation;
    private final boolean anyDots;

    /** @param anyDots whether to look beyond the line rates of the classes though no dots and no clock were measured */
    Composer(MeasuredTiming measured, Derivation derivation, boolean anyDots) {
        this.measured = measured;
        this.derivation = derivation;
        boolean isSharp = derivation
                .lineRate()
                .map(hz -> !hz.tolerancePpm().isGreaterThan(MOST_TOLERANCE_PPM))
                .orElse(false);
        this.anyDots =
                (anyDots && isSharp) || measured.has(Measurand.DOTS_PER_LINE) || measured.has(Measurand.DOT_CLOCK);
    }

    /** Timings that may fit, each once with the first clock that makes it. */
    Map<SourceTiming, DotClock> timings() {
        Map<SourceTiming, DotClock> timings = new LinkedHashMap<>();
        for (DotClock clock : DotClock.all()) {
            if (measured.of(Measurand.DOT_CLOCK)
                    .map(hz -> !hz.contains(clock.rate().hz()))
                    .orElse(false)) {
                continue;
            }
            for (Rational dots : dots(clock)) {
                Frequency lineRate = clock.rate().dividedBy(dots);
                if (isOfKinship(lineRate)
                        && derivation
                                .lineRate()
                                .map(hz -> hz.contains(lineRate.hz()))
                                .orElse(true)) {
                    for (Rational lines : lines(clock, lineRate)) {
                        timings.putIfAbsent(new SourceTiming(clock.rate(), dots, lines), clock);
                    }
                }
            }
        }
        return timings;
    }

    private static boolean isOfKinship(Frequency lineRate) {
        return Stream.of(Broadcast.LINE_RATE_525, Broadcast.LINE_RATE_625)
                .flatMap(standard -> Stream.of(standard, standard.times(2)))
                .anyMatch(standard -> !lineRate.percentFrom(standard).abs().isGreaterThan(MOST_PERCENT));
    }

    private SortedSet<Rational> dots(DotClock clock) {
        Optional<Bounds> counted = measured.of(Measurand.DOTS_PER_LINE);
        if (counted.isPresent()) {
            return counted.get().isExact()
                    ? new TreeSet<>(List.of(counted.get().least()))
                    : wholesAndHalves(counted.get());
        }
        SortedSet<Rational> dots = new TreeSet<>();
        for (Frequency lineRate : BroadcastClasses.lineRates()) {
            Rational fitting = clock.rate().ratioTo(lineRate);
            if (fitting.times(2).isWhole()) {
                dots.add(fitting);
            }
        }
        if (anyDots) {
            derivation
                    .lineRate()
                    .map(hz -> Bounds.exactly(clock.rate().hz()).dividedBy(hz))
                    .ifPresent(bounds -> dots.addAll(wholesAndHalves(bounds)));
        }
        return dots;
    }

    private List<Rational> lines(DotClock clock, Frequency lineRate) {
        List<Rational> lines = new ArrayList<>();
        Optional<Bounds> limits = derivation.linesPerField();
        for (Rational known : BroadcastClasses.lineCounts()) {
            if (limits.map(bounds -> bounds.contains(known)).orElseGet(() -> isUsual(known, clock, lineRate))) {
                lines.add(known);
            }
        }
        if (lines.isEmpty() && limits.isPresent()) {
            lines.addAll(wholesAndHalves(limits.get()));
        }
        return lines;
    }

    /** Whether so many lines usually go with such a line: by the classes that have it, or else by its system. */
    private static boolean isUsual(Rational lines, DotClock clock, Frequency lineRate) {
        if (BroadcastClasses.lineRates().contains(lineRate)) {
            return BroadcastClasses.all().stream()
                    .anyMatch(known -> known.linesPerField().equals(lines)
                            && known.timing().lineRate().equals(lineRate));
        }
        boolean isFast = lineRate.compareTo(MIDDLE_LINE_RATE) > 0;
        return isFast == BroadcastClasses.isFullHeight(lines)
                && system(clock, isFast ? lineRate.dividedBy(TWO) : lineRate)
                        == new SourceTiming(clock.rate(), Rational.ONE, lines).lineStandard();
    }

    /** A clock that belongs to both systems makes a line of that one whose standard line it is nearer to. */
    private static LineStandard system(DotClock clock, Frequency halfHeightLineRate) {
        LineStandard own = clock.reference().standard();
        if (own != null) {
            return own;
        }
        Rational from525 =
                halfHeightLineRate.percentFrom(Broadcast.LINE_RATE_525).abs();
        Rational from625 =
                halfHeightLineRate.percentFrom(Broadcast.LINE_RATE_625).abs();
        return from525.isLessThan(from625) ? LineStandard.L525_60 : LineStandard.L625_50;
    }

    static SortedSet<Rational> wholesAndHalves(Bounds bounds) {
        SortedSet<Rational> counts = new TreeSet<>();
        long last = bounds.greatest().times(2).floor();
        for (long halves = bounds.least().times(2).ceil(); halves <= last; halves++) {
            counts.add(Rational.of(halves, 2));
        }
        return counts;
    }
}
