package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Format;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.match.route.Route;
import rasterfit.quantity.Rational;
import rasterfit.rule.ProcessingRules;
import rasterfit.rule.Refusal;

/**
 * Every way of processing that a route offers for a group of modes.
 *
 * @param impossible ways that can be ruled out without looking at a setting; each counts as one
 */
record Layouts(List<Layout> possible, List<Refusal> impossible) {
    /** Between the half-height rasters (up to 314 lines per field) and the full-height ones (from 525). */
    private static final int FULL_HEIGHT_LINES = 400;

    static Layouts of(Route route, Captured captured) {
        List<Layout> possible = new ArrayList<>();
        List<Refusal> impossible = new ArrayList<>();
        Route.Leg leg = route.leg();
        if (leg == null) {
            possible.add(new DirectLayout(route, captured, null));
        } else {
            for (Processing processing : leg.converter().processing()) {
                add(route, leg, captured, processing, possible, impossible);
            }
        }
        return new Layouts(List.copyOf(possible), List.copyOf(impossible));
    }

    private static void add(
            Route route,
            Route.Leg leg,
            Captured captured,
            Processing processing,
            List<Layout> possible,
            List<Refusal> impossible) {
        Format from = route.signal().format();
        Format to = leg.output().format();
        Digitiser digitiser = from.isDigital() ? null : leg.input().digitiser();
        if (processing instanceof Processing.FormatOnly) {
            if (from.isDigital() || !to.isDigital()) {
                possible.add(new DirectLayout(route, captured, processing));
            } else if (digitiser != null) {
                possible.addAll(RepeatLayout.all(
                        route, leg, digitiser, captured, processing, 1, NominalPicture.fieldLines(captured)));
            } else {
                impossible.add(ProcessingRules.formatNotProduced(from, to, processing.id()));
            }
        } else if (processing instanceof Processing.LineRepeat repeat) {
            addRepeats(route, leg, digitiser, captured, repeat, possible, impossible);
        } else if (processing instanceof Processing.RasterScale scale) {
            if (digitiser == null && !from.isDigital()) {
                impossible.add(ProcessingRules.formatNotProduced(from, to, processing.id()));
            } else {
                for (OfferedTiming timing : scale.timings()) {
                    possible.add(new ScaleLayout(route, leg, digitiser, captured, scale, timing));
                }
            }
        }
    }

    private static void addRepeats(
            Route route,
            Route.Leg leg,
            @Nullable Digitiser digitiser,
            Captured captured,
            Processing.LineRepeat repeat,
            List<Layout> possible,
            List<Refusal> impossible) {
        if (digitiser == null) {
            impossible.add(ProcessingRules.formatNotProduced(
                    route.signal().format(), leg.output().format(), repeat.id()));
            return;
        }
        if (captured.isInterlaced() && repeat.interlaced() == Processing.InterlacedFields.REFUSED) {
            impossible.add(ProcessingRules.interlacedNotRepeated());
            return;
        }
        Optional<Processing.LineCounts> counts = countsFor(captured, repeat);
        if (counts.isEmpty()) {
            impossible.add(ProcessingRules.noLineCount(captured.lines()));
            return;
        }
        int from = counts.get().from();
        for (int to : counts.get().to()) {
            possible.addAll(RepeatLayout.all(route, leg, digitiser, captured, repeat, to / from, from));
        }
    }

    /**
     * The smallest class of the same standard and height that holds all captured lines, or else the largest. A class with
     * more lines than the field has in all cannot be meant for it.
     */
    private static Optional<Processing.LineCounts> countsFor(Captured captured, Processing.LineRepeat repeat) {
        boolean fullHeight = captured.lines() >= FULL_HEIGHT_LINES;
        List<Processing.LineCounts> fitting = repeat.lines().stream()
                .filter(counts -> counts.lineStandard() == captured.lead().lineStandard())
                .filter(counts -> counts.from() >= FULL_HEIGHT_LINES == fullHeight)
                .filter(counts ->
                        Rational.of(counts.from()).isLessThan(captured.lead().linesPerField()))
                .sorted(Comparator.comparingInt(Processing.LineCounts::from))
                .toList();
        return fitting.stream()
                .filter(counts -> counts.from() >= captured.lines())
                .findFirst()
                .or(() -> fitting.isEmpty() ? Optional.empty() : Optional.of(fitting.get(fitting.size() - 1)));
    }
}
