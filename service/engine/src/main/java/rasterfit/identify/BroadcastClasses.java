package rasterfit.identify;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import rasterfit.gear.LineStandard;
import rasterfit.identify.DotClock.Reference;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Broadcast;

/**
 * The classes of broadcast-derived timing. Sources: the standard lines of SMPTE 170M and ITU-R BT.1700 in dots of every
 * clock that divides them into whole or half dots, the lines of whole dots nearest to them (common practice), and the line
 * counts of those standards and of CTA-861-I table 1 (262 or 263, and 312, 313 or 314 lines for 240- and 288-line
 * pictures).
 */
public final class BroadcastClasses {
    private static final String OTHER_LINE = "common practice: a whole number of dots near the standard line";

    private static final List<Rational> LINES_525 = rationals("262", "525/2", "263");
    private static final List<Rational> LINES_625 = rationals("312", "625/2", "313", "314");
    private static final List<Rational> FULL_HEIGHT = rationals("525", "625");

    private static final List<BroadcastClass> ALL = build();
    private static final List<Frequency> LINE_RATES =
            ALL.stream().map(known -> known.timing().lineRate()).distinct().toList();
    private static final List<Rational> LINE_COUNTS =
            ALL.stream().map(BroadcastClass::linesPerField).distinct().toList();

    private BroadcastClasses() {}

    /** Every class, 525-line ones first, by lines per field, then by line rate and clock. */
    public static List<BroadcastClass> all() {
        return ALL;
    }

    /** The line rates of the classes. */
    static List<Frequency> lineRates() {
        return LINE_RATES;
    }

    /** The lines per field of the classes. */
    static List<Rational> lineCounts() {
        return LINE_COUNTS;
    }

    /** One way to divide a line. */
    private record Line(DotClock clock, Rational dots) {
        static Line of(Reference reference, String factor, String dots) {
            return new Line(new DotClock(reference, Rational.parse(factor)), Rational.parse(dots));
        }
    }

    private static List<BroadcastClass> build() {
        List<Line> lines525 = List.of(
                Line.of(Reference.SUBCARRIER_525, "3/2", "341"),
                // 228 cycles of the subcarrier
                Line.of(Reference.SUBCARRIER_525, "3/2", "342"),
                Line.of(Reference.SUBCARRIER_525, "15/8", "855/2"),
                Line.of(Reference.SUBCARRIER_525, "2", "456"),
                Line.of(Reference.SUBCARRIER_525, "12/5", "2736/5"),
                // the standard line, 455/2 cycles
                Line.of(Reference.LUMA_SAMPLING, "1/2", "429"),
                Line.of(Reference.LUMA_SAMPLING, "1", "858"),
                Line.of(Reference.LUMA_SAMPLING, "2", "1716"),
                Line.of(Reference.SUBCARRIER_525, "1", "455/2"),
                Line.of(Reference.SUBCARRIER_525, "6/5", "273"),
                Line.of(Reference.SUBCARRIER_525, "3/2", "1365/4"),
                Line.of(Reference.SUBCARRIER_525, "2", "455"),
                Line.of(Reference.SUBCARRIER_525, "12/5", "546"),
                Line.of(Reference.SUBCARRIER_525, "3", "1365/2"),
                Line.of(Reference.SUBCARRIER_525, "4", "910"),
                Line.of(Reference.SQUARE_PIXEL_525, "1/2", "390"),
                Line.of(Reference.SQUARE_PIXEL_525, "1", "780"));
        List<Line> lines625 = List.of(
                Line.of(Reference.SUBCARRIER_625, "6/5", "341"),
                Line.of(Reference.SUBCARRIER_625, "6/5", "681/2"),
                Line.of(Reference.SUBCARRIER_625, "1", "284"),
                // the standard line
                Line.of(Reference.LUMA_SAMPLING, "1/2", "432"),
                Line.of(Reference.LUMA_SAMPLING, "1", "864"),
                Line.of(Reference.LUMA_SAMPLING, "2", "1728"),
                Line.of(Reference.SQUARE_PIXEL_625, "1/2", "472"),
                Line.of(Reference.SQUARE_PIXEL_625, "1", "944"));
        List<BroadcastClass> all = new ArrayList<>();
        add(all, LineStandard.L525_60, LINES_525, lines525);
        all.add(fullHeight(LineStandard.L525_60, "858", "525", "CTA-861-I table 1: VIC 2 and 3"));
        add(all, LineStandard.L625_50, LINES_625, lines625);
        all.add(fullHeight(LineStandard.L625_50, "864", "625", "CTA-861-I table 1: VIC 17 and 18"));
        return List.copyOf(all);
    }

    private static void add(List<BroadcastClass> all, LineStandard standard, List<Rational> counts, List<Line> lines) {
        for (Rational count : counts) {
            for (Line line : lines) {
                all.add(new BroadcastClass(line.clock, line.dots, count, standard, sources(standard, line, count)));
            }
        }
    }

    private static BroadcastClass fullHeight(LineStandard standard, String dots, String lines, String source) {
        Line line = Line.of(Reference.LUMA_SAMPLING, "2", dots);
        return new BroadcastClass(
                line.clock,
                line.dots,
                Rational.parse(lines),
                standard,
                List.of(Reference.LUMA_SAMPLING.source(), source));
    }

    private static List<String> sources(LineStandard standard, Line line, Rational lines) {
        Set<String> sources = new LinkedHashSet<>();
        sources.add(line.clock.reference().source());
        boolean is525 = standard == LineStandard.L525_60;
        Frequency standardRate = is525 ? Broadcast.LINE_RATE_525 : Broadcast.LINE_RATE_625;
        String system = is525 ? "SMPTE 170M" : "ITU-R BT.1700";
        if (line.clock.rate().dividedBy(line.dots).equals(standardRate)) {
            sources.add(system + ": the line rate, " + (is525 ? "4.5 MHz / 286" : "15 625 Hz"));
        } else {
            sources.add(OTHER_LINE);
        }
        if (lines.isWhole()) {
            sources.add("CTA-861-I table 1, VIC " + (is525 ? "8 and 9" : "23 and 24") + ": " + lines + " lines");
        } else {
            sources.add(system + ": " + lines + " lines in a field");
        }
        return List.copyOf(sources);
    }

    /** Whether so many lines make a field as high as a whole frame of a standard. */
    static boolean isFullHeight(Rational linesPerField) {
        return FULL_HEIGHT.contains(linesPerField);
    }

    private static List<Rational> rationals(String... written) {
        return List.of(written).stream().map(Rational::parse).toList();
    }
}
